import { type Run, type StrategyName, strategyNames } from '../run-pair.ts';
import { upperBound } from './share-bound.ts';

/** So many of so many, and the share it may be at most, with 95 % confidence. */
export interface Counted {
  readonly hits: number;
  readonly of: number;
  readonly atMost: number;
}

/** How one strategy fares at one tracing error. Goes are counted from the first cut to done. */
export interface Figures {
  readonly strategy: StrategyName;
  readonly traceErrorMm: number;
  readonly runs: number;
  readonly refused: number;
  readonly gaveUp: number;
  readonly medianGoes: number;
  readonly goes95: number;
  /** Home on the first offering up after the first cut; and with the clearance wanted as well. */
  readonly homeOnFirst: number;
  readonly doneOnFirst: number;
  readonly medianGoesHome: number;
  readonly goesHome95: number;
  readonly medianOverLeast: number;
  readonly wallsBroken: number;
  /** By the cut to a line alone. */
  readonly wallsBrokenAtLine: number;
  /** The tool had it that the asked clearance is kept, and the castings touched. */
  readonly saidHoldsTouched: Counted;
  /** The tool had it clear with every error at its worst, the hand's too, and the castings touched. */
  readonly clearAtWorstTouched: Counted;
  /** The same where no section was traced worse than stated. */
  readonly soundAtWorstTouched: Counted;
}

/** Of pairs that need a cut at all. */
export function figuresOf(runs: readonly Run[]): Figures[] {
  const errors = [...new Set(runs.map(({ traceErrorMm }) => traceErrorMm))];
  return strategyNames.flatMap((strategy) =>
    errors.map((traceErrorMm) =>
      figures(
        strategy,
        traceErrorMm,
        runs.filter((run) => run.strategy === strategy && run.traceErrorMm === traceErrorMm && !run.wentUncut),
      ),
    ),
  );
}

function figures(strategy: StrategyName, traceErrorMm: number, runs: readonly Run[]): Figures {
  const tried = runs.filter(({ ending }) => ending !== 'refused');
  const share = (is: (run: Run) => boolean): number => tried.filter(is).length / tried.length;
  const sorted = (of: (run: Run) => number): number[] => tried.map(of).toSorted((a, b) => a - b);
  const goes = sorted((run) => run.goes);
  const goesHome = sorted((run) => run.wentHomeOn ?? Number.POSITIVE_INFINITY);
  return {
    strategy,
    traceErrorMm,
    runs: runs.length,
    refused: 1 - tried.length / runs.length,
    gaveUp: share(({ ending }) => ending === 'gave-up'),
    medianGoes: quantile(goes, 0.5),
    goes95: quantile(goes, 0.95),
    homeOnFirst: share(isHomeOnFirst),
    doneOnFirst: share((run) => run.ending === 'done' && run.goes <= 1),
    medianGoesHome: quantile(goesHome, 0.5),
    goesHome95: quantile(goesHome, 0.95),
    medianOverLeast: quantile(sorted(overLeast), 0.5),
    wallsBroken: share(({ breaksWall }) => breaksWall),
    wallsBrokenAtLine: share(({ lineBreaksWall }) => lineBreaksWall),
    saidHoldsTouched: touched(tried.filter(({ said }) => said?.holds)),
    clearAtWorstTouched: touched(tried.filter(({ said }) => said?.clearsAtWorst)),
    soundAtWorstTouched: touched(tried.filter(({ said, tracedWrong }) => said?.clearsAtWorst && !tracedWrong)),
  };
}

const isHomeOnFirst = ({ wentHomeOn }: Run): boolean => wentHomeOn !== null && wentHomeOn <= 1;

/** Metal removed for every bit that had to go. */
export const overLeast = ({ removedMm3, leastMm3 }: Run): number => removedMm3 / leastMm3;

function touched(runs: readonly Run[]): Counted {
  const hits = runs.filter(({ wentHomeOn, said }) => wentHomeOn === null || wentHomeOn > (said?.ofGo ?? 1)).length;
  return { hits, of: runs.length, atMost: upperBound(hits, runs.length) };
}

const quantile = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
