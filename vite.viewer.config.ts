import { defineConfig, type Plugin } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';
import { gatherLibraries, noticesOf } from './vite.notices.ts';

/** Folders of the libraries that went into the page, its worker's among them. */
const shipped = new Set<string>();

/** The licences of those libraries, at the foot of the page's source. */
const printNotices = (): Plugin => ({
  name: 'print-notices',
  transformIndexHtml: { order: 'post', handler: (html) => `${html}\n<!--\n${notices()}\n-->\n` },
});

// a comment ends at the first double hyphen
const notices = (): string => noticesOf('This page holds these libraries:', shipped).replaceAll('--', '- -');

/** The viewer as one file that opens from disk. */
export default defineConfig({
  root: 'viewer',
  base: './',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  plugins: [gatherLibraries(shipped), viteSingleFile(), printNotices()],
  worker: { format: 'iife', plugins: () => [gatherLibraries(shipped)] },
  build: { outDir: '../dist/viewer', emptyOutDir: true },
});
