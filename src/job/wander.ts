/** How far one may stray from the way in while steering by hand, each way of each. */
export interface Wander {
  readonly turnRad: number;
  readonly standOffMm: number;
  /** Aside in the plane of the face, in any direction. */
  readonly shiftMm: number;
  /** Rocked about any line of the mating face through the crank axis. */
  readonly tiltRad: number;
}

export const noWander: Wander = { turnRad: 0, standOffMm: 0, shiftMm: 0, tiltRad: 0 };

const degree = Math.PI / 180;

/** The most that is still steering: beyond it a figure is a slip of the pen. Common practice, no source. */
export const mostWander: Wander = { turnRad: 10 * degree, standOffMm: 25, shiftMm: 25, tiltRad: 5 * degree };
