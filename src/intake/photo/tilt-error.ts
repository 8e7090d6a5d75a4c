/** A lean that a picture taken as square-on may have had. */
export interface Lean {
  /** Between the camera's axis and the plane's normal. */
  readonly tiltRad: number;
  /** From the middle of the picture to the furthest place traced. */
  readonly reachMm: number;
  /** From the camera to the plane along its axis. */
  readonly cameraMm: number;
}

/**
 * How far a place may be put wrong for a lean that nobody measured, mm, where the scale is right in the middle and along
 * the axis leaned about: across it a length r is seen as r·cos t / (1 ± r·sin t / D), the foreshortening and the
 * convergence of a pinhole camera at D. The worse of both sides; null where the lean brings the place up to the camera.
 */
export function tiltErrorMm({ tiltRad, reachMm, cameraMm }: Lean): number | null {
  const converging = (reachMm * Math.sin(Math.abs(tiltRad))) / cameraMm;
  if (!(converging < 1)) return null;
  const seen = (side: number) => (reachMm * Math.cos(tiltRad)) / (1 + side * converging);
  return Math.max(Math.abs(reachMm - seen(1)), Math.abs(reachMm - seen(-1)));
}
