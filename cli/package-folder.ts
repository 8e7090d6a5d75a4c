import { existsSync } from 'node:fs';
import { join } from 'node:path';

/** Where the package stands: this file runs from `cli` as from `dist/cli`. */
export function packageFolder(): string {
  const above = ['..', '../..'].map((up) => join(import.meta.dirname, up));
  return above.find((folder) => existsSync(join(folder, 'package.json'))) ?? '.';
}
