import { apply, inverse } from '../../geometry/plane/rigid.ts';
import { type Vec, vec } from '../../geometry/plane/vec.ts';
import { holeCentres, housingFlanges } from '../../trade/flange-patterns.ts';
import { flywheelPatterns } from '../../trade/flywheel-patterns.ts';
import type { Source } from '../../trade/sourced.ts';
import { expectedByChance } from './by-chance.ts';
import { fewestPairs, type PatternHole } from './pattern.ts';
import { searchPositions } from './search.ts';

/** A standard circle of bolts among the holes of a part; mm and radians. */
export interface StandardPattern {
  readonly standard: 'SAE J617' | 'SAE J620';
  readonly number: string;
  readonly boltCircleMm: number;
  readonly thread: string;
  readonly source: Source;
  readonly holes: number;
  readonly found: readonly PatternHole[];
  readonly rmsMm: number;
  /** The middle of the circle in the part's own frame. */
  readonly centre: Vec;
  /** How far the holes are turned from where the standard has them, half a hole's spacing either way at the most. */
  readonly turnRad: number;
}

const catalogue = [
  ...housingFlanges.map((pattern) => ({ ...pattern, standard: 'SAE J617' as const })),
  ...flywheelPatterns.map((pattern) => ({ ...pattern, standard: 'SAE J620' as const })),
];

/** Fewer than six holes in ten, or than four, are no flange. */
const leastShare = 0.6;
const leastHoles = 4;
const chanceLimit = 0.05;

/** The standard bolt circles that so many of the holes lie on, the fullest and nearest first. */
export function standardPatternsIn(holes: readonly PatternHole[], reachMm: number): StandardPattern[] {
  const options = { reachMm, centred: false };
  const at = holes.map((hole) => hole.at);
  return catalogue
    .flatMap((pattern): StandardPattern[] => {
      const centres = holeCentres(pattern).map(({ x, y }) => vec(x, y));
      const { positions, trials } = searchPositions(centres, at, options);
      const [best] = positions;
      if (best === undefined || best.pairs.length < Math.max(leastHoles, leastShare * pattern.holes)) return [];
      const further = best.pairs.length - fewestPairs(options);
      if (expectedByChance(centres, at.length, further, trials, options) > chanceLimit) return [];
      const spacingRad = (2 * Math.PI) / pattern.holes;
      return [
        {
          standard: pattern.standard,
          number: pattern.number,
          boltCircleMm: pattern.boltCircleMm,
          thread: pattern.thread,
          source: pattern.source,
          holes: pattern.holes,
          found: best.pairs.map(({ moving }) => holes[moving] as PatternHole),
          rmsMm: best.rmsMm,
          centre: apply(inverse(best.motion), vec(0, 0)),
          turnRad: 0 - (best.motion.turnRad - spacingRad * Math.round(best.motion.turnRad / spacingRad)),
        },
      ];
    })
    .sort((a, b) => b.found.length / b.holes - a.found.length / a.holes || a.rmsMm - b.rmsMm);
}
