import { readdirSync, readFileSync } from 'node:fs';
import type { Plugin } from 'vite';

/** Gathers the folders of the libraries that went into a bundle. */
export const gatherLibraries = (shipped: Set<string>): Plugin => ({
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

/** Name, version and licence of each of those libraries, under a heading. */
export function noticesOf(heading: string, shipped: ReadonlySet<string>): string {
  const texts = [...shipped].sort().map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
    const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
    const text = file === undefined ? '' : readFileSync(`${folder}/${file}`, 'utf8');
    return `${name} ${version}, ${license}\n\n${text.trim()}`;
  });
  return [heading, ...texts].join('\n\n');
}
