import { type Vec, vec } from '../../geometry/plane/vec.ts';

/** A map of one plane onto another that keeps straight lines straight: nine numbers by rows, up to a common factor. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

/** The first-order change of a mapped point, by rows: d(x', y') / d(x, y). */
export type Stretch = readonly [number, number, number, number];

/** From its first eight numbers, the ninth being 1. */
export const homographyOf = (map: readonly number[]): Homography => [...map, 1] as unknown as Homography;

/** Where a point is carried; `null` on the horizon, or beyond it where `h` is scaled so that weights are positive. */
export function carried(h: Homography, p: Vec): Vec | null {
  const w = weightAt(h, p);
  return w > 0 ? vec((h[0] * p.x + h[1] * p.y + h[2]) / w, (h[3] * p.x + h[4] * p.y + h[5]) / w) : null;
}

/** The third coordinate, in proportion to how far before the camera the point lies; 0 on the horizon. */
export const weightAt = (h: Homography, { x, y }: Vec): number => h[6] * x + h[7] * y + h[8];

export function stretchAt(h: Homography, p: Vec): Stretch {
  const w = weightAt(h, p);
  const x = (h[0] * p.x + h[1] * p.y + h[2]) / w;
  const y = (h[3] * p.x + h[4] * p.y + h[5]) / w;
  return [(h[0] - x * h[6]) / w, (h[1] - x * h[7]) / w, (h[3] - y * h[6]) / w, (h[4] - y * h[7]) / w];
}

/** One map after another: `chainedMaps(p, q)` does q first. */
export function chainedMaps(second: Homography, first: Homography): Homography {
  const at = (row: number, column: number) =>
    [0, 1, 2].reduce((sum, k) => sum + (second[3 * row + k] as number) * (first[3 * k + column] as number), 0);
  return [at(0, 0), at(0, 1), at(0, 2), at(1, 0), at(1, 1), at(1, 2), at(2, 0), at(2, 1), at(2, 2)];
}

/**
 * The map back, by cofactors over the determinant, so that the weight of a point and that of its image are reciprocal
 * and so of one sign.
 */
export function inverseMap(m: Homography): Homography {
  const [a, b, c, d, e, f, g, h, i] = m;
  const [first, second, third] = [e * i - f * h, f * g - d * i, d * h - e * g];
  const determinant = a * first + b * second + c * third;
  const back = [first, c * h - b * i, b * f - c * e, second, a * i - c * g, c * d - a * f, third, b * g - a * h];
  return [...back, a * e - b * d].map((value) => value / determinant) as unknown as Homography;
}

/** Whether the map turns the plane over. */
export function turnsOver(h: Homography, at: Vec): boolean {
  const [a, b, c, d] = stretchAt(h, at);
  return a * d - b * c < 0;
}
