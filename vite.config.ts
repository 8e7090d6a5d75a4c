import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig, type Plugin } from 'vite';

/** Lets the command be run by its name: npx makes it so once, and a build after that would undo it. */
const runnable: Plugin = {
  name: 'runnable',
  writeBundle: ({ dir = '' }) => chmodSync(join(dir, 'fettle.js'), 0o755),
};

/** The command line for Node: our own modules bundled, the libraries left outside. */
export default defineConfig({
  plugins: [runnable],
  build: {
    ssr: 'cli/fettle.ts',
    target: 'node20',
    outDir: 'dist/cli',
    emptyOutDir: true,
    rolldownOptions: { output: { entryFileNames: 'fettle.js', chunkFileNames: '[name].js' } },
  },
});
