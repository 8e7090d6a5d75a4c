import { describe, expect, it } from 'vitest';
import { punchCross } from '../../src/drawing/markout/template-marks.ts';
import { pdfOf } from '../../src/drawing/pdf/pdf.ts';
import { printedWidthMm } from '../../src/drawing/pdf/printed-width.ts';
import { trueBars } from '../../src/drawing/scene/check-bars.ts';
import { box, layer, viewOf } from '../../src/drawing/scene/marks.ts';
import { papers, type Tiling, tilingOf } from '../../src/drawing/scene/papers.ts';
import type { Scene } from '../../src/drawing/scene/scene.ts';
import { add, type Vec, vec } from '../../src/geometry/plane/vec.ts';
import { plannedDemo } from '../support/markout-jobs.ts';
import { markoutFor } from '../support/plan-answer.ts';
import { columnInk, crossNear, hasRasteriser, middlesOf, type Picture, pictureOf, rowInk } from '../support/raster.ts';
import { folderWith } from '../support/temp-folder.ts';

// pdftoppm of poppler-utils makes the pictures; without it nothing here can be measured
const here = hasRasteriser();
const title = here ? 'pages as poppler prints them at 600 dpi' : 'skipped: pdftoppm (poppler-utils) is not installed';

/** As large as an SAE J617 No. 3 flange. */
const flange: Scene = {
  title: 'Ø 450.85',
  description: '',
  widthMm: 450.85,
  heightMm: 450.85,
  penMm: 0.35,
  views: [viewOf('metal', [layer('fixed-metal', [box({ minX: 0, minY: 0, maxX: 450.85, maxY: 450.85 })])])],
};

/** From one end tick of a check bar to the other, mm: only they reach below, or left of, the bar's own line. */
function barLengths(picture: Picture): { level: number; upright: number } {
  const below = { fromX: 8, toX: 161, fromY: 5.6, toY: 6.6 };
  const beside = { fromX: 5.6, toX: 6.6, fromY: 8, toY: 161 };
  const spanOf = (middles: readonly number[]): number => {
    expect(middles.length).toBe(2);
    return (middles[1] as number) - (middles[0] as number);
  };
  return {
    level: spanOf(middlesOf(columnInk(picture, below), 0.5)),
    upright: Math.abs(spanOf(middlesOf(rowInk(picture, beside), 0.5))),
  };
}

describe.skipIf(!here)(title, () => {
  it.each(['a4', 'a3', 'letter'] as const)('%s: bars of 150 mm within 0.1 both ways on every page', async (paper) => {
    const folder = folderWith();
    const pdf = await pdfOf('flange', [flange], { paper: papers[paper] });
    const { columns, rows } = tilingOf(flange, papers[paper], trueBars, printedWidthMm);
    for (let page = 1; page <= columns * rows; page++) {
      const { level, upright } = barLengths(pictureOf(pdf, page, folder));
      expect(Math.abs(level - 150)).toBeLessThan(0.1);
      expect(Math.abs(upright - 150)).toBeLessThan(0.1);
    }
  });

  it.each(['a4', 'a3', 'letter'] as const)(
    '%s: a printer that makes 149.2 and 150.4 of them makes 150 within 0.1 once told',
    async (paper) => {
      const folder = folderWith();
      const pdf = await pdfOf('flange', [flange], { paper: papers[paper], bars: { xMm: 149.2, yMm: 150.4 } });
      const { level, upright } = barLengths(pictureOf(pdf, 1, folder));
      expect(Math.abs((level * 149.2) / 150 - 150)).toBeLessThan(0.1);
      expect(Math.abs((upright * 150.4) / 150 - 150)).toBeLessThan(0.1);
    },
  );

  it.each([
    ['a4', 'plate A', undefined],
    ['letter', 'plate A', undefined],
    ['a4', 'plate A', { xMm: 149.2, yMm: 150.4 }],
    ['a4', 'a flange', undefined],
    ['a3', 'a flange', undefined],
    ['letter', 'a flange', { xMm: 150.6, yMm: 149 }],
  ] as const)(
    '%s: two dowels of %s are their distance apart within 0.1 once its sheets are joined, %j',
    async (paper, what, bars) => {
      const { scene, places } = what === 'plate A' ? carrierPlate() : dowelledFlange();
      const tiling = tilingOf(scene, papers[paper], bars, printedWidthMm);
      const pdf = await pdfOf('joined', [scene], { paper: papers[paper], ...(bars === undefined ? {} : { bars }) });
      const sheets = joinedSheets(pdf, tiling, folderWith());
      const [a, b] = places.map(({ x, y }) => sheets.measured(x, scene.heightMm - y));
      if (a === undefined || b === undefined) throw new Error('no dowels');
      expect([a.column, a.row]).not.toEqual([b.column, b.row]);
      const printed = Math.hypot((b.x - a.x) / tiling.stretchX, (b.y - a.y) / tiling.stretchY);
      const [from, to] = places;
      expect(Math.abs(printed - Math.hypot(to.x - from.x, to.y - from.y))).toBeLessThan(0.1);
    },
  );
});

