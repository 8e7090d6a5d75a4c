import type { DepthRange } from '../../job/casting.ts';
import { type Doubt, doubt } from './verify-doubt.ts';
import type { Extrusion } from './verify-extrusions.ts';
import { onOutlineMm, roundingMm } from './verify-limits.ts';
import { type Looks, leastGap, type Passing } from './verify-look.ts';
import { type Stretch, standOffAt, type Way, wherePositive } from './verify-way.ts';

/** Two facing ends, one beyond the other along the crank axis; the gap between them runs linearly along the way. */
interface FacingEnds extends Passing {
  readonly gapAt: (at: number) => number;
  /** Where the gap is none the less than nothing: elsewhere the sections share depth. */
  readonly stretch: Stretch;
}

/**
 * What an end gap says that is not so: that sections stand over one another in the plane with less between their ends,
 * or that none do with as little.
 */
export function endGapDoubts(
  where: 'home' | 'install',
  claimedMm: number | null,
  fixed: readonly Extrusion[],
  moving: readonly Extrusion[],
  ways: readonly Way[],
  looks: Looks,
  mostLooks: number,
): Doubt[] {
  const ends = ways.flatMap((way) => fixed.flatMap((f) => moving.flatMap((m) => facingEnds(f, m, way))));
  /** Whether sections overlap in the plane while their ends are nearer together than that. */
  const overlapsNearer = (mm: number, depthMm: number): boolean =>
    ends.some(({ gapAt, stretch, ...passing }) => {
      const nearer = wherePositive((at) => mm - gapAt(at), stretch);
      return nearer !== null && leastGap(passing, nearer, 0, looks, mostLooks / 2 / ends.length).gapMm < -depthMm;
    });
  if (claimedMm === null) {
    return overlapsNearer(Infinity, onOutlineMm) ? [doubt('end-gap', where, 'Some ends face one another.')] : [];
  }
  const facts = { claimedMm };
  if (overlapsNearer(claimedMm - roundingMm, onOutlineMm)) {
    return [doubt('end-gap', where, `Some ends face one another nearer than ${claimedMm} mm.`, facts)];
  }
  if (!overlapsNearer(claimedMm + roundingMm, -onOutlineMm)) {
    return [doubt('end-gap', where, `No ends face one another as near as ${claimedMm} mm.`, facts)];
  }
  return [];
}

/** Both ways in which two sections can face one another with their ends; not with two ends on mating faces. */
function facingEnds(f: Extrusion, m: Extrusion, way: Way): FacingEnds[] {
  const [a, b] = [f.z, m.z];
  if (a === null || b === null || f.untraced || m.untraced) return [];
  const gaps = [
    ...(isMatingPair(a.toMm, b.fromMm) ? [] : [(at: number) => standOffAt(way, at) + b.fromMm - a.toMm]),
    ...(isMatingPair(a.fromMm, b.toMm) ? [] : [(at: number) => a.fromMm - standOffAt(way, at) - b.toMm]),
  ];
  return gaps.flatMap((gapAt) => {
    // ends that just meet face one another too
    const stretch = wherePositive((at) => gapAt(at) + 1e-9, { from: 0, to: 1 });
    return stretch === null ? [] : [{ fixed: f.shape, moving: m.shape, way, gapAt, stretch }];
  });
}

const isMatingPair = (end: DepthRange['fromMm'], other: DepthRange['toMm']): boolean => end === 0 && other === 0;
