import { defineConfig } from 'vite';

/** The library: our own modules bundled, the libraries left outside. Its types are put beside it by tsc. */
export default defineConfig({
  build: {
    ssr: true,
    target: 'node20',
    outDir: 'dist/lib',
    emptyOutDir: true,
    rolldownOptions: {
      input: { fettle: 'src/library.ts', motion: 'src/motion-library.ts' },
      output: { entryFileNames: '[name].js', chunkFileNames: 'shared/[name].js' },
    },
  },
});
