import type { Vec } from '../../geometry/plane/vec.ts';

/** Points (mm) hashed by square cells, to find those within one cell's side of a place in constant time. */
export class PointGrid {
  readonly #cellMm: number;
  readonly #points: readonly Vec[];
  readonly #mask: number;
  readonly #first: Int32Array;
  readonly #next: Int32Array;

  /** An empty grid over `points`; they are entered by `add`. */
  constructor(points: readonly Vec[], cellMm: number) {
    this.#cellMm = cellMm;
    this.#points = points;
    this.#mask = 2 ** Math.ceil(Math.log2(points.length + 1)) * 2 - 1;
    this.#first = new Int32Array(this.#mask + 1).fill(-1);
    this.#next = new Int32Array(points.length).fill(-1);
  }

  add(index: number): void {
    const { x, y } = this.#points[index] as Vec;
    const bucket = this.#bucket(this.#cell(x), this.#cell(y));
    this.#next[index] = this.#first[bucket] as number;
    this.#first[bucket] = index;
  }

  /** Every entered point within `withinMm` (at most a cell's side) of `p`, up to `most` of them. */
  near(p: Vec, withinMm: number, most: number): number[] {
    const found: number[] = [];
    const [column, row] = [this.#cell(p.x), this.#cell(p.y)];
    for (let i = column - 1; i <= column + 1; i++) {
      for (let j = row - 1; j <= row + 1; j++) this.#nearInCell(i, j, p, withinMm, most, found);
    }
    return found;
  }

  #nearInCell(column: number, row: number, p: Vec, withinMm: number, most: number, found: number[]): void {
    let at = this.#first[this.#bucket(column, row)] as number;
    for (; at >= 0 && found.length < most; at = this.#next[at] as number) {
      const { x, y } = this.#points[at] as Vec;
      const isNear = (x - p.x) ** 2 + (y - p.y) ** 2 <= withinMm ** 2;
      // cells may share a bucket: a point is found in its own cell alone
      if (isNear && this.#cell(x) === column && this.#cell(y) === row) found.push(at);
    }
  }

  #cell(x: number): number {
    return Math.floor(x / this.#cellMm);
  }

  #bucket(column: number, row: number): number {
    return (Math.imul(column, 73856093) ^ Math.imul(row, 19349663)) & this.#mask;
  }
}

/** Points no further apart than `withinMm` share a node: each is given the index of the first point found there. */
export function nodesOf(points: readonly Vec[], withinMm: number): Int32Array {
  const grid = new PointGrid(points, withinMm);
  return Int32Array.from(points, (p, i) => {
    const [there] = grid.near(p, withinMm, 1);
    if (there !== undefined) return there;
    grid.add(i);
    return i;
  });
}