interface DowelPlate {
  readonly scene: Scene;
  /** Where its two dowels are, mm from its lower left corner. */
  readonly places: readonly [Vec, Vec];
}

/** The plate of the carrier's profile gauge, over both its dowels. */
function carrierPlate(): DowelPlate {
  const { joint, plan } = plannedDemo('transfer-case');
  const scene = markoutFor({ joint, plan })
    .sheets.flatMap(({ scenes }) => scenes(false))
    .find(({ views }) => views.some(({ id }) => id === 'plate-A'));
  const view = scene?.views.find(({ id }) => id === 'plate-A');
  const [a, b] = joint.fit.dowels.map(({ fixed }) => fixed.at);
  if (scene === undefined || view === undefined || a === undefined || b === undefined) throw new Error('no plate');
  return { scene, places: [add(view.at, a), add(view.at, b)] };
}

function dowelledFlange(): DowelPlate {
  const places = [vec(31.2, 390.5), vec(401.7, 77.3)] as const;
  const view = viewOf(
    'flange',
    places.flatMap((at) => punchCross(at, 7, 'dowel')),
  );
  return { scene: { ...flange, views: [...flange.views, view] }, places };
}

/** All sheets of one drawing, joined by laying the crosses of their seams on one another. */
function joinedSheets(pdf: Uint8Array, tiling: Tiling, folder: string) {
  const { columnJoins, rowJoins, sheets, pageHeightMm, stretchX, stretchY } = tiling;
  const pictures = new Map<number, Picture>();
  const pageOf = (column: number, row: number): Picture => {
    const page = sheets.findIndex((sheet) => sheet.column === column && sheet.row === row) + 1;
    const picture = pictures.get(page) ?? pictureOf(pdf, page, folder);
    pictures.set(page, picture);
    return picture;
  };
  const [left, top] = [10 + 5 * stretchX, pageHeightMm - 10 - 5 * stretchY];
  const begins = (joins: readonly number[], count: number): number => (count === 1 ? 0 : (joins[count - 2] ?? 0) - 5);
  const right = (column: number): number =>
    10 + ((columnJoins[column - 1] ?? 0) - begins(columnJoins, column)) * stretchX;
  const foot = (row: number): number =>
    pageHeightMm - 10 - ((rowJoins[row - 1] ?? 0) - begins(rowJoins, row)) * stretchY;
  /** How far the next sheet lies from this one: its seam's cross here less the same cross there, mm of paper. */
  const between = (here: readonly [number, number], there: readonly [number, number]): Vec =>
    vec(here[0] - there[0], here[1] - there[1]);
  const across = (column: number, row: number): Vec =>
    between(crossNear(pageOf(column, row), right(column), top, 2), crossNear(pageOf(column + 1, row), left, top, 2));
  const down = (column: number, row: number): Vec =>
    between(crossNear(pageOf(column, row), left, foot(row), 2), crossNear(pageOf(column, row + 1), left, top, 2));
  return {
    /** A cross at a place of the drawing (mm from its left and its top), measured on paper laid out by its seams. */
    measured(x: number, fromTop: number): { column: number; row: number; x: number; y: number } {
      const column = columnJoins.filter((join) => join < x).length + 1;
      const row = rowJoins.filter((join) => join < fromTop).length + 1;
      const near = vec(
        10 + (x - begins(columnJoins, column)) * stretchX,
        pageHeightMm - 10 - (fromTop - begins(rowJoins, row)) * stretchY,
      );
      let at = vec(...crossNear(pageOf(column, row), near.x, near.y, 3));
      for (let r = 1; r < row; r++) at = add(at, down(1, r));
      for (let c = 1; c < column; c++) at = add(at, across(c, row));
      return { column, row, x: at.x, y: at.y };
    },
  };
}
