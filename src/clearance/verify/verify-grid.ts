import type { Edge } from '../../geometry/plane/edge.ts';
import type { Vec } from '../../geometry/plane/vec.ts';
import { crossingsRight, distanceToEdge, type EdgePiece, piecesOf } from './verify-edge.ts';

/** Cells along the longer side: four for each edge of a square outline's worth, within reason. */
const cellsAcross = (edges: number): number => Math.max(16, Math.min(256, Math.round(4 * Math.sqrt(edges))));

/** So few are looked at one by one. */
const fewEdges = 12;

/** Edges sorted into the square cells of a uniform grid, to measure from points without looking at them all. */
export class EdgeGrid {
  readonly cellMm: number;
  readonly #edges: readonly Edge[];
  readonly #left: number;
  readonly #bottom: number;
  readonly #columns: number;
  readonly #rows: number;
  /** Which edges run through each cell, row by row. */
  readonly #cells: readonly (readonly number[])[];
  /** Which edges run through each row. */
  readonly #edgesOfRow: readonly (readonly number[])[];
  /** How many cells, straight or diagonally, to the next one that holds an edge. */
  readonly #stepsToEdge: Int32Array;
  /** Which measurement last came by each edge: a long one runs through many cells. */
  readonly #seenAt: Int32Array;
  #measurement = 0;

