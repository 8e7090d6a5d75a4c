import { describe, expect, it } from 'vitest';
import { pdfOf, sheetCount } from '../../../src/drawing/pdf/pdf.ts';
import { winAnsi } from '../../../src/drawing/pdf/pdf-text.ts';
import type { BarReading } from '../../../src/drawing/scene/check-bars.ts';
import { box, circle, layer, line, text, viewOf } from '../../../src/drawing/scene/marks.ts';
import { type PaperName, papers } from '../../../src/drawing/scene/papers.ts';
import type { Layer, Scene } from '../../../src/drawing/scene/scene.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { lengthOf, type Point, type ReadPage, readPages } from '../../support/pdf-reader.ts';

const ptPerMm = 72 / 25.4;

/** Metal all over a drawing, so that none of its sheets is blank. */
const metal = (widthMm: number, heightMm: number): Layer =>
  layer('fixed-metal', [box({ minX: 0, minY: 0, maxX: widthMm, maxY: heightMm })]);

const sceneOf = (widthMm: number, heightMm: number, layers: readonly Layer[] = [metal(widthMm, heightMm)]): Scene => ({
  title: 'A test',
  description: '',
  widthMm,
  heightMm,
  penMm: 0.35,
  views: [viewOf('view', layers)],
});

const print = async (scene: Scene, paper: PaperName, bars?: BarReading): Promise<ReadPage[]> =>
  readPages(await pdfOf('test', [scene], { paper: papers[paper], ...(bars === undefined ? {} : { bars }) }));

/** The check bars of a page in mm: the longest level and the longest upright solid line in its margins. */
function barsOf({ page, mediaBox }: ReadPage): { level: number; upright: number } {
  const inMargin = ([a, b]: readonly [Point, Point]): boolean =>
    Math.max(a[1], b[1]) < 10 * ptPerMm || Math.max(a[0], b[0]) < 10 * ptPerMm;
  const lines = page.lines.filter(inMargin);
  const level = lines.filter(([a, b]) => Math.abs(a[1] - b[1]) < 1e-6).map(lengthOf);
  const upright = lines.filter(([a, b]) => Math.abs(a[0] - b[0]) < 1e-6).map(lengthOf);
  expect(mediaBox.slice(0, 2)).toEqual([0, 0]);
  return { level: Math.max(...level) / ptPerMm, upright: Math.max(...upright) / ptPerMm };
}

describe('every page', () => {
  // 1 pt = 1/72 in; A4 595.276 × 841.890, Letter 612 × 792 pt (computed)
  it.each([
    ['a4', 100, 250, [595.276, 841.89]],
    ['a4', 250, 100, [841.89, 595.276]],
    ['a3', 100, 100, [1190.551, 841.89]],
    ['letter', 100, 100, [612, 792]],
  ] as const)('of %s for %d × %d mm is as large as the paper', async (paper, width, height, [w, h]) => {
    const [page] = await print(sceneOf(width, height), paper);
    expect(page?.mediaBox[2]).toBeCloseTo(w, 2);
    expect(page?.mediaBox[3]).toBeCloseTo(h, 2);
  });

  it.each(['a4', 'a3', 'letter'] as const)('of %s carries bars of 150 mm both ways', async (paper) => {
    const pages = await print(sceneOf(700, 500), paper);
    expect(pages.length).toBeGreaterThan(3);
    for (const page of pages) {
      expect(barsOf(page).level).toBeCloseTo(150, 6);
      expect(barsOf(page).upright).toBeCloseTo(150, 6);
    }
  });

  it('carries bars that this printer will make 150 mm', async () => {
    for (const page of await print(sceneOf(500, 300), 'a4', { xMm: 149.2, yMm: 150.4 })) {
      expect(barsOf(page).level * (149.2 / 150)).toBeCloseTo(150, 3);
      expect(barsOf(page).upright * (150.4 / 150)).toBeCloseTo(150, 3);
    }
  });

  it('says how to print it, which sheet it is, and its column and row', async () => {
    const pages = await print(sceneOf(450.85, 450.85), 'a4');
    expect(pages.length).toBe(6);
    const places = pages.map(({ page }) => page.texts.join(' '));
    for (const [i, words] of places.entries()) {
      expect(words).toContain('Print at 100 %, no fit to page');
      expect(words).toContain(`column ${(i % 3) + 1} row ${Math.floor(i / 3) + 1} of 3 by 2, sheet ${i + 1} of 6`);
    }
  });
});

