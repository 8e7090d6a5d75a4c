import { defineConfig } from 'vite';

/** The command line for Node: our own modules bundled, the libraries left outside. */
export default defineConfig({
  build: {
    ssr: 'cli/fettle.ts',
    target: 'node20',
    outDir: 'dist/cli',
    emptyOutDir: true,
    rolldownOptions: { output: { entryFileNames: 'fettle.js', chunkFileNames: '[name].js' } },
  },
});
