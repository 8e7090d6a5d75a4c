import { defineConfig } from 'vite';

/** The model bundled for Node, whose workers read no TypeScript. */
export default defineConfig({
  logLevel: 'error',
  build: {
    ssr: true,
    target: 'node20',
    outDir: 'node_modules/.cache/goes',
    rolldownOptions: { input: { run: 'tests/goes/run.ts', 'run-pair': 'tests/goes/run-pair.ts' } },
  },
});
