import { Matrix, SVD } from 'ml-matrix';
import type { KnownPoint } from './known-point.ts';

/**
 * The first eight numbers of the homography `at` → `px` by the direct linear transformation: the least singular vector,
 * scaled to a ninth number of 1, which the origin's weight is: the middle of points that are all seen is seen itself.
 * Null where no single one is least.
 */
export function directMap(points: readonly KnownPoint[]): number[] | null {
  const rows = points.flatMap(({ px, at: { x, y } }) => [
    [x, y, 1, 0, 0, 0, -px.x * x, -px.x * y, -px.x],
    [0, 0, 0, x, y, 1, -px.y * x, -px.y * y, -px.y],
  ]);
  // four points make eight rows; the ninth, of noughts, lets the decomposition give all nine vectors
  const svd = new SVD(new Matrix([...rows, new Array<number>(9).fill(0)]));
  const values = svd.diagonal;
  if ((values[7] as number) <= 1e-9 * (values[0] as number)) return null;
  const least = svd.rightSingularVectors.getColumn(8);
  const last = least[8] as number;
  return Math.abs(last) <= 1e-9 ? null : least.slice(0, 8).map((value) => value / last);
}
