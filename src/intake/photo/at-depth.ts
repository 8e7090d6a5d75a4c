import { add, distance, scale, sub, type Vec } from '../../geometry/plane/vec.ts';
import type { CameraPlace } from './camera.ts';
import { found, type PhotoOutcome, refused } from './photo-fault.ts';

/**
 * Where a place truly is that lies `depthMm` behind the plane (negative: proud of it) and was traced as if it lay in
 * it: the ray from the camera at height h goes on, so its distance from the camera's foot grows by (h + depth) / h.
 */
export function trueAtDepth(
  { heightMm, foot }: Pick<CameraPlace, 'heightMm' | 'foot'>,
  seen: Vec,
  depthMm: number,
): PhotoOutcome<Vec> {
  if (!(heightMm + depthMm > 0)) return refused({ code: 'beyond-camera', depthMm, heightMm });
  return found(add(foot, scale(sub(seen, foot), (heightMm + depthMm) / heightMm)));
}

/** How far that moves it, mm: what the picture is wrong by there if nothing is done about it. */
export const shiftAtDepthMm = (
  { heightMm, foot }: Pick<CameraPlace, 'heightMm' | 'foot'>,
  seen: Vec,
  depthMm: number,
): number => (distance(seen, foot) * Math.abs(depthMm)) / heightMm;