  constructor(edges: readonly Edge[]) {
    const box = boxOf(edges.flatMap((edge) => piecesOf(edge, Number.POSITIVE_INFINITY)));
    this.#edges = edges;
    this.#seenAt = new Int32Array(edges.length);
    this.cellMm = Math.max(box.right - box.left, box.top - box.bottom) / cellsAcross(edges.length);
    this.#left = box.left;
    this.#bottom = box.bottom;
    this.#columns = Math.floor((box.right - box.left) / this.cellMm) + 1;
    this.#rows = Math.floor((box.top - box.bottom) / this.cellMm) + 1;
    const cells: number[][] = Array.from({ length: this.#columns * this.#rows }, () => []);
    const rows: number[][] = Array.from({ length: this.#rows }, () => []);
    for (const [i, edge] of edges.entries()) {
      for (const piece of piecesOf(edge, this.cellMm)) this.#file(i, piece, cells, rows);
    }
    this.#cells = cells;
    this.#edgesOfRow = rows;
    this.#stepsToEdge = stepsToFilled(cells, this.#columns, this.#rows);
  }

  /** Distance (mm) to the nearest edge; where that is over `limitMm`, something between the two. */
  distance(p: Vec, limitMm: number): number {
    if (this.#edges.length <= fewEdges)
      return this.#edges.reduce((d, e) => Math.min(d, distanceToEdge(e, p)), Infinity);
    const column = clamp(Math.floor((p.x - this.#left) / this.cellMm), this.#columns);
    const row = clamp(Math.floor((p.y - this.#bottom) / this.cellMm), this.#rows);
    const left = this.#left + column * this.cellMm;
    const bottom = this.#bottom + row * this.cellMm;
    const right = left + this.cellMm;
    const top = bottom + this.cellMm;
    const outside = Math.hypot(Math.max(left - p.x, 0, p.x - right), Math.max(bottom - p.y, 0, p.y - top));
    // how far the point, drawn into the grid, is from leaving its cell
    const inset = outside > 0 ? 0 : Math.min(p.x - left, right - p.x, p.y - bottom, top - p.y);
    const first = this.#stepsToEdge[row * this.#columns + column] as number;
    const ringMm = (ring: number): number => Math.max(outside, ring > 0 ? (ring - 1) * this.cellMm + inset : 0);
    if (ringMm(first) >= limitMm) return ringMm(first);
    this.#measurement++;
    let least = limitMm;
    for (let ring = first; ringMm(ring) < least && ring < this.#columns + this.#rows; ring++) {
      least = this.#leastInRing(p, column, row, ring, least);
    }
    return least;
  }

  /** How often a ray toward +x crosses the edges. */
  crossings(p: Vec): number {
    const row = Math.floor((p.y - this.#bottom) / this.cellMm);
    const edges = this.#edgesOfRow[row];
    if (edges === undefined) return 0;
    let count = 0;
    for (const edge of edges) count += crossingsRight(this.#edges[edge] as Edge, p);
    return count;
  }

  #file(edge: number, { a, b, bulgeMm }: EdgePiece, cells: number[][], rows: number[][]): void {
    // a hair more, so that rounding puts no edge into the cell beside its own alone
    const pad = bulgeMm + 1e-9 * this.cellMm;
    const columnOf = (x: number): number => clamp(Math.floor((x - this.#left) / this.cellMm), this.#columns);
    const rowOf = (y: number): number => clamp(Math.floor((y - this.#bottom) / this.cellMm), this.#rows);
    for (let row = rowOf(Math.min(a.y, b.y) - pad); row <= rowOf(Math.max(a.y, b.y) + pad); row++) {
      fileOnce(rows[row] as number[], edge);
      for (let column = columnOf(Math.min(a.x, b.x) - pad); column <= columnOf(Math.max(a.x, b.x) + pad); column++) {
        fileOnce(cells[row * this.#columns + column] as number[], edge);
      }
    }
  }

  #leastInRing(p: Vec, column: number, row: number, ring: number, limitMm: number): number {
    let least = limitMm;
    for (let r = Math.max(0, row - ring); r <= Math.min(this.#rows - 1, row + ring); r++) {
      const whole = Math.abs(r - row) === ring;
      for (let c = column - ring; c <= column + ring; c += whole || ring === 0 ? 1 : 2 * ring) {
        if (c < 0 || c >= this.#columns) continue;
        for (const edge of this.#cells[r * this.#columns + c] as readonly number[]) {
          if (this.#seenAt[edge] === this.#measurement) continue;
          this.#seenAt[edge] = this.#measurement;
          least = Math.min(least, distanceToEdge(this.#edges[edge] as Edge, p));
        }
      }
    }
    return least;
  }
}

const clamp = (i: number, count: number): number => Math.max(0, Math.min(count - 1, i));

/** The pieces of an edge come one after another, so the last entry tells whether it is in already. */
function fileOnce(list: number[], edge: number): void {
  if (list.at(-1) !== edge) list.push(edge);
}

function boxOf(pieces: readonly EdgePiece[]): { left: number; right: number; bottom: number; top: number } {
  const box = { left: Infinity, right: -Infinity, bottom: Infinity, top: -Infinity };
  for (const { a, b, bulgeMm } of pieces) {
    box.left = Math.min(box.left, a.x - bulgeMm, b.x - bulgeMm);
    box.right = Math.max(box.right, a.x + bulgeMm, b.x + bulgeMm);
    box.bottom = Math.min(box.bottom, a.y - bulgeMm, b.y - bulgeMm);
    box.top = Math.max(box.top, a.y + bulgeMm, b.y + bulgeMm);
  }
  return box;
}

/** Steps of a king from each cell to the nearest filled one: a pass down and a pass up the grid. */
function stepsToFilled(cells: readonly (readonly number[])[], columns: number, rows: number): Int32Array {
  const steps = Int32Array.from(cells, (edges) => (edges.length > 0 ? 0 : columns + rows));
  const relax = (row: number, column: number, back: number): void => {
    const i = row * columns + column;
    for (const [dr, dc] of [
      [0, -back],
      [-back, -1],
      [-back, 0],
      [-back, 1],
    ] as const) {
      const [r, c] = [row + dr, column + dc];
      if (r < 0 || r >= rows || c < 0 || c >= columns) continue;
      steps[i] = Math.min(steps[i] as number, (steps[r * columns + c] as number) + 1);
    }
  };
  for (let row = 0; row < rows; row++) for (let column = 0; column < columns; column++) relax(row, column, 1);
  for (let row = rows - 1; row >= 0; row--)
    for (let column = columns - 1; column >= 0; column--) relax(row, column, -1);
  return steps;
}
