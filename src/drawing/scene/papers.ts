import { type BarReading, barMm, trueBars } from './check-bars.ts';

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
  /** How much of the drawing a sheet shows, true mm. */
  readonly tileWidthMm: number;
  readonly tileHeightMm: number;
  /** Drawn lengths for true ones, so that the printer's own error comes off. */
  readonly stretchX: number;
  readonly stretchY: number;
}

interface Size {
  readonly widthMm: number;
  readonly heightMm: number;
}

/**
 * The sheets for a drawing at true size, the way up that takes fewest. Where a printer's error is corrected every sheet
 * stands upright: the error belongs to the paper's sides, not to the drawing's.
 */
export function tilingOf(drawing: Size, paper: Paper, bars: BarReading = trueBars): Tiling {
  const upright = tiled(drawing, paper, 'portrait', bars);
  if (bars.xMm !== barMm || bars.yMm !== barMm) return upright;
  const lying = tiled(drawing, paper, 'landscape', bars);
  const more = sheetsIn(upright) - sheetsIn(lying);
  return more > 0 || (more === 0 && paper.usual === 'landscape') ? lying : upright;
}

export const sheetsIn = ({ columns, rows }: Pick<Tiling, 'columns' | 'rows'>): number => columns * rows;

function tiled(drawing: Size, paper: Paper, turned: PaperOrientation, bars: BarReading): Tiling {
  const upright = turned === 'portrait';
  const [pageWidthMm, pageHeightMm] = upright ? [paper.shortMm, paper.longMm] : [paper.longMm, paper.shortMm];
  const [stretchX, stretchY] = [barMm / (upright ? bars.xMm : bars.yMm), barMm / (upright ? bars.yMm : bars.xMm)];
  const tileWidthMm = (pageWidthMm - 2 * marginMm) / stretchX;
  const tileHeightMm = (pageHeightMm - 2 * marginMm) / stretchY;
  return {
    paper,
    turned,
    pageWidthMm,
    pageHeightMm,
    columns: tilesAlong(drawing.widthMm, tileWidthMm),
    rows: tilesAlong(drawing.heightMm, tileHeightMm),
    tileWidthMm,
    tileHeightMm,
    stretchX,
    stretchY,
  };
}

/** Sheets along one axis: ⌈(L − o)/(p − o)⌉, one at least; a whole number is not pushed over by rounding. */
const tilesAlong = (lengthMm: number, tileMm: number): number =>
  Math.max(1, Math.ceil((lengthMm - overlapMm) / (tileMm - overlapMm) - 1e-9));
