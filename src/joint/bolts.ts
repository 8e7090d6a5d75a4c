import type { BoltAnswer, Warning } from '../answers/check-answer.ts';
import { round6 } from '../geometry/plane/rounding.ts';
import { distance } from '../geometry/plane/vec.ts';
import type { Hole } from '../job/casting.ts';
import type { HolePair } from '../job/job.ts';
import { givenLength } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import { clearanceHoleFor } from '../trade/clearance-holes.ts';
import { floatMm } from '../trade/floating-fasteners.ts';
import { parseThread } from '../trade/threads.ts';
import { jointWarning } from './warnings.ts';

// rounding alone must not part a bolt that stands exactly at its limit
const hairMm = 1e-9;

/** How far each bolt is off its hole and how far it may be, mm; both holes in the joint frame at home. */
export const boltAnswers = (pairs: readonly HolePair[]): BoltAnswer[] => pairs.map(boltAnswer);

function boltAnswer(pair: HolePair): BoltAnswer {
  const offsetMm = distance(pair.fixed.at, pair.moving.at);
  const allowedMm = allowedOffsetMm(pair);
  return {
    fixed: pair.fixed.id,
    moving: pair.moving.id,
    offsetMm: round6(offsetMm),
    allowedMm: allowedMm === null ? null : round6(allowedMm),
    linesUp: allowedMm === null ? null : offsetMm <= allowedMm + hairMm,
  };
}

/** A warning for each bolt that does not line up, at its hole in the fixed part. */
export const boltWarnings = (pairs: readonly HolePair[], answers: readonly BoltAnswer[], units: Units): Warning[] =>
  pairs.flatMap((pair, i) => {
    const answer = answers[i];
    if (answer?.linesUp !== false) return [];
    return [jointWarning('bolt-does-not-line-up', boltText(answer, units), pair.fixed.at)];
  });

function boltText({ fixed, moving, offsetMm, allowedMm }: BoltAnswer, units: Units): string {
  if (allowedMm !== null && allowedMm < 0) return `Bolt ${fixed}–${moving} is thicker than its hole.`;
  return `Bolt ${fixed}–${moving} does not line up: ${givenLength(offsetMm, units)} off, ${givenLength(allowedMm ?? 0, units)} allowed.`;
}

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
