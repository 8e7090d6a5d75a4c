import type { Progress } from '../../geometry/progress.ts';
import type { CheapestWays } from '../cheapest/cheapest-ways.ts';
import { type Lift, shiftsOf } from './lift-grid.ts';
import { cheapestLifted, type LiftedCut } from './lifted-cut.ts';
import { asideMaps, type CheckedLift, type LiftSearch, liftedWay } from './lifted-way.ts';

/** What carrying the part aside at first comes to, looked at where no way about the axis does without a cut. */
export interface Lifts {
  readonly lift: Lift;
  /** How many places aside were looked at. */
  readonly shifts: number;
  /** A way without cutting. */
  readonly way: CheckedLift | null;
  /** Where there is none, a cut cheaper than any about the axis. */
  readonly cut: LiftedCut | null;
}

export function* liftsOf(
  asked: Omit<LiftSearch, 'shifts'>,
  lift: Lift,
  cheapest: CheapestWays | null,
): Generator<Progress, Lifts> {
  const shifts = shiftsOf(lift);
  const search = { ...asked, shifts };
  const mapAt = asideMaps(search);
  const way = yield* liftedWay(search, mapAt);
  const cut = way === null && cheapest !== null ? yield* cheapestLifted(search, mapAt, cheapest.ways) : null;
  return { lift, shifts: shifts.length, way, cut };
}
