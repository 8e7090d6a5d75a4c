import type { JobFile } from '../../src/files/job-file.ts';
import type { Hole } from '../../src/job/casting.ts';
import type { Part } from '../../src/job/part.ts';
import { castingOf } from '../../src/job/part-to-casting.ts';
import { matchHoles } from '../../src/joint/match-holes.ts';

/** Pairs of holes to be taken or left, with what they give; mm and radians. */
export interface ProposedPairs {
  readonly dowels: readonly PairOff[];
  readonly bolts: readonly PairOff[];
  readonly largestMm: number;
  readonly rmsMm: number;
  readonly otherTurnsRad: readonly number[];
  readonly fitsMirrored: boolean;
}

export interface PairOff {
  readonly pair: readonly [fixed: string, moving: string];
  readonly offMm: number;
}

/** The holes of two parts that come together best; null where none do, or it is not said how the parts were seen. */
export function pairedHoles({ fit, parts }: JobFile): ProposedPairs | null {
  const holesOf = (role: Part): readonly Hole[] => {
    const part = parts[fit[role]];
    if (part?.viewedFrom === undefined) return [];
    return castingOf(fit[role], { ...part, viewedFrom: part.viewedFrom, sections: [] }, role).holes;
  };
  const match = matchHoles(holesOf('fixed'), holesOf('moving'));
  if (match === null) return null;
  const { largestMm, rmsMm, otherTurnsRad, fitsMirrored } = match;
  const pairsOf = (may: (hole: Hole) => boolean): PairOff[] =>
    match.pairs
      .filter(({ fixed }) => may(fixed))
      .map(({ fixed, moving, offMm }) => ({ pair: [fixed.id, moving.id], offMm }));
  return {
    dowels: pairsOf(({ kind }) => kind === 'dowel'),
    bolts: pairsOf(({ kind }) => kind !== 'dowel' && kind !== 'bore'),
    ...{ largestMm, rmsMm, otherTurnsRad, fitsMirrored },
  };
}
