import { type BarReading, barMm, trueBars } from './check-bars.ts';
import { inkedTiles, type Tile } from './inked-tiles.ts';
import { wordBoxes } from './marks.ts';
import type { Scene } from './scene.ts';
import { textWidthMm, type WidthOfText } from './text-size.ts';

/** Paper that templates are printed on, mm. */
export interface Paper {
  readonly name: string;
  readonly shortMm: number;
  readonly longMm: number;
  /** Which way up it goes where both ways take as many sheets. */
  readonly usual: PaperOrientation;
}

export type PaperOrientation = 'portrait' | 'landscape';

export const papers = {
  a4: { name: 'A4', shortMm: 210, longMm: 297, usual: 'portrait' },
  a3: { name: 'A3', shortMm: 297, longMm: 420, usual: 'landscape' },
  letter: { name: 'Letter', shortMm: 215.9, longMm: 279.4, usual: 'portrait' },
} as const satisfies Record<string, Paper>;

export type PaperName = keyof typeof papers;

export const isPaper = (name: string): name is PaperName => Object.hasOwn(papers, name);

/** What stays blank but for bars and words, and what two sheets that join have in common, mm. */
export const marginMm = 10;
export const overlapMm = 10;

/** How a drawing is parted into sheets. */
export interface Tiling {
  readonly paper: Paper;
  readonly turned: PaperOrientation;
  readonly pageWidthMm: number;
  readonly pageHeightMm: number;
  readonly columns: number;
  readonly rows: number;
  /** Where columns join, true mm from the left of the drawing, and rows, from its top. */
  readonly columnJoins: readonly number[];
  readonly rowJoins: readonly number[];
  /** The sheets that have anything on them, row by row: no others are printed. */
  readonly sheets: readonly Tile[];
  /** How much of the drawing a sheet shows at the most, true mm. */
  readonly tileWidthMm: number;
  readonly tileHeightMm: number;
  /** Drawn lengths for true ones, so that the printer's own error comes off. */
  readonly stretchX: number;
  readonly stretchY: number;
}

type Drawing = Pick<Scene, 'widthMm' | 'heightMm' | 'views'>;

/**
 * The sheets for a drawing at true size, the way up that takes fewest. Where a printer's error is corrected every sheet
 * stands upright: the error belongs to the paper's sides, not to the drawing's.
 */
export function tilingOf(
  drawing: Drawing,
  paper: Paper,
  bars: BarReading = trueBars,
  widthOf: WidthOfText = textWidthMm,
): Tiling {
  const turnedTo = (turned: PaperOrientation): Tiling => tiled(drawing, paper, turned, bars, widthOf);
  const upright = turnedTo('portrait');
  if (bars.xMm !== barMm || bars.yMm !== barMm) return upright;
  const lying = turnedTo('landscape');
  const more = upright.sheets.length - lying.sheets.length || tilesIn(upright) - tilesIn(lying);
  return more > 0 || (more === 0 && paper.usual === 'landscape') ? lying : upright;
}

const tilesIn = ({ columns, rows }: Tiling): number => columns * rows;

function tiled(
  drawing: Drawing,
  paper: Paper,
  turned: PaperOrientation,
  bars: BarReading,
  widthOf: WidthOfText,
): Tiling {
  const { widthMm, heightMm } = drawing;
  const upright = turned === 'portrait';
  const [pageWidthMm, pageHeightMm] = upright ? [paper.shortMm, paper.longMm] : [paper.longMm, paper.shortMm];
  const [stretchX, stretchY] = [barMm / (upright ? bars.xMm : bars.yMm), barMm / (upright ? bars.yMm : bars.xMm)];
  const tileWidthMm = (pageWidthMm - 2 * marginMm) / stretchX;
  const tileHeightMm = (pageHeightMm - 2 * marginMm) / stretchY;
  const words = wordBoxes(drawing, widthOf);
  const across = words.map(({ minX, maxX }): Span => [minX, maxX]);
  const down = words.map(({ minY, maxY }): Span => [heightMm - maxY, heightMm - minY]);
  const columnJoins = joinsAlong(widthMm, tileWidthMm, across);
  const rowJoins = joinsAlong(heightMm, tileHeightMm, down);
  return {
    paper,
    turned,
    pageWidthMm,
    pageHeightMm,
    columns: columnJoins.length + 1,
    rows: rowJoins.length + 1,
    columnJoins,
    rowJoins,
    sheets: inkedTiles(drawing, columnJoins, rowJoins, widthOf),
    tileWidthMm,
    tileHeightMm,
    stretchX,
    stretchY,
  };
}

/** From the edge of a drawing to its words at the most, and what printers are off, mm. */
const besideWordsMm = 40;

/** How wide words may be at the left of a drawing for no join of a paper to have to cut them, whichever way up, mm. */
export const joinlessMm = ({ shortMm }: Paper): number => shortMm - 2 * marginMm - overlapMm / 2 - besideWordsMm;

/** From where to where words reach along a drawing, mm. */
type Span = readonly [fromMm: number, toMm: number];

/** Between a join and words, mm: clear of the scissors. */
const clearMm = 1;

/** Words keep clear of all that two sheets share, or of the cut alone where that saves a sheet. */
function joinsAlong(lengthMm: number, tileMm: number, words: readonly Span[]): readonly number[] {
  const wide = joinsClearOf(words, overlapMm / 2, lengthMm, tileMm);
  const close = joinsClearOf(words, clearMm, lengthMm, tileMm);
  return wide.length > close.length ? close : wide;
}

/** Each join as far along as a sheet reaches, or before the words it would cut there where they leave any room. */
function joinsClearOf(words: readonly Span[], roomMm: number, lengthMm: number, tileMm: number): readonly number[] {
  const joins: number[] = [];
  // a whole number of sheets is not pushed over by rounding
  for (let reachMm = tileMm - overlapMm / 2; reachMm + overlapMm / 2 < lengthMm - 1e-6; ) {
    const giveMm = tileMm / 3;
    const joinMm = clearBefore(reachMm, giveMm, words, roomMm) ?? clearBefore(reachMm, giveMm, words, 0) ?? reachMm;
    joins.push(joinMm);
    reachMm = joinMm + tileMm - overlapMm;
  }
  return joins;
}

/** The last place that keeps so much room from all words; null where they leave none so far back. */
function clearBefore(reachMm: number, giveMm: number, words: readonly Span[], roomMm: number): number | null {
  let at = reachMm;
  while (at >= reachMm - giveMm) {
    const cut = words.filter(([fromMm, toMm]) => fromMm < at + roomMm && toMm > at - roomMm);
    if (cut.length === 0) return at;
    at = Math.min(...cut.map(([fromMm]) => fromMm)) - roomMm;
  }
  return null;
}
