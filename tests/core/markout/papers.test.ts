import { describe, expect, it } from 'vitest';
import { boxOfText, circle, layer, line, text, viewOf } from '../../../src/drawing/scene/marks.ts';
import { type PaperName, papers, tilingOf } from '../../../src/drawing/scene/papers.ts';
import type { Layer } from '../../../src/drawing/scene/scene.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';

const blank = (widthMm: number, heightMm: number) => ({ widthMm, heightMm, views: [] });
const square = (mm: number) => blank(mm, mm);
const tiles = (mm: number, paper: PaperName) => {
  const { columns, rows, turned } = tilingOf(square(mm), papers[paper]);
  return { columns, rows, turned };
};

describe('sheets by ⌈(L − o)/(p − o)⌉, margins and overlap 10 mm', () => {
  // an SAE J617 No. 3 flange is Ø 450.85 mm (catalogue extracts); its sheets computed from the formula
  it('a Ø 450.85 flange takes 6 sheets of A4 upright: 3 across, 2 up', () => {
    expect(tiles(450.85, 'a4')).toEqual({ columns: 3, rows: 2, turned: 'portrait' });
  });

  it('and 4 of A3 lying: 2 across, 2 up', () => {
    expect(tiles(450.85, 'a3')).toEqual({ columns: 2, rows: 2, turned: 'landscape' });
  });

  it.each([
    ['a4', 190, 1],
    ['a4', 190.001, 2],
    ['a4', 370, 2],
    ['letter', 195.9, 1],
    ['a3', 277, 1],
  ] as const)('%s: a square of %d takes %d across its narrow way', (paper, mm, columns) => {
    const upright = tilingOf(blank(mm, 200), papers[paper], { xMm: 150, yMm: 150.0001 });
    expect(upright.columns).toBe(columns);
  });

  it('turns the paper where that saves sheets', () => {
    expect(tilingOf(blank(270, 180), papers.a4)).toMatchObject({ turned: 'landscape', columns: 1 });
    expect(tilingOf(blank(180, 270), papers.a4)).toMatchObject({ turned: 'portrait', rows: 1 });
  });

  it('covers every size: the tiles with their overlaps are never shorter than the drawing', () => {
    for (let mm = 50; mm < 3000; mm += 37.3) {
      for (const paper of Object.values(papers)) {
        const { columns, rows, tileWidthMm, tileHeightMm } = tilingOf(blank(mm, 1.7 * mm), paper);
        const across = columns * tileWidthMm - (columns - 1) * 10;
        const up = rows * tileHeightMm - (rows - 1) * 10;
        expect(across).toBeGreaterThanOrEqual(mm - 1e-6);
        expect(up).toBeGreaterThanOrEqual(1.7 * mm - 1e-6);
        // and one tile fewer would be
        expect(columns === 1 || across - (tileWidthMm - 10) < mm).toBe(true);
        expect(rows === 1 || up - (tileHeightMm - 10) < 1.7 * mm).toBe(true);
      }
    }
  });
});

describe('a printer that is out', () => {
  it('draws x longer that it prints short, and y shorter that it prints long', () => {
    const { stretchX, stretchY } = tilingOf(square(100), papers.a4, { xMm: 149.2, yMm: 150.4 });
    expect(stretchX * 149.2).toBeCloseTo(150, 10);
    expect(stretchY * 150.4).toBeCloseTo(150, 10);
  });

  it('gets all sheets upright, since its error belongs to the sides of the paper', () => {
    expect(tilingOf(blank(270, 100), papers.a4, { xMm: 149.2, yMm: 150.4 }).turned).toBe('portrait');
  });
});

const drawn = (widthMm: number, heightMm: number, layers: readonly Layer[]) => ({
  ...blank(widthMm, heightMm),
  views: [viewOf('view', layers)],
});

describe('words and joins', () => {
  // A4 upright shows 190 by 277 mm: two sheets join 185 mm from the left, 272 from the top, and share 5 mm either side
  const words = (x: number, fromTop: number) => text(vec(x, 400 - fromTop), 'twenty letters long.', 4);
  const upright = (mark: ReturnType<typeof words>) =>
    tilingOf(drawn(340, 400, [layer('text', [mark])]), papers.a4, { xMm: 150, yMm: 150.0001 });

  it('without words in the way a sheet reaches as far as it can', () => {
    expect(upright(words(20, 50)).columnJoins).toEqual([expect.closeTo(185, 3)]);
    expect(upright(words(20, 50)).rowJoins).toEqual([expect.closeTo(272, 3)]);
  });

  it('a join gives way to words it would cut, by all that two sheets share', () => {
    const across = words(170, 50);
    expect(upright(across).columnJoins).toEqual([expect.closeTo(165, 3)]);
    const down = boxOfText(words(20, 272));
    expect(upright(words(20, 272)).rowJoins).toEqual([expect.closeTo(400 - down.maxY - 5, 3)]);
  });

  it('but by no more than clears the cut where that saves a sheet', () => {
    const { columns, columnJoins } = tilingOf(drawn(367, 200, [layer('text', [words(184, 300)])]), papers.a4, {
      xMm: 150,
      yMm: 150.0001,
    });
    expect(columns).toBe(2);
    expect(columnJoins).toEqual([expect.closeTo(183, 3)]);
  });

  it('and not at all to words that leave no room within a third of a sheet', () => {
    expect(upright(text(vec(20, 350), 'a line that runs on over half of the sheet '.repeat(4), 4)).columnJoins).toEqual(
      [expect.closeTo(185, 3)],
    );
  });
});

describe('sheets with nothing on them', () => {
  const sheets = (...layers: Layer[]) =>
    tilingOf(drawn(550, 800, layers), papers.a4, { xMm: 150, yMm: 150.0001 }).sheets.map(
      ({ column, row }) => `${column}/${row}`,
    );
  const from = (x: number, fromTop: number) => vec(x, 800 - fromTop);

  it('are left out, and the others keep their names', () => {
    expect(sheets(layer('frame', [line(from(10, 10), from(100, 10))]))).toEqual(['1/1']);
    expect(sheets(layer('text', [text(from(400, 600), 'here', 4)]))).toEqual(['3/3']);
    expect(sheets(layer('frame', [line(from(10, 10), from(10, 790))]))).toEqual(['1/1', '1/2', '1/3']);
  });

  it('an outline leaves the sheets inside it blank, metal does not', () => {
    const round = circle(from(275, 400), 270);
    expect(sheets(layer('frame', [round]))).not.toContain('2/2');
    expect(sheets(layer('fixed-metal', [round]))).toContain('2/2');
  });
});
