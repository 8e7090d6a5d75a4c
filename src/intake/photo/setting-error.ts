import type { Vec } from '../../geometry/plane/vec.ts';
import { framed } from './frame.ts';
import { carried, type Stretch, stretchAt } from './homography.ts';
import { changeWithMap } from './least-squares-map.ts';
import type { PictureSetting } from './picture-setting.ts';
import type { TouchNoise } from './touch-noise.ts';

/** How far from its true place a point of the plane may come to lie: ± limits, held 95 times in a hundred, mm. */
export interface ErrorThere {
  /** Of a place in the picture known exactly: what the setting alone does. */
  readonly settingMm: number;
  /** Of a place touched as well as the known points were. */
  readonly traceMm: number;
}

/**
 * The error at a point of the plane, from the covariance of the fit carried to first order into the plane; null where
 * the point lies behind the camera.
 */
export function errorAt({ fit, noise }: PictureSetting, at: Vec): ErrorThere | null {
  const { plane, map, cofactors } = fit.inside;
  const px = carried(fit.toPicture, at);
  if (px === null) return null;
  const toPlane = stretchAt(fit.toPlane, px);
  const [x, y] = changeWithMap(map, framed(plane, at)) as [readonly number[], readonly number[]];
  const setting: Spread = { xx: paired(x, cofactors, x), xy: paired(x, cofactors, y), yy: paired(y, cofactors, y) };
  const touched: Spread = { ...setting, xx: setting.xx + 1, yy: setting.yy + 1 };
  return {
    settingMm: limitOf(stretched(toPlane, setting), noise),
    traceMm: limitOf(stretched(toPlane, touched), noise),
  };
}

/**
 * The `traceError` of an outline traced over the picture, mm: the worst of its vertices; null where one lies behind the
 * camera. It knows nothing of lens distortion, nor of an outline that does not lie in the plane.
 */
export function traceErrorMm(setting: PictureSetting, outline: readonly Vec[]): number | null {
  const errors = outline.map((at) => errorAt(setting, at)?.traceMm ?? null);
  return errors.includes(null) ? null : Math.max(0, ...(errors as number[]));
}

/** A covariance, in units of the variance of a touch. */
interface Spread {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

function paired(left: readonly number[], matrix: readonly number[], right: readonly number[]): number {
  const size = left.length;
  return left.reduce(
    (sum, l, i) => sum + l * right.reduce((row, r, k) => row + r * (matrix[size * i + k] as number), 0),
    0,
  );
}

const stretched = ([a, b, c, d]: Stretch, { xx, xy, yy }: Spread): Spread => ({
  xx: a * a * xx + 2 * a * b * xy + b * b * yy,
  xy: a * c * xx + (a * d + b * c) * xy + b * d * yy,
  yy: c * c * xx + 2 * c * d * xy + d * d * yy,
});

const outsideLimit = 0.05;

/** χ²(1) / (χ²(2) / 2) at that limit, less 1: what an error along one line needs beyond a round one. */
const lineShare = 0.2823;

/**
 * The distance that 95 of a hundred errors of this spread stay within. Round spreads: trace · F(2, n), whose quantile
 * has the closed form below. Long ones: Satterthwaite's approximation, Biometrics Bulletin 2 (1946) 110, whose
 * 2 / degrees is 1 + longness, taken as straight between its two exact ends.
 */
function limitOf({ xx, xy, yy }: Spread, noise: TouchNoise): number {
  const trace = xx + yy;
  const longness = trace > 0 ? ((xx - yy) ** 2 + 4 * xy * xy) / trace ** 2 : 0;
  return noise.sigmaPx * Math.sqrt(trace * fLimit(noise.degreesOfFreedom) * (1 + lineShare * longness));
}

/** The 95 % quantile of F(2, n). */
const fLimit = (freedom: number): number => (freedom / 2) * (outsideLimit ** (-2 / freedom) - 1);

/** The ± limit of a figure that changes with the eight numbers of the fit as `slopes` say. */
export function limitAlong(slopes: readonly number[], { fit, noise }: PictureSetting): number {
  const xx = paired(slopes, fit.inside.cofactors, slopes) / fit.inside.picture.size ** 2;
  return limitOf({ xx, xy: 0, yy: 0 }, noise);
}
