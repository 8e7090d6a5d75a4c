import type { Vec } from '../../src/geometry/plane/vec.ts';

/**
 * How a plane (mm, y up) lies under a pane (pixels, y down): pixels of a mm, and where the plane's origin is in the pane.
 */
export interface View {
  readonly pxPerMm: number;
  readonly origin: Vec;
}

export interface Extent {
  readonly minX: number;
  readonly maxX: number;
  readonly minY: number;
  readonly maxY: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** From a whole tractor to a hundredth of a millimetre a pixel. */
const [leastPxPerMm, mostPxPerMm] = [0.02, 100];

export const toPane = ({ pxPerMm, origin }: View, { x, y }: Vec): Vec => ({
  x: origin.x + x * pxPerMm,
  y: origin.y - y * pxPerMm,
});

export const toPlane = ({ pxPerMm, origin }: View, { x, y }: Vec): Vec => ({
  x: (x - origin.x) / pxPerMm,
  y: (origin.y - y) / pxPerMm,
});

export const moved = (view: View, by: Vec): View => ({
  ...view,
  origin: { x: view.origin.x + by.x, y: view.origin.y + by.y },
});

/** The same place of the plane stays under `about`. */
export function scaled(view: View, factor: number, about: Vec): View {
  const pxPerMm = Math.min(mostPxPerMm, Math.max(leastPxPerMm, view.pxPerMm * factor));
  const held = toPlane(view, about);
  return { pxPerMm, origin: { x: about.x - held.x * pxPerMm, y: about.y + held.y * pxPerMm } };
}

/** All of an extent, with `marginPx` round it. */
export function fitted({ minX, maxX, minY, maxY }: Extent, { width, height }: Size, marginPx = 24): View {
  const across = Math.max(1, width - 2 * marginPx) / Math.max(1, maxX - minX);
  const up = Math.max(1, height - 2 * marginPx) / Math.max(1, maxY - minY);
  const pxPerMm = Math.min(mostPxPerMm, Math.max(leastPxPerMm, Math.min(across, up)));
  return {
    pxPerMm,
    origin: { x: width / 2 - ((minX + maxX) / 2) * pxPerMm, y: height / 2 + ((minY + maxY) / 2) * pxPerMm },
  };
}

/** Round a place that is gone to there is shown so much, mm. */
const roundMm = 8;

export const withRound = ({ minX, maxX, minY, maxY }: Extent): Extent => ({
  minX: minX - roundMm,
  maxX: maxX + roundMm,
  minY: minY - roundMm,
  maxY: maxY + roundMm,
});

export const matrixOf = ({ pxPerMm, origin }: View): string =>
  `matrix(${pxPerMm} 0 0 ${pxPerMm} ${origin.x} ${origin.y})`;
