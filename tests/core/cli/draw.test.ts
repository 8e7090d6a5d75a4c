import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, it } from 'vitest';
import { readPages } from '../../support/pdf-reader.ts';
import { runCli } from '../../support/run-cli.ts';
import { folderWith } from '../../support/temp-folder.ts';

const fit = resolve(import.meta.dirname, '../../../profiles/starter-boss/starter.fit.json');

it('a drawing as PDF is parted into sheets of the paper asked for, as many as are said', async () => {
  const file = join(folderWith(), 'starter.pdf');
  const { code, stdout } = await runCli('draw', fit, '-o', file, '--paper', 'letter');
  expect(code).toBe(0);
  const pages = await readPages(readFileSync(file));
  expect(pages.length).toBeGreaterThan(1);
  expect(stdout).toContain(`${pages.length} sheets of Letter`);
  // Letter is 612 × 792 pt (computed)
  for (const { mediaBox } of pages)
    expect([mediaBox[2], mediaBox[3]].map((pt) => Math.round(pt ?? 0)).sort()).toEqual([612, 792]);
});

it('paper that is not known is refused, and nothing is written', async () => {
  const file = join(folderWith(), 'starter.pdf');
  const { code, stderr } = await runCli('draw', fit, '-o', file, '--paper', 'b5');
  expect(code).toBe(2);
  expect(stderr).toContain('--paper: found "b5"; expected a4, a3, letter');
  expect(existsSync(file)).toBe(false);
});
