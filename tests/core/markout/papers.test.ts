import { describe, expect, it } from 'vitest';
import { type PaperName, papers, tilingOf } from '../../../src/drawing/scene/papers.ts';

const square = (mm: number) => ({ widthMm: mm, heightMm: mm });
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
    const upright = tilingOf({ widthMm: mm, heightMm: 200 }, papers[paper], { xMm: 150, yMm: 150.0001 });
    expect(upright.columns).toBe(columns);
  });

  it('turns the paper where that saves sheets', () => {
    expect(tilingOf({ widthMm: 270, heightMm: 180 }, papers.a4)).toMatchObject({ turned: 'landscape', columns: 1 });
    expect(tilingOf({ widthMm: 180, heightMm: 270 }, papers.a4)).toMatchObject({ turned: 'portrait', rows: 1 });
  });

  it('covers every size: the tiles with their overlaps are never shorter than the drawing', () => {
    for (let mm = 50; mm < 3000; mm += 37.3) {
      for (const paper of Object.values(papers)) {
        const { columns, rows, tileWidthMm, tileHeightMm } = tilingOf({ widthMm: mm, heightMm: 1.7 * mm }, paper);
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
    expect(tilingOf({ widthMm: 270, heightMm: 100 }, papers.a4, { xMm: 149.2, yMm: 150.4 }).turned).toBe('portrait');
  });
});
