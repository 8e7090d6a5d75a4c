import type { Vec } from '../../geometry/plane/vec.ts';

/**
 * Points sorted into square cells, each into its own and the eight about it, so that a single cell holds all that may be
 * near a place in it.
 */
export interface HoleGrid {
  readonly points: readonly Vec[];
  readonly cellMm: number;
  readonly cells: ReadonlyMap<number, readonly number[]>;
}

/** Cells a side of the plane that are told apart; its square is 2^52. */
const cellsASide = 2 ** 26;

const cellOf = (column: number, row: number): number => column * cellsASide + row;

/** A grid for looking within `cellMm` of a place. */
export function holeGrid(points: readonly Vec[], cellMm: number): HoleGrid {
  const cells = new Map<number, number[]>();
  for (const [i, { x, y }] of points.entries()) {
    const [column, row] = [Math.floor(x / cellMm), Math.floor(y / cellMm)];
    for (let k = 0; k < 9; k++) {
      const cell = cellOf(column - 1 + (k % 3), row - 1 + Math.floor(k / 3));
      const known = cells.get(cell);
      if (known === undefined) cells.set(cell, [i]);
      else known.push(i);
    }
  }
  return { points, cellMm, cells };
}

const nobody: readonly number[] = [];

/** The points that may be within a cell's width of a place, and a few more. */
export const candidatesNear = ({ cells, cellMm }: HoleGrid, x: number, y: number): readonly number[] =>
  cells.get(cellOf(Math.floor(x / cellMm), Math.floor(y / cellMm))) ?? nobody;

/** Whether a point is no farther than `withinMm`, a cell at most, from a place. */
export function hasNear(grid: HoleGrid, x: number, y: number, withinMm: number): boolean {
  for (const index of candidatesNear(grid, x, y)) {
    const at = grid.points[index] as Vec;
    if ((at.x - x) ** 2 + (at.y - y) ** 2 <= withinMm * withinMm) return true;
  }
  return false;
}
