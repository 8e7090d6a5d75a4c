import { mirrorPoint } from '../../geometry/plane/loop.ts';
import type { Vec } from '../../geometry/plane/vec.ts';
import { type BoltAllowance, boltAllowance } from '../../trade/bolt-allowance.ts';
import { type BoltsGoIn, boltsGoIn } from './bolts-go-in.ts';
import { expectedByChance } from './by-chance.ts';
import { fewestPairs, type MatchOptions, type PatternHole } from './pattern.ts';
import { isAsGood, type Position } from './position.ts';
import { searchPositions } from './search.ts';
import { foldOf, type OtherPosition, otherPositions } from './symmetry.ts';

/** Two holes that come together, how far off and how far they may be; mm. */
export interface MatchedPair {
  readonly fixed: PatternHole;
  readonly moving: PatternHole;
  readonly offMm: number;
  /** Null where it is not known what goes through them. */
  readonly allowance: BoltAllowance | null;
  readonly linesUp: boolean | null;
}

/** Two patterns of holes laid upon one another, the moving one carried by `turnRad` and `shift` (mirrored first where `hand` says so). */
export interface PatternMatch {
  /**
   * `match`: more holes come together than strewn ones would; `by-chance`: strewn ones would often do as much; `none`: no
   * two come together (with a common centre, none).
   */
  readonly conclusion: 'match' | 'by-chance' | 'none';
  readonly hand: 'as-drawn' | 'mirrored';
  /** What comes together with the moving pattern seen from its other side. */
  readonly otherHand: { readonly pairs: number; readonly rmsMm: number | null; readonly asGood: boolean };
  readonly turnRad: number;
  readonly shift: Vec;
  /** In the order of the fixed holes. */
  readonly pairs: readonly MatchedPair[];
  /** Whether all bolts that are known can go in at once, however it is laid; null where none is known. */
  readonly bolts: BoltsGoIn | null;
  readonly rmsMm: number | null;
  readonly largestMm: number | null;
  readonly fixedLeft: readonly PatternHole[];
  readonly movingLeft: readonly PatternHole[];
  /** Other positions at which as many holes come together, or nearly; of the same hand. */
  readonly others: readonly OtherPosition[];
  /** Into how many parts of a turn the pattern falls that are all alike; 1 where none is like another. */
  readonly fold: number;
  /** How many positions strewn holes would be expected to have at which as many come together. */
  readonly byChance: number;
  readonly trials: number;
  readonly allTried: boolean;
}

/** Seldomer than once in twenty is no chance: common practice. */
const chanceLimit = 0.05;
const hairMm = 1e-6;

/** The best match of two patterns whose holes nobody has paired, over every turn and both hands; mm and radians. */
export function matchPatterns(
  fixed: readonly PatternHole[],
  moving: readonly PatternHole[],
  options: MatchOptions,
): PatternMatch {
  const [fixedAt, movingAt] = [fixed.map(({ at }) => at), moving.map(({ at }) => at)];
  const drawn = searchPositions(fixedAt, movingAt, options);
  const turned = searchPositions(fixedAt, movingAt.map(mirrorPoint), options);
  const [asDrawn, mirrored] = [drawn.positions[0] ?? null, turned.positions[0] ?? null];
  const isMirrored = mirrored !== null && (asDrawn === null || isBetter(mirrored, asDrawn));
  const [best, other] = isMirrored ? [mirrored, asDrawn] : [asDrawn, mirrored];
  const found = isMirrored ? turned : drawn;
  const pairs = best === null ? [] : pairsOf(best, fixed, moving);
  const trials = drawn.trials + turned.trials;
  const byChance = expectedByChance(fixedAt, movingAt.length, pairs.length - fewestPairs(options), trials, options);
  const others = otherPositions(found.positions, isMirrored ? movingAt.map(mirrorPoint) : movingAt);
  return {
    conclusion: best === null ? 'none' : byChance > chanceLimit ? 'by-chance' : 'match',
    hand: isMirrored ? 'mirrored' : 'as-drawn',
    otherHand: {
      pairs: other?.pairs.length ?? 0,
      rmsMm: other?.rmsMm ?? null,
      asGood: best !== null && other !== null && isAsGood(other, best),
    },
    turnRad: best === null ? 0 : Math.atan2(best.motion.sin, best.motion.cos),
    shift: best?.motion.shift ?? { x: 0, y: 0 },
    pairs,
    bolts: boltsOf(pairs, isMirrored, options),
    rmsMm: best?.rmsMm ?? null,
    largestMm: best === null ? null : Math.max(...pairs.map(({ offMm }) => offMm)),
    fixedLeft: fixed.filter((hole) => !pairs.some((pair) => pair.fixed === hole)),
    movingLeft: moving.filter((hole) => !pairs.some((pair) => pair.moving === hole)),
    others,
    fold: foldOf(others),
    byChance,
    trials,
    allTried: drawn.allTried && turned.allTried,
  };
}

/** Better by more than chance would have it, so that a pattern which fits both ways is told as drawn. */
const isBetter = (a: Position, b: Position): boolean =>
  a.pairs.length > b.pairs.length || (a.pairs.length === b.pairs.length && !isAsGood(b, a));

function pairsOf({ pairs }: Position, fixed: readonly PatternHole[], moving: readonly PatternHole[]): MatchedPair[] {
  return [...pairs]
    .sort((a, b) => a.fixed - b.fixed)
    .map(({ offMm, ...pair }) => {
      const [one, other] = [fixed[pair.fixed] as PatternHole, moving[pair.moving] as PatternHole];
      const allowance = boltAllowance(one, other);
      const linesUp = allowance === null ? null : offMm <= allowance.mm + hairMm;
      return { fixed: one, moving: other, offMm, allowance, linesUp };
    });
}

const boltsOf = (pairs: readonly MatchedPair[], isMirrored: boolean, { centred }: MatchOptions): BoltsGoIn | null =>
  boltsGoIn(
    pairs.flatMap(({ fixed, moving, allowance }) =>
      allowance === null
        ? []
        : [{ from: isMirrored ? mirrorPoint(moving.at) : moving.at, to: fixed.at, allowedMm: allowance.mm }],
    ),
    centred,
  );
