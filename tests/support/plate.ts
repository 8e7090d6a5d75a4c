import type { Vec } from '../../src/geometry/plane/vec.ts';
import type { KnownPoint } from '../../src/intake/photo/known-point.ts';
import type { PhotoOutcome } from '../../src/intake/photo/photo-fault.ts';
import { normal, type Pinhole, seenInPlane } from './camera.ts';
import type { Random } from './random.ts';

/** Hole centres of a plate 450 × 330 mm, as a builder would choose them: round the rim, none in line. */
export const sixHoles: readonly Vec[] = [
  { x: -205, y: -140 },
  { x: 12, y: -150 },
  { x: 210, y: -128 },
  { x: 198, y: 142 },
  { x: -18, y: 126 },
  { x: -190, y: 150 },
];

export const eightHoles: readonly Vec[] = [...sixHoles, { x: -214, y: 6 }, { x: 216, y: 14 }];

/** Holes of the same plate that no setting is told of. */
export const otherHoles: readonly Vec[] = [
  { x: 0, y: 0 },
  { x: -110, y: 70 },
  { x: 95, y: -60 },
  { x: 170, y: 80 },
  { x: -160, y: -75 },
  { x: 60, y: 140 },
  { x: -215, y: 155 },
  { x: 215, y: -155 },
];

export const touched = (camera: Pinhole, holes: readonly Vec[]): KnownPoint[] =>
  holes.map((at) => ({ at, px: seenInPlane(camera, at) }));

export const shaken = (random: Random, { x, y }: Vec, sigma: number): Vec => ({
  x: x + sigma * normal(random),
  y: y + sigma * normal(random),
});

export const touchedRoughly = (camera: Pinhole, holes: readonly Vec[], random: Random, sigmaPx: number): KnownPoint[] =>
  touched(camera, holes).map(({ at, px }) => ({ at, px: shaken(random, px, sigmaPx) }));

/** The value of an outcome that must be there. */
export function settled<T>(outcome: PhotoOutcome<T>): T {
  if (!outcome.ok) throw new Error(`refused: ${JSON.stringify(outcome.faults)}`);
  return outcome.value;
}

export const faultsOf = (outcome: PhotoOutcome<unknown>) => (outcome.ok ? [] : outcome.faults);
