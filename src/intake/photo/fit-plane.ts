import { sub, type Vec } from '../../geometry/plane/vec.ts';
import { directMap } from './direct-map.ts';
import { type Frame, framed, frameOf, framing, unframing } from './frame.ts';
import { carried, chainedMaps, type Homography, homographyOf, inverseMap, weightAt } from './homography.ts';
import { type KnownPoint, pointFaults } from './known-point.ts';
import { cofactorsOf, refined } from './least-squares-map.ts';
import { found, type PhotoOutcome, refused } from './photo-fault.ts';

/** How a plane lies in a picture, by least squares over its known points. */
export interface PlaneFit {
  /** Plane (mm, y up) → picture (px, y down); the weights of the known points are positive. */
  readonly toPicture: Homography;
  readonly toPlane: Homography;
  /** From each point's touch to where the fit puts it in the picture, px. */
  readonly residualsPx: readonly Vec[];
  /** Σ of their squares, px². */
  readonly sumOfSquaresPx2: number;
  /** Two for each point, less the eight that the fit takes up. */
  readonly degreesOfFreedom: number;
  /** What the fit rests on, for the errors that follow from it. */
  readonly inside: InsideFit;
}

/** The fit in coordinates about the points' middle, in units of their spread, where it is well conditioned. */
export interface InsideFit {
  readonly plane: Frame;
  readonly picture: Frame;
  /** Its first eight numbers; the ninth is 1. */
  readonly map: readonly number[];
  /** (JᵀJ)⁻¹, 8 × 8 by rows: times the variance of a touch in these units, the covariance of `map`. */
  readonly cofactors: readonly number[];
}

/**
 * Fits the plane to four or more points. Touching is where the error is made, so the distance in the picture is what
 * the squares are taken of. Start: the direct linear transformation with normalised coordinates (Hartley & Zisserman,
 * Multiple View Geometry, 2nd ed., alg. 4.2); then Gauss-Newton.
 */
export function fitPlane(points: readonly KnownPoint[]): PhotoOutcome<PlaneFit> {
  const faults = pointFaults(points, 4);
  if (faults.length > 0) return refused(...faults);
  const plane = frameOf(points.map(({ at }) => at));
  const picture = frameOf(points.map(({ px }) => px));
  const within = points.map(({ px, at }) => ({ px: framed(picture, px), at: framed(plane, at) }));
  const start = directMap(within);
  if (start === null) return refused({ code: 'undetermined' });
  const behind = points.flatMap((_, i) => (weightAt(homographyOf(start), (within[i] as KnownPoint).at) > 0 ? [] : [i]));
  if (behind.length > 0) return refused({ code: 'behind-camera', points: behind, suspects: [] });
  const map = refined(start, within);
  const cofactors = cofactorsOf(map, within);
  if (cofactors === null) return refused({ code: 'undetermined' });
  return found(planeFit(points, { plane, picture, map, cofactors }));
}

export function planeFit(points: readonly KnownPoint[], inside: InsideFit): PlaneFit {
  const toPicture = pictureMap(inside);
  const residualsPx = points.map(({ px, at }) => sub(carried(toPicture, at) as Vec, px));
  return {
    toPicture,
    toPlane: inverseMap(toPicture),
    residualsPx,
    sumOfSquaresPx2: residualsPx.reduce((sum, { x, y }) => sum + x * x + y * y, 0),
    degreesOfFreedom: 2 * points.length - 8,
    inside,
  };
}

/** Plane → picture, out of the coordinates about the middle. */
export const pictureMap = ({ plane, picture, map }: InsideFit): Homography =>
  chainedMaps(unframing(picture), chainedMaps(homographyOf(map), framing(plane)));
