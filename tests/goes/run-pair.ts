import { drain } from '../../src/geometry/progress.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { planCut } from '../../src/plan/plan-cut.ts';
import { Random } from '../support/random.ts';
import { Bench } from './bench.ts';
import { type CastingPair, castingPair, type Family, familyNames } from './castings/casting-pair.ts';
import { keepWallMm } from './castings/design.ts';
import { type Drawings, drawingsOf, exactly, trueJoint } from './joints.ts';
import { byEye } from './strategies/by-eye.ts';
import { homeOnly, lastLine, planned } from './strategies/planned.ts';
import type { Outcome, Strategy } from './strategies/strategy.ts';
import { trialThenRest } from './strategies/trial-then-rest.ts';
import { traced } from './traced.ts';
import { leastWallMm, volumeMm3, workpieceOf } from './workpiece.ts';

/** What a builder may go by; one line here is all that another needs. */
const strategies = {
  'by eye': byEye,
  'home only': homeOnly,
  planned,
  'last line': lastLine,
  'trial, then rest': trialThenRest,
} satisfies Record<string, Strategy>;
export type StrategyName = keyof typeof strategies;
export const strategyNames = Object.keys(strategies) as StrategyName[];

/** A pair to be made to go together, traced with each of some errors. */
export interface PairTask {
  readonly family: Family;
  readonly seed: number;
  readonly traceErrorsMm: readonly number[];
}

/** How one builder fared with one pair. */
export interface Run extends Outcome {
  readonly family: Family;
  readonly seed: number;
  readonly strategy: StrategyName;
  readonly traceErrorMm: number;
  /** Whether a section is traced worse than stated, as one in twenty is. */
  readonly tracedWrong: boolean;
  /** Whether the castings go together as they came. */
  readonly wentUncut: boolean;
  readonly goes: number;
  readonly wentHomeOn: number | null;
  readonly removedMm3: number;
  /** The least that keeps the asked clearances, of the true castings. */
  readonly leastMm3: number;
  readonly wallMm: number | null;
  readonly breaksWall: boolean;
  /** By the cut to a line alone, before anything was ground by eye. */
  readonly lineBreaksWall: boolean;
  readonly leastClearanceMm: number | null;
}

/** Every strategy at one pair; by eye nothing is traced, so that is run once and told for every error. */
export function runPair({ family, seed, traceErrorsMm }: PairTask): Run[] {
  // numbers of its own for every pair, its tracing and its builder's hand
  const own = 1000 * (familyNames.length * seed + familyNames.indexOf(family));
  const pair = castingPair(family, own);
  const truth = trueJoint(pair);
  const leastMm3 = drain(planCut(truth)).cuts.reduce((sum, { volumeMm3: mm3 }) => sum + (mm3 ?? 0), 0);
  const wentUncut = new Bench(truth, exactly(truth), new Random(own)).offerUp().goes;
  const known = { family, seed, leastMm3, wentUncut };
  const untraced = runOf('by eye', truth, exactly(truth), own + 2);
  return traceErrorsMm.flatMap((traceErrorMm) => {
    const { drawings, tracedWrong } = jobTraced(pair, traceErrorMm, new Random(own + 1));
    return strategyNames.map((strategy): Run => {
      const run = strategy === 'by eye' ? untraced : runOf(strategy, truth, drawings, own + 2);
      return { ...known, strategy, traceErrorMm, tracedWrong, ...run };
    });
  });
}

/** The job as its user has it: files of what he traced, with the error he states; and whether any section is wrong. */
function jobTraced(pair: CastingPair, traceErrorMm: number, random: Random) {
  const [block, housing] = [traced(pair.fixed, traceErrorMm, random), traced(pair.moving, traceErrorMm, random)];
  return {
    drawings: drawingsOf(pair, { fixed: block.part, moving: housing.part }, traceErrorMm),
    tracedWrong: block.wrong.length + housing.wrong.length > 0,
  };
}

type Fared = Omit<Run, 'family' | 'seed' | 'strategy' | 'traceErrorMm' | 'leastMm3' | 'wentUncut' | 'tracedWrong'>;

function runOf(strategy: StrategyName, truth: Joint, drawings: Drawings, seed: number): Fared {
  const bench = new Bench(truth, drawings, new Random(seed));
  const outcome = strategies[strategy](bench);
  const wallMm = leastWallMm(bench.piece);
  const atLineMm = bench.pieceAtLine && leastWallMm(bench.pieceAtLine);
  return {
    ...outcome,
    goes: bench.goes,
    wentHomeOn: bench.wentHomeOn,
    removedMm3: volumeMm3(workpieceOf(truth.fixed)) - volumeMm3(bench.piece),
    wallMm,
    breaksWall: wallMm !== null && wallMm < keepWallMm,
    lineBreaksWall: atLineMm !== null && atLineMm < keepWallMm,
    leastClearanceMm: bench.leastClearanceMm(),
  };
}
