import { Matrix, SVD, solve } from 'ml-matrix';
import { distance, sub, type Vec, vec } from '../../geometry/plane/vec.ts';
import { carried, homographyOf, weightAt } from './homography.ts';
import type { KnownPoint } from './known-point.ts';

const mostSteps = 30;

/** Gauss-Newton; a step that makes the squares no less is halved, and the last of them ends it. */
export function refined(start: readonly number[], points: readonly KnownPoint[]): readonly number[] {
  let map = start;
  let squares = squaresOf(map, points);
  for (let step = 0; step < mostSteps; step += 1) {
    const wanted = solve(jacobian(map, points), Matrix.columnVector(misses(map, points)), true).getColumn(0);
    let share = 1;
    let next = stepped(map, wanted, share);
    while (!(squaresOf(next, points) < squares) && share > 1e-3) {
      share /= 2;
      next = stepped(map, wanted, share);
    }
    const reached = squaresOf(next, points);
    if (!(reached < squares)) break;
    [map, squares] = [next, reached];
  }
  return map;
}

const stepped = (map: readonly number[], by: readonly number[], share: number): number[] =>
  map.map((value, i) => value + share * (by[i] as number));

/** Infinite where a point would come to lie behind the camera. */
function squaresOf(map: readonly number[], points: readonly KnownPoint[]): number {
  const h = homographyOf(map);
  return points.reduce((sum, { px, at }) => {
    const seen = carried(h, at);
    return sum + (seen === null ? Number.POSITIVE_INFINITY : distance(seen, px) ** 2);
  }, 0);
}

function misses(map: readonly number[], points: readonly KnownPoint[]): number[] {
  const h = homographyOf(map);
  return points.flatMap(({ px, at }) => {
    const miss = sub(px, carried(h, at) as Vec);
    return [miss.x, miss.y];
  });
}

/** How the mapped point changes with the eight numbers: two rows. */
export function changeWithMap(map: readonly number[], at: Vec): readonly (readonly number[])[] {
  const h = homographyOf(map);
  const { x, y } = at;
  const seen = carried(h, at) ?? vec(0, 0);
  const rows = [
    [x, y, 1, 0, 0, 0, -seen.x * x, -seen.x * y],
    [0, 0, 0, x, y, 1, -seen.y * x, -seen.y * y],
  ];
  const weight = weightAt(h, at);
  return rows.map((row) => row.map((value) => value / weight));
}

const jacobian = (map: readonly number[], points: readonly KnownPoint[]): Matrix =>
  new Matrix(points.flatMap(({ at }) => changeWithMap(map, at).map((row) => [...row])));

/** (JᵀJ)⁻¹ by the singular values of J; null where the points do not fix the map. */
export function cofactorsOf(map: readonly number[], points: readonly KnownPoint[]): readonly number[] | null {
  const svd = new SVD(jacobian(map, points));
  const values = svd.diagonal;
  if (!((values[7] as number) > 1e-9 * (values[0] as number))) return null;
  const turned = svd.rightSingularVectors.mmul(Matrix.diag(values.map((value) => 1 / value)));
  return turned.mmul(turned.transpose()).to1DArray();
}
