import { chmodSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig, type Plugin } from 'vite';
import { gatherLibraries, noticesOf } from './vite.notices.ts';

const shipped = new Set<string>();

/** Lets the command be run by its name, which npx does once and a build after that would undo; notices beside it. */
const finish: Plugin = {
  name: 'finish',
  writeBundle: ({ dir = '' }) => {
    chmodSync(join(dir, 'fettle.js'), 0o755);
    writeFileSync(join(dir, 'NOTICES.txt'), `${noticesOf('The command line holds these libraries:', shipped)}\n`);
  },
};

/**
 * The command line for Node, libraries and all: to look for some hundred files and to compile what nobody calls takes
 * longer than most answers do.
 */
export default defineConfig({
  plugins: [gatherLibraries(shipped), finish],
  ssr: { noExternal: true },
  build: {
    ssr: 'cli/fettle.ts',
    target: 'node20',
    outDir: 'dist/cli',
    emptyOutDir: true,
    minify: true,
    rolldownOptions: { output: { entryFileNames: 'fettle.js', chunkFileNames: '[name].js' } },
  },
});
