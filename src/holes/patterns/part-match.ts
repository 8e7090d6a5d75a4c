import { matchPatterns, type PatternMatch } from './match-patterns.ts';
import type { MatchOptions, PatternHole } from './pattern.ts';
import { type StandardPattern, standardPatternsIn } from './standard-pattern.ts';

/** A part as far as its holes go. */
export interface PatternOf {
  readonly name: string;
  readonly holes: readonly PatternHole[];
}

/** The patterns of two parts laid upon one another, and the standards each of them follows. */
export interface PartMatch {
  readonly fixed: PatternOf;
  readonly moving: PatternOf;
  readonly options: MatchOptions;
  readonly match: PatternMatch;
  readonly standards: { readonly fixed: readonly StandardPattern[]; readonly moving: readonly StandardPattern[] };
  /** A match with the hands as drawn, in which all bolts that are known can go in at once. */
  readonly goes: boolean;
}

/** Matches the holes of two parts, and looks both through for standard bolt circles. */
export function matchParts(fixed: PatternOf, moving: PatternOf, options: MatchOptions): PartMatch {
  const match = matchPatterns(fixed.holes, moving.holes, options);
  const { conclusion, hand, bolts } = match;
  return {
    fixed,
    moving,
    options,
    match,
    standards: {
      fixed: standardPatternsIn(fixed.holes, options.reachMm),
      moving: standardPatternsIn(moving.holes, options.reachMm),
    },
    goes: conclusion === 'match' && hand === 'as-drawn' && (bolts === null || bolts.conclusion === 'go-in'),
  };
}
