import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PDFDocument } from 'pdf-lib';
import { beforeAll, describe, expect, it } from 'vitest';
import { openJob } from '../../../cli/open-job.ts';
import type { SheetPreview } from '../../../src/drawing/markout/markout-pages.ts';
import { trueBars } from '../../../src/drawing/scene/check-bars.ts';
import { marginMm, type PaperName } from '../../../src/drawing/scene/papers.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { demoJob } from '../../../viewer/heavy/demo-job.ts';
import { make, sheetsToShow } from '../../../viewer/heavy/make.ts';
import type { Making, Printing, SheetsReply } from '../../../viewer/heavy/questions.ts';
import { runCli } from '../../support/run-cli.ts';
import { folderWith } from '../../support/temp-folder.ts';
import { unzipped } from '../../support/unzipped.ts';

const fit = 'profiles/starter-boss/starter.fit.json';

const asSeen = { bars: trueBars, mirrored: false };

const made = async (
  as: Making['as'],
  paper: PaperName = 'a4',
  job = demoJob(),
  how: Omit<Printing, 'paper'> = asSeen,
): Promise<readonly { readonly name: string; readonly data: Uint8Array }[]> => {
  const reply = await drain(make(job, { as, paper, ...how, date: '2026-03-01', page: '' }));
  const file = reply.kind === 'made' ? reply.file : null;
  if (file === null) return [];
  const data = Buffer.from(file.data);
  return file.holds.length === 0 ? [{ name: file.name, data }] : unzipped(data);
};

describe('what the page hands over to mark out by', () => {
  it.each([
    ['as it is', [], asSeen],
    ['as read off the check bars', ['--bars', '149.2,150.4'], { ...asSeen, bars: { xMm: 149.2, yMm: 150.4 } }],
    ['in a mirror', ['--mirror'], { ...asSeen, mirrored: true }],
  ])('is file for file and byte for byte what the command writes, %s', async (_, flags, how) => {
    const folder = folderWith();
    await runCli('markout', fit, '-o', folder, ...flags);
    const job = openJob(fit).whole;
    const kinds = ['all', 'pdf', 'svg', 'dxf', 'csv'] as const;
    const files = (await Promise.all(kinds.map((as) => made(as, 'a4', job, how)))).flat();
    expect(files.length).toBeGreaterThan(3);
    expect(files.map(({ name }) => name).sort()).toEqual(readdirSync(folder).sort());
    for (const { name, data } of files) {
      expect(Buffer.compare(readFileSync(join(folder, name)), data), name).toBe(0);
    }
  });
});

describe('the sheets as they are shown', () => {
  let sheets: readonly SheetPreview[] = [];
  let allPages: SheetsReply['allPages'] = { a4: null, a3: null, letter: null };
  beforeAll(() => {
    const reply = drain(sheetsToShow(demoJob(), asSeen));
    if (reply.kind === 'sheets') ({ sheets, allPages } = reply);
  });

  it.each(['a4', 'a3', 'letter'] as const)(
    'are counted with the contents as the one PDF of all on %s has them',
    async (paper) => {
      const [all] = await made('all', paper);
      expect((await PDFDocument.load(all?.data ?? '')).getPageCount()).toBe(allPages[paper]);
    },
  );

  it.each(['a4', 'a3', 'letter'] as const)('have a page for each page of the PDF on %s, of its size', async (paper) => {
    const pdfs = await made('pdf', paper);
    expect(sheets.length).toBeGreaterThan(1);
    for (const { name, on } of sheets) {
      const pdf = pdfs.find((file) => file.name === `${name}.pdf`);
      const pages = (await PDFDocument.load(pdf?.data ?? '')).getPages();
      const mm = pages.map((page) => [page.getWidth(), page.getHeight()].map((pt) => ((pt * 25.4) / 72).toFixed(3)));
      expect(on[paper].count).toBe(pages.length);
      expect(on[paper].pages.map((page) => [page.widthMm.toFixed(3), page.heightMm.toFixed(3)])).toEqual(mm);
    }
  });

  it('begin in the upper left corner, and show every place of the drawing on one page at least', () => {
    for (const { drawings, on } of sheets) {
      for (const { pages } of Object.values(on)) {
        drawings.forEach((svg, drawing) => {
          const [, height = ''] = /height="([\d.]+)mm"/.exec(svg) ?? [];
          const of = pages.filter((page) => page.drawing === drawing);
          const first = of[0];
          expect([first?.drawnLeftMm, first?.drawnTopMm]).toEqual([
            expect.closeTo(marginMm, 9),
            expect.closeTo(marginMm, 9),
          ]);
          const right = Math.min(...of.map((page) => page.drawnLeftMm + page.drawnWidthMm - page.widthMm + marginMm));
          const foot = Math.min(...of.map((page) => page.drawnTopMm + Number(height) - page.heightMm + marginMm));
          expect(right).toBeLessThanOrEqual(1e-6);
          expect(foot).toBeLessThanOrEqual(1e-6);
        });
      }
    }
  });

  it('take fewer or as many pages of A3 as of A4', () => {
    for (const { on } of sheets) expect(on.a3.count).toBeLessThanOrEqual(on.a4.count);
  });
});
