import { round6 } from '../../geometry/plane/rounding.ts';
import { type Leg, positionsOf } from '../../job/path.ts';
import type { Joint } from '../../joint/joint.ts';
import { legsOf, plainWay, type WayPoint } from '../way-along.ts';

/** Where a way comes from: it was looked for, the fit asks for it, or it only slides. */
export type WayOrigin = 'found' | 'the-fit' | 'straight-in';

/** A way to plan a cut for. */
export interface Candidate {
  readonly of: WayOrigin;
  /** What else it is: the way of a fit may be straight in, or the cheapest itself. */
  readonly also: readonly WayOrigin[];
  readonly way: readonly WayPoint[];
  readonly legs: readonly Leg[];
  /** The same of ways that are one; null where it goes aside of the axis, as no other does. */
  readonly key: string | null;
}

/** A way about the axis; nothing can meet farther off than `clearMm`. */
export const onAxis = (of: WayOrigin, way: readonly WayPoint[], clearMm: number): Candidate => ({
  of,
  also: [],
  way,
  legs: legsOf(way),
  key: keyOf(way, clearMm),
});

/** The way that a fit asks for; none where only home is asked. */
export function ofFit({ fit: { legs } }: Joint, clearMm: number): Candidate[] {
  if (legs.length === 0) return [];
  const positions = positionsOf(legs);
  const isOnAxis = positions.every(({ shift }) => shift.x === 0 && shift.y === 0);
  const way = positions.map(({ turnRad, standOffMm }): WayPoint => ({ turnRad, standOffMm }));
  return [{ of: 'the-fit', also: [], way, legs, key: isOnAxis ? keyOf(way, clearMm) : null }];
}

/** Of ways that are one the first, with what the others are. */
export const eachOnce = (ways: readonly Candidate[]): Candidate[] =>
  ways.flatMap((way, i) => {
    const isSame = ({ key }: Candidate): boolean => key !== null && key === way.key;
    if (ways.slice(0, i).some(isSame)) return [];
    const others = ways.slice(i + 1).filter(isSame);
    return [{ ...way, also: [...new Set(others.map(({ of }) => of))].filter((of) => of !== way.of) }];
  });

/** A way from where something may meet: what is gone before that is all one. */
function keyOf(way: readonly WayPoint[], clearMm: number): string {
  const all = plainWay(way);
  const within = all.slice(all.findIndex((_, i) => (all[i + 1]?.standOffMm ?? 0) < clearMm));
  return within
    .map(({ turnRad, standOffMm }, i) => {
      const slidesIn = i === 0 && turnRad === within[1]?.turnRad;
      return `${round6(turnRad)} ${round6(slidesIn ? Math.min(standOffMm, clearMm) : standOffMm)}`;
    })
    .join();
}
