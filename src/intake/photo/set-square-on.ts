import { inverse, Matrix } from 'ml-matrix';
import { cross, dot, scale } from '../../geometry/plane/vec.ts';
import { type InsideFit, planeFit } from './fit-plane.ts';
import { framed, frameOf } from './frame.ts';
import type { KnownPoint } from './known-point.ts';
import { pointFaults } from './known-point.ts';
import { changeWithMap } from './least-squares-map.ts';
import { found, type PhotoOutcome, refused } from './photo-fault.ts';
import type { PictureSetting } from './picture-setting.ts';
import { type StatedErrors, statedFaults, statedVariancePx2, touchNoise } from './touch-noise.ts';

/** How the eight numbers of a map follow from the four of a similarity that turns y over: p, q and the shift. */
const similarities = new Matrix([
  [1, 0, 0, 0],
  [0, 1, 0, 0],
  [0, 0, 1, 0],
  [0, 1, 0, 0],
  [-1, 0, 0, 0],
  [0, 0, 0, 1],
  [0, 0, 0, 0],
  [0, 0, 0, 0],
]);

/**
 * Sets a picture by two points whose distance is known, for a camera that looked straight at the plane: scale, turn and
 * shift alone. The error stated follows from touching only; what a lean of the camera adds is `tiltErrorMm`'s, and no
 * residual can show it. For a bare distance d put the points at (0, 0) and (d, 0).
 */
export function setSquareOn(first: KnownPoint, second: KnownPoint, stated: StatedErrors): PhotoOutcome<PictureSetting> {
  const points = [first, second];
  const faults = [...statedFaults(stated), ...pointFaults(points, 2)];
  if (faults.length > 0) return refused(...faults);
  const fit = { ...planeFit(points, insideOf(points)), degreesOfFreedom: 0 };
  const unchecked = { residualMm: 0, othersPutIt: null, leaveOneOutMm: null };
  return found({
    by: 'square-on',
    fit,
    noise: touchNoise(fit, statedVariancePx2(fit, points, stated)),
    points: [unchecked, unchecked],
    mirrored: false,
    agree: true,
    suspects: [],
  });
}

function insideOf(points: readonly KnownPoint[]): InsideFit {
  const plane = frameOf(points.map(({ at }) => at));
  const picture = frameOf(points.map(({ px }) => px));
  const within = points.map(({ px, at }) => ({ px: framed(picture, px), at: framed(plane, at) }));
  const [{ px, at }] = within as [KnownPoint, KnownPoint];
  // both middles are the origin and both sizes 1: what is left is the turn from `at`, its y turned over, to `px`
  const seen = scale({ x: at.x, y: -at.y }, 1 / dot(at, at));
  const [cos, sin] = [dot(seen, px), cross(seen, px)];
  const map = [cos, sin, 0, sin, -cos, 0, 0, 0];
  const changes = new Matrix(within.flatMap((point) => changeWithMap(map, point.at).map((row) => [...row])));
  const j = changes.mmul(similarities);
  const cofactors = similarities.mmul(inverse(j.transpose().mmul(j))).mmul(similarities.transpose());
  return { plane, picture, map, cofactors: cofactors.to1DArray() };
}
