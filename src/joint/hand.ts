import { mirrorPoint } from '../geometry/plane/loop.ts';
import { type PointPair, rigidFit } from '../geometry/plane/rigid-fit.ts';
import type { JointNotice } from './notices.ts';

/** Whether two drawings are seen with the same hand, as far as their paired holes tell. */
export type Hand = 'agrees' | 'mirrored' | 'cannot-tell';

export interface HandCheck {
  readonly hand: Hand;
  /** What is left of the best fit, mm; null for fewer than three pairs. */
  readonly asDrawnRmsMm: number | null;
  readonly mirroredRmsMm: number | null;
}

/**
 * One hand must fit this many times better than the other, and by this much, to be believed. Mirrored, a pattern
 * misses by twice its own rms distance from its best line, so a pattern within ½ mm of a line, which tracing errors of
 * ± 0.5 to 1 mm can bend either way, tells nothing; and where neither hand fits (bolts that were never meant for each
 * other) a small lead is chance.
 */
const decisiveRatio = 3;
const decisiveMm = 1;

/**
 * Whether both drawings are seen with the same hand: the best rigid fit of all paired holes (mm) as drawn against the
 * best with the moving holes mirrored. Two holes, or holes on one line, fit both ways and cannot tell.
 */
export function checkHand(pairs: readonly PointPair[]): HandCheck {
  if (pairs.length < 3) return { hand: 'cannot-tell', asDrawnRmsMm: null, mirroredRmsMm: null };
  const asDrawnRmsMm = rigidFit(pairs).rmsMm;
  const mirroredRmsMm = rigidFit(pairs.map(({ from, to }) => ({ from: mirrorPoint(from), to }))).rmsMm;
  return { hand: decide(asDrawnRmsMm, mirroredRmsMm), asDrawnRmsMm, mirroredRmsMm };
}

function decide(asDrawnMm: number, mirroredMm: number): Hand {
  const beats = (good: number, bad: number): boolean => bad > decisiveRatio * good && bad - good > decisiveMm;
  if (beats(asDrawnMm, mirroredMm)) return 'agrees';
  return beats(mirroredMm, asDrawnMm) ? 'mirrored' : 'cannot-tell';
}

/** Where the holes cannot tell the hand, and why; that it is mirrored is told as the reason not to judge. */
export const handNotices = ({ hand, asDrawnRmsMm }: HandCheck): JointNotice[] =>
  hand === 'cannot-tell'
    ? [{ code: 'hand-cannot-tell', why: asDrawnRmsMm === null ? 'too-few' : 'fit-both-ways' }]
    : [];
