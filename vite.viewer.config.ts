import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { defineConfig, type Plugin } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';

/** Folders of the libraries that went into the page, its worker's among them. */
const shipped = new Set<string>();

const gatherLibraries = (): Plugin => ({
  name: 'gather-libraries',
  generateBundle(_options, bundle) {
    for (const chunk of Object.values(bundle)) {
      if (chunk.type !== 'chunk') continue;
      for (const id of chunk.moduleIds) {
        const [folder] = /^.*\/node_modules\/(@[^/]+\/)?[^/]+/.exec(id) ?? [];
        if (folder !== undefined) shipped.add(folder);
      }
    }
  },
});

/** The licences of those libraries, at the foot of the page's source. */
const printNotices = (): Plugin => ({
  name: 'print-notices',
  transformIndexHtml: { order: 'post', handler: (html) => `${html}\n<!--\n${notices()}\n-->\n` },
});

function notices(): string {
  const texts = [...shipped].sort().map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
    const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
    const text =
      file === undefined || !existsSync(`${folder}/${file}`) ? '' : readFileSync(`${folder}/${file}`, 'utf8');
    return `${name} ${version}, ${license}\n\n${text.trim()}`;
  });
  // a comment ends at the first double hyphen
  return ['This page holds these libraries:', ...texts].join('\n\n').replaceAll('--', '- -');
}

/** The viewer as one file that opens from disk. */
export default defineConfig({
  root: 'viewer',
  base: './',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  plugins: [gatherLibraries(), viteSingleFile(), printNotices()],
  worker: { format: 'iife', plugins: () => [gatherLibraries()] },
  build: { outDir: '../dist/viewer', emptyOutDir: true },
});
