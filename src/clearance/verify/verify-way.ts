import { type Rigid, rigid } from '../../geometry/plane/rigid.ts';
import { add, length, scale, sub, type Vec, vec } from '../../geometry/plane/vec.ts';
import type { DepthRange } from '../../job/casting.ts';
import { home, type Leg } from '../../job/path.ts';

/** A way between two positions, told by these alone. */
export type Way = Pick<Leg, 'from' | 'to'>;

/** A closed part of a way, as fractions. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Standing at home. */
export const atHome: Way = { from: home, to: home };

const turned = (v: Vec, rad: number): Vec =>
  vec(v.x * Math.cos(rad) - v.y * Math.sin(rad), v.x * Math.sin(rad) + v.y * Math.cos(rad));

/**
 * Where a way has carried the moving part at a fraction `at`. The shift runs along an arc from u to v: as complex
 * numbers u + (v − u)·(e^{iΔ·at} − 1)/(e^{iΔ} − 1), which needs no pole and so has none that can be far away.
 */
export function placementAt({ from, to }: Way, at: number): Rigid {
  const turn = to.turnRad - from.turnRad;
  const by = sub(to.shift, from.shift);
  const still = by.x === 0 && by.y === 0;
  const share = turn === 0 ? at : Math.sin((turn * at) / 2) / Math.sin(turn / 2);
  const gone = still ? by : turned(scale(by, share), (turn * (at - 1)) / 2);
  return rigid(from.turnRad + turn * at, add(from.shift, gone));
}

/** Length of the path (mm, the same for every instant) of what stands at `p` when the way begins. */
export function pathMm({ from, to }: Way, p: Vec): number {
  const turn = to.turnRad - from.turnRad;
  const by = sub(to.shift, from.shift);
  if (turn === 0) return length(by);
  const radius = sub(p, from.shift);
  const round = vec(-turn * radius.y, turn * radius.x);
  if (by.x === 0 && by.y === 0) return length(round);
  return length(add(round, turned(scale(by, turn / 2 / Math.sin(turn / 2)), -turn / 2)));
}

export const standOffAt = ({ from, to }: Way, at: number): number =>
  from.standOffMm + at * (to.standOffMm - from.standOffMm);

/** How much two ranges of z overlap (mm, negative: apart) when the second has gone out by the stand-off. */
export const overlapMm = (fixed: DepthRange, moving: DepthRange, standOffMm: number): number =>
  Math.min(fixed.toMm - (moving.fromMm + standOffMm), moving.toMm + standOffMm - fixed.fromMm);

/** Ranges that overlap by less are taken as meeting end to end. */
const flushMm = 1e-6;

/** The part of a way on which two ranges of z overlap; null where they never do by more than a hair. */
export function sharedStretch(fixed: DepthRange | null, moving: DepthRange | null, way: Way): Stretch | null {
  if (fixed === null || moving === null) return { from: 0, to: 1 };
  const roomAbove = (at: number): number => fixed.toMm - (moving.fromMm + standOffAt(way, at));
  const roomBelow = (at: number): number => moving.toMm + standOffAt(way, at) - fixed.fromMm;
  const stretch = wherePositive(roomAbove, wherePositive(roomBelow, { from: 0, to: 1 }));
  if (stretch === null) return null;
  const middle = standOffAt(way, (stretch.from + stretch.to) / 2);
  return overlapMm(fixed, moving, middle) > flushMm ? stretch : null;
}

/** The closed part of a stretch on which a linear function is positive; null where it never is. */
export function wherePositive(linear: (at: number) => number, stretch: Stretch | null): Stretch | null {
  if (stretch === null) return null;
  const [a, b] = [linear(stretch.from), linear(stretch.to)];
  if (a <= 0 && b <= 0) return null;
  const zero = stretch.from + ((stretch.to - stretch.from) * a) / (a - b);
  return { from: a < 0 ? zero : stretch.from, to: b < 0 ? zero : stretch.to };
}
