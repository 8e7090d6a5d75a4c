import { distance } from '../geometry/plane/vec.ts';
import type { Hole } from '../job/casting.ts';
import type { HolePair } from '../job/job.ts';
import { clearanceHoleFor } from '../trade/clearance-holes.ts';
import { floatMm } from '../trade/floating-fasteners.ts';
import { parseThread } from '../trade/threads.ts';
import type { JointNotice, PairNames } from './notices.ts';
import { boltHairMm } from './tolerances.ts';

/** How far a bolt is off its hole and how far it may be, mm. */
export interface Bolt extends PairNames {
  readonly offsetMm: number;
  /** Null where nothing is known of it; below nothing where the bolt is thicker than its hole. */
  readonly allowedMm: number | null;
  readonly linesUp: boolean | null;
}

/** Each bolt with both its holes in the joint frame at home. */
export const boltsOf = (pairs: readonly HolePair[]): Bolt[] => pairs.map(boltOf);

function boltOf(pair: HolePair): Bolt {
  const offsetMm = distance(pair.fixed.at, pair.moving.at);
  const allowedMm = allowedOffsetMm(pair);
  return {
    fixed: pair.fixed.id,
    moving: pair.moving.id,
    offsetMm,
    allowedMm,
    linesUp: allowedMm === null ? null : offsetMm <= allowedMm + boltHairMm,
  };
}

/** A notice for each bolt that does not line up, at its hole in the fixed part. */
export const boltNotices = (pairs: readonly HolePair[]): JointNotice[] =>
  pairs.flatMap((pair) => {
    const { linesUp, allowedMm, ...bolt } = boltOf(pair);
    if (linesUp !== false || allowedMm === null) return [];
    return [{ code: 'bolt-does-not-line-up', ...bolt, allowedMm, at: pair.fixed.at }];
  });

/**
 * How far two bolted holes may disagree, mm; null when nothing is known. A bolt held by one part (tapped hole or stud)
 * may be (H − F)/2 off its clearance hole; through two clearance holes both halves add up. A clearance hole of unknown
 * diameter is taken as ISO 273 medium for the thread.
 */
function allowedOffsetMm({ fixed, moving }: HolePair): number | null {
  const held = [fixed, moving].find(holdsBolt);
  const open = [fixed, moving].filter((hole) => !holdsBolt(hole));
  const threadMm = (held && threadMajorMm(held)) ?? threadMajorMm(fixed) ?? threadMajorMm(moving);
  const boltMm = (held && (threadMajorMm(held) ?? held.diameterMm)) ?? threadMm;
  const holesMm = open.map((hole) => hole.diameterMm ?? mediumHoleMm(threadMm)).filter((mm) => mm !== null);
  if (boltMm === null || open.length === 0 || holesMm.length < open.length) return null;
  return holesMm.reduce((sum, holeMm) => sum + floatMm(holeMm, boltMm), 0);
}

const mediumHoleMm = (threadMm: number | null): number | null =>
  threadMm === null ? null : (clearanceHoleFor(threadMm)?.mediumMm ?? null);

const threadMajorMm = ({ thread }: Hole): number | null =>
  thread === null ? null : (parseThread(thread)?.majorMm ?? null);

function holdsBolt({ kind, thread, diameterMm }: Hole): boolean {
  switch (kind) {
    case 'tapped':
    case 'stud':
      return true;
    case 'planned':
      // a planned hole with a thread and no diameter is one to be tapped: the stricter reading
      return thread !== null && diameterMm === null;
    case 'bolt':
    case 'bore':
    case 'dowel':
      return false;
  }
}
