import type { Motion } from '../geometry/motion/motion.ts';
import { type Vec, vec } from '../geometry/plane/vec.ts';

/** Where the moving part stands against its home, in the joint frame: x ↦ R(turn)·x + shift, z = stand-off + depth. */
export interface Position {
  readonly standOffMm: number;
  readonly turnRad: number;
  readonly shift: Vec;
}

/** Where the moving part stands when it is all the way in. */
export const home: Position = { standOffMm: 0, turnRad: 0, shift: vec(0, 0) };

/** One rigid motion between two positions; the stand-off runs linearly with it. */
export interface Leg {
  readonly from: Position;
  readonly to: Position;
  readonly motion: Motion;
}

/** Where the moving part stands at a fraction of a leg. */
export function positionAlong({ from, to, motion }: Leg, at: number): Position {
  const standOffMm = from.standOffMm + at * (to.standOffMm - from.standOffMm);
  const { shift, turnRad } = from;
  if (motion.kind === 'slide')
    return { standOffMm, turnRad, shift: { x: shift.x + at * motion.by.x, y: shift.y + at * motion.by.y } };
  const { pole } = motion;
  const angleRad = at * motion.angleRad;
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  const [x, y] = [shift.x - pole.x, shift.y - pole.y];
  return {
    standOffMm,
    turnRad: turnRad + angleRad,
    shift: { x: pole.x + cos * x - sin * y, y: pole.y + sin * x + cos * y },
  };
}

/** The positions of a path, first to last; none where it has no legs. */
export const positionsOf = (legs: readonly Leg[]): Position[] => [
  ...legs.slice(0, 1).map(({ from }) => from),
  ...legs.map(({ to }) => to),
];

/** The legs through positions; null where one of them has no single motion. */
export function legsThrough(positions: readonly Position[]): Leg[] | null {
  const legs = positions.slice(1).map((to, i) => {
    const from = positions[i] as Position;
    return { from, to, motion: motionBetween(from, to) };
  });
  return legs.every((leg): leg is Leg => leg.motion !== null) ? legs : null;
}

/**
 * The motion between two positions, or null where it has no single reading (turn and shift both change by more
 * than 180°). Same turn: a slide. Same shift u: a turn about u. Both: |Δ| ≤ 180° about the pole
 * (u + v)/2 + ½·cot(Δ/2)·J(v − u), J a quarter turn anticlockwise.
 */
export function motionBetween(from: Position, to: Position): Motion | null {
  const angleRad = to.turnRad - from.turnRad;
  const u = from.shift;
  const by = { x: to.shift.x - u.x, y: to.shift.y - u.y };
  if (angleRad === 0) return { kind: 'slide', by };
  if (by.x === 0 && by.y === 0) return { kind: 'turn', pole: u, angleRad };
  if (Math.abs(angleRad) > Math.PI * (1 + 1e-12)) return null;
  const halfCot = 0.5 / Math.tan(angleRad / 2);
  const pole = { x: u.x + by.x / 2 - halfCot * by.y, y: u.y + by.y / 2 + halfCot * by.x };
  return { kind: 'turn', pole, angleRad };
}