describe('the drawing on its sheets', () => {
  it.each([
    ['a4', undefined],
    ['letter', undefined],
    ['a4', { xMm: 149.2, yMm: 150.4 }],
  ] as const)('is at true size on every one of them: %s', async (paper, bars) => {
    for (const { page } of await print(sceneOf(600, 600), paper, bars)) {
      const [a = 0, b, c, d = 0] = page.forms[0] ?? [];
      expect([b, c]).toEqual([0, 0]);
      expect((a * (bars?.xMm ?? 150)) / 150 / ptPerMm).toBeCloseTo(1, 8);
      expect((d * (bars?.yMm ?? 150)) / 150 / ptPerMm).toBeCloseTo(1, 8);
    }
  });

  it('goes on from sheet to sheet with 10 mm in common, and all of it is on some sheet', async () => {
    const [wide, high] = [450.85, 450.85];
    const pages = await print(sceneOf(wide, high), 'a4');
    const shown = pages.map(({ page, mediaBox }) => {
      const [, , , , e = 0, f = 0] = page.forms[0] ?? [];
      const left = (10 * ptPerMm - e) / ptPerMm;
      const top = ((mediaBox[3] ?? 0) - 10 * ptPerMm - f) / ptPerMm;
      return { left, right: left + 190, top, foot: top - 277 };
    });
    expect(shown[0]).toMatchObject({ left: expect.closeTo(0, 6), top: expect.closeTo(high, 6) });
    expect((shown[0]?.right ?? 0) - (shown[1]?.left ?? 0)).toBeCloseTo(10, 6);
    expect((shown[3]?.top ?? 0) - (shown[0]?.foot ?? 0)).toBeCloseTo(10, 6);
    expect(shown[5]?.right).toBeGreaterThanOrEqual(wide);
    expect(shown[5]?.foot).toBeLessThanOrEqual(0);
  });

  it('has crosses on both sheets of a join that mark one and the same place of it', async () => {
    const [left, right] = (await print(sceneOf(300, 400), 'a4')).filter((_, i) => i < 2) as [ReadPage, ReadPage];
    const crossesOf = ({ page }: ReadPage): string[] => {
      const [a = 1, , , d = 1, e = 0, f = 0] = page.forms[0] ?? [];
      const arms = page.lines.filter((arm) => Math.abs(lengthOf(arm) / ptPerMm - 6) < 1e-6);
      return arms.map(([p, q]) =>
        [((p[0] + q[0]) / 2 - e) / a, ((p[1] + q[1]) / 2 - f) / d].map((mm) => mm.toFixed(3)).join(),
      );
    };
    const shared = crossesOf(left).filter((cross) => crossesOf(right).includes(cross));
    expect(new Set(shared).size).toBe(2);
  });

  it('says where a join belongs beside the words of the drawing, not over them', async () => {
    // 10 mm of margin, and the cut in the middle of the 10 mm in common: 272 mm from the top of the drawing
    // the join cannot give way, as words go on over more than a third of the sheet
    const words = Array.from({ length: 40 }, (_, i) => text(vec(20, 400 - 150 - 4 * i), 'twenty letters long.', 4));
    const joinsOf = async (layers: Layer[]): Promise<number[]> => {
      const [page] = await print(sceneOf(100, 400, [metal(100, 400), ...layers]), 'a4');
      const { texts = [], textsAt = [] } = page?.page ?? {};
      return textsAt.filter((_, i) => texts[i]?.startsWith('cut, join')).map(([x]) => x / ptPerMm);
    };
    const [alone = 0] = await joinsOf([]);
    const [beside = 0] = await joinsOf([layer('text', words)]);
    expect(alone).toBeCloseTo(20, 0);
    expect(beside).toBeGreaterThan(10 + 20 + 20 * 4 * 0.4);
  });

  it.each([3, 17, 225.425, 2000])('draws a circle of R %d mm within 0.005 mm', async (radius) => {
    const scene = sceneOf(100, 100, [metal(100, 100), layer('hole', [circle(vec(0, 0), radius)])]);
    const [page] = await print(scene, 'a4');
    const curves = page?.drawing.curves ?? [];
    expect(curves.length).toBeGreaterThan(3);
    for (const [a, b, c, d] of curves) {
      for (let t = 0; t <= 1; t += 0.05) {
        const [u, v] = [1 - t, t];
        const at = [0, 1].map(
          (i) =>
            u ** 3 * (a[i] ?? 0) + 3 * u * u * v * (b[i] ?? 0) + 3 * u * v * v * (c[i] ?? 0) + v ** 3 * (d[i] ?? 0),
        );
        expect(Math.abs(Math.hypot(at[0] ?? 0, at[1] ?? 0) - radius)).toBeLessThan(0.005);
      }
    }
  });

  it('draws a line where it is', async () => {
    const [page] = await print(sceneOf(100, 100, [layer('frame', [line(vec(3, 4), vec(81.2346, 57))])]), 'a4');
    expect(page?.drawing.lines).toEqual([
      [
        [3, 4],
        [81.2346, 57],
      ],
    ]);
  });
});

describe('the file', () => {
  const scene = sceneOf(300, 200, [
    layer('text', [text(vec(10, 10), 'Ø14 ± 0.5 – “so” → ≥ 5', 4)]),
    layer('fixed', [circle(vec(50, 50), 20)]),
  ]);

  it('is the same byte for byte every time, whatever the day', async () => {
    const make = () => pdfOf('test', [scene], { paper: papers.a4 });
    const first = await make();
    await new Promise((resume) => setTimeout(resume, 1100));
    expect(await make()).toEqual(first);
    expect(Array.from(first.slice(0, 5), (byte) => String.fromCharCode(byte)).join('')).toBe('%PDF-');
  });

  it('has as many pages as it is said to take', async () => {
    const scenes = [scene, sceneOf(500, 500), sceneOf(10, 10)];
    const pages = await readPages(await pdfOf('test', scenes, { paper: papers.a4 }));
    expect(pages.length).toBe(sheetCount(scenes, { paper: papers.a4 }));
  });
});

describe('letters a standard font lacks', () => {
  it.each([
    ['Ø14 ± 0.5°', 'Ø14 ± 0.5°'],
    ['14–32', '14–32'],
    ['a → b ≥ c', 'a -> b >= c'],
    ['−3', '-3'],
    ['wał Ω', 'wa? ?'],
    ['e\u0301', 'é'],
    ['tab\tbell\u0007', 'tab?bell?'],
  ])('%s becomes %s', (given, shown) => {
    expect(winAnsi(given)).toBe(shown);
  });
});
