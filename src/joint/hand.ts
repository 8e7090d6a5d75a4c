import type { Hand, Warning } from '../answers/check-answer.ts';
import { mirrorPoint } from '../geometry/plane/loop.ts';
import { type PointPair, rigidFit } from '../geometry/plane/rigid-fit.ts';
import type { Job } from '../job/job.ts';
import { givenLength } from '../job/length-text.ts';
import { jointWarning } from './warnings.ts';

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

/** What the words about the hand are made of. */
type HandedJob = Pick<Job, 'fixed' | 'moving'> & { readonly fit: Pick<Job['fit'], 'units'> };

/** What to tell the builder about the hand; nothing where it agrees. */
export function handWarnings(check: HandCheck, { fit, fixed, moving }: HandedJob): Warning[] {
  switch (check.hand) {
    case 'agrees':
      return [];
    case 'mirrored': {
      const asDrawn = givenLength(check.asDrawnRmsMm ?? 0, fit.units);
      const mirrored = givenLength(check.mirroredRmsMm ?? 0, fit.units);
      const text = `One of the two drawings is seen from the other side: as drawn the paired holes miss each other by ${asDrawn} (rms), with one drawing mirrored by ${mirrored}. Look again at viewedFrom of ${fixed.file} ("${fixed.viewedFrom}") and ${moving.file} ("${moving.viewedFrom}").`;
      return [jointWarning('hand-mirrored', text)];
    }
    case 'cannot-tell': {
      const text =
        check.asDrawnRmsMm === null
          ? 'Fewer than three holes are paired, so they cannot tell whether one drawing is seen from the other side. Pair a hole or bolt that does not stand in line with the dowels, or check the hand on the castings.'
          : 'The paired holes fit about as well as drawn as mirrored, so they cannot tell whether one drawing is seen from the other side. Pair a hole or bolt that stands well off their line, or check the hand on the castings.';
      return [jointWarning('hand-cannot-tell', text)];
    }
  }
}
