import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Reading } from '../src/files/finding.ts';
import { loadText } from './load-text.ts';
import { packageFolder } from './package-folder.ts';

/** The viewer's page as it was built, or that it was not. */
export function builtPage(): Reading<string> {
  const page = join(packageFolder(), 'dist', 'viewer', 'index.html');
  if (existsSync(page)) return loadText(page);
  return {
    ok: false,
    findings: [{ file: page, at: '', found: 'no page', expected: 'npm run build:viewer to have made it' }],
  };
}
