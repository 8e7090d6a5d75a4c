import { clearanceHoleFor } from './clearance-holes.ts';
import { floatMm } from './floating-fasteners.ts';
import { parseThread } from './threads.ts';

/** What is known of a hole, as far as its bolt goes; mm. */
export interface BoltHole {
  readonly kind: 'dowel' | 'bolt' | 'tapped' | 'stud' | 'bore' | 'planned';
  readonly diameterMm: number | null;
  readonly thread: string | null;
}

/** How far two bolted holes may disagree; mm. */
export interface BoltAllowance {
  /** Below nothing where the bolt is thicker than its hole. */
  readonly mm: number;
  /** Whether one of the parts holds the bolt, or both let it float. */
  readonly fastener: 'fixed' | 'floating';
}

/**
 * How far two bolted holes may disagree; null when nothing is known. A bolt held by one part (tapped hole or stud) may be
 * (H − F)/2 off its clearance hole; through two clearance holes both halves add up. A clearance hole of unknown diameter
 * is taken as ISO 273 medium for the thread.
 */
export function boltAllowance(one: BoltHole, other: BoltHole): BoltAllowance | null {
  const held = [one, other].find(holdsBolt);
  const open = [one, other].filter((hole) => !holdsBolt(hole));
  const threadMm = (held && threadMajorMm(held)) ?? threadMajorMm(one) ?? threadMajorMm(other);
  const boltMm = (held && (threadMajorMm(held) ?? held.diameterMm)) ?? threadMm;
  const holesMm = open.map((hole) => hole.diameterMm ?? mediumHoleMm(threadMm)).filter((mm) => mm !== null);
  if (boltMm === null || open.length === 0 || holesMm.length < open.length) return null;
  return {
    mm: holesMm.reduce((sum, holeMm) => sum + floatMm(holeMm, boltMm), 0),
    fastener: held === undefined ? 'floating' : 'fixed',
  };
}

const mediumHoleMm = (threadMm: number | null): number | null =>
  threadMm === null ? null : (clearanceHoleFor(threadMm)?.mediumMm ?? null);

const threadMajorMm = ({ thread }: BoltHole): number | null =>
  thread === null ? null : (parseThread(thread)?.majorMm ?? null);

function holdsBolt({ kind, thread, diameterMm }: BoltHole): boolean {
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
