import { defineConfig } from 'vite';

/** The benchmark bundled for Node, so that what is timed is what ships: plain modules, no test runner between them. */
export default defineConfig({
  logLevel: 'error',
  build: {
    ssr: true,
    target: 'node20',
    outDir: 'node_modules/.cache/bench',
    rolldownOptions: { input: { run: 'tests/bench/run.ts', 'cold-run': 'tests/bench/cold-run.ts' } },
  },
});
