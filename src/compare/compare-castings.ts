import type { Progress } from '../geometry/progress.ts';
import type { Casting } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import type { Refusal } from '../joint/notices.ts';
import { type Agreement, agreementOf } from './agreement.ts';
import { type GroundBack, groundBack } from './ground-back.ts';
import { joinedStanding } from './joined-standing.ts';
import { slabsOf } from './slabs.ts';
import { type Standing, standingIn } from './standing-beyond.ts';

/** What one casting has that another of the same face has not. */
export interface CompareResult {
  /** Why nothing is told; null where something is. */
  readonly refusal: Refusal | null;
  /** What stands beyond the errors of both, the proudest first; metal at a depth where the other has none before it. */
  readonly beyond: readonly Standing[];
  /** What stands by no more than those errors, as traced. */
  readonly within: readonly Standing[];
  /** Null where nothing stands beyond as traced. */
  readonly groundBack: GroundBack | null;
  /** False where nothing was found beyond, but metal may stand there that nobody traced or whose depth nobody stated. */
  readonly settled: boolean;
  /** How well the outlines agree, both ways; null where both have metal at no common depth. */
  readonly agreement: Agreement | null;
}

/** What the second of two castings that lie together has beyond the first, by section and depth; see `layTogether`. */
export function* compareCastings({ fixed, moving, refusal }: Joint): Generator<Progress, CompareResult> {
  if (refusal !== null) return { refusal, beyond: [], within: [], groundBack: null, settled: false, agreement: null };
  const beyond: Standing[] = [];
  const within: Standing[] = [];
  const asTraced: Standing[] = [];
  for (const [i, section] of moving.sections.entries()) {
    yield { step: 'what stands beyond', done: i, of: moving.sections.length };
    for (const slab of slabsOf(section, fixed.sections)) {
      const found = standingIn(section, slab, fixed);
      beyond.push(...found.beyond);
      within.push(...found.within);
      asTraced.push(...found.asTraced);
    }
  }
  yield { step: 'how well they agree', done: 0, of: 1 };
  const agreement = agreementOf(fixed.sections, moving.sections);
  const toldThroughout = isToldThroughout(fixed, moving);
  const settled = beyond.length > 0 || toldThroughout;
  return {
    refusal: null,
    beyond: inOrder(beyond),
    within: inOrder(within),
    groundBack: groundBack(moving, asTraced, toldThroughout),
    settled,
    agreement,
  };
}

/** Metal without a depth may hide what stands beyond; what was traced of the first alone may be anything on the second. */
const isToldThroughout = (first: Casting, second: Casting): boolean =>
  (second.traced === null || isSame(first.traced, second.traced)) &&
  [first, second].every(({ sections }) => sections.every(({ depth }) => depth !== null));

/** Limits of tracing written alike, as in two tracings after one plan. */
const isSame = (a: Casting['traced'], b: Casting['traced']): boolean => JSON.stringify(a) === JSON.stringify(b);

const inOrder = (all: readonly Standing[]): Standing[] => joinedStanding(all).sort(proudestFirst);

const proudestFirst = (a: Standing, b: Standing): number => orderOf(b) - orderOf(a);

const orderOf = ({ proudMm }: Standing): number => proudMm ?? Number.MAX_VALUE;
