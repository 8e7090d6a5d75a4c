import type { Vec } from '../plane/vec.ts';
import { roundingMm } from './tolerances.ts';

/** Points in a row, flat, and boxes round so many of them at a time, so that far ones are passed over together. */
export interface PointBlocks {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  /** Centre and half sizes of each block, with the point after its last. */
  readonly boxes: Float64Array;
}

export const blockSize = 16;

/** Blocks of points in a row; a closed one comes back to its first point at the end. */
export function pointBlocks(points: readonly Vec[], isClosed: boolean): PointBlocks {
  const all = isClosed && points.length > 0 ? [...points, points[0] as Vec] : points;
  const xs = Float64Array.from(all, ({ x }) => x);
  const ys = Float64Array.from(all, ({ y }) => y);
  const boxes = new Float64Array(4 * Math.ceil(all.length / blockSize));
  for (let block = 0; 4 * block < boxes.length; block++) {
    const [from, to] = [block * blockSize, Math.min((block + 1) * blockSize + 1, all.length)];
    const [x, halfX] = middleOf(xs, from, to);
    const [y, halfY] = middleOf(ys, from, to);
    boxes.set([x, y, halfX, halfY], 4 * block);
  }
  return { xs, ys, boxes };
}

function middleOf(values: Float64Array, from: number, to: number): [number, number] {
  let [least, most] = [Infinity, -Infinity];
  for (let i = from; i < to; i++) {
    least = Math.min(least, values[i] as number);
    most = Math.max(most, values[i] as number);
  }
  return [(least + most) / 2, (most - least) / 2];
}

/**
 * Calls `visit` with the first point of each block, and the one past its last, that may come within a range of lengths
 * along a unit direction from a place; the range is asked for anew for every block.
 */
export function forBlocksWithin(
  { xs, boxes }: PointBlocks,
  from: Vec,
  along: Vec,
  range: () => readonly [number, number],
  visit: (first: number, past: number) => void,
): void {
  for (let block = 0; 4 * block < boxes.length; block++) {
    const i = 4 * block;
    const mm = ((boxes[i] as number) - from.x) * along.x + ((boxes[i + 1] as number) - from.y) * along.y;
    const halfMm =
      Math.abs(along.x) * (boxes[i + 2] as number) + Math.abs(along.y) * (boxes[i + 3] as number) + roundingMm;
    const [least, most] = range();
    if (mm + halfMm < least || mm - halfMm > most) continue;
    visit(block * blockSize, Math.min((block + 1) * blockSize, xs.length));
  }
}
