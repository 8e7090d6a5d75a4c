import { describe, expect, it } from 'vitest';
import { markoutFiles } from '../../../src/drawing/markout/markout-files.ts';
import { markingOut } from '../../../src/markout/marking-out.ts';
import { bothCut } from '../../support/both-cut.ts';
import { plannedDemo } from '../../support/markout-jobs.ts';
import { readPages } from '../../support/pdf-reader.ts';
import type { PlannedJoint } from '../../support/plan-answer.ts';

const filesOf = async ({ joint, plan }: PlannedJoint, mirrored = false) =>
  (await markoutFiles(joint, plan, markingOut(joint, plan), { mirrored })).files;

const pagesIn = async (content: string | Uint8Array | undefined) => readPages(content as Uint8Array);

describe.each([
  ['one part is cut', () => plannedDemo('transfer-case')],
  ['both are', bothCut],
])('all sheets in one PDF, where %s', (_, planned) => {
  it('are those of the single ones in their order, behind a page that says which is where', async () => {
    const files = await filesOf(planned());
    const [all, ...single] = files.filter(({ as }) => as === 'pdf');
    expect(all?.name).toBe('all-sheets.pdf');
    expect(single.length).toBeGreaterThan(1);
    const counts = await Promise.all(single.map(async ({ content }) => (await pagesIn(content)).length));
    const pages = await pagesIn(all?.content);
    expect(pages).toHaveLength(1 + counts.reduce((sum, count) => sum + count, 0));
    const contents = [...(pages[0]?.page.texts ?? []), ...(pages[0]?.drawing.texts ?? [])];
    let first = 2;
    for (const [i, { name }] of single.entries()) {
      const last = first + (counts[i] ?? 0) - 1;
      expect(contents).toContain(name.replace('.pdf', ''));
      expect(contents).toContain(first === last ? `sheet ${first}` : `sheets ${first} to ${last}`);
      first = last + 1;
    }
    expect(contents).toContain(`sheet 1 of ${pages.length}`);
  });
});

it('all sheets say in their name that they are mirrored, as the single ones do', async () => {
  const names = (await filesOf(plannedDemo('starter'), true)).map(({ name }) => name);
  expect(names[0]).toBe('all-sheets-mirrored.pdf');
});
