import type { Position } from '../job/path.ts';
import type { Joint } from '../joint/joint.ts';
import type { NearestPlaces, State } from './check-result.ts';
import { measureOf } from './measure.ts';
import { nearestOf } from './moments.ts';
import { pairRule, pairsOn } from './pairs.ts';
import { standingAt } from './passings.ts';
import { sidesOf } from './solids.ts';

/** The least clearance with the moving part standing at one position. */
export interface Standing {
  readonly state: State;
  /** In mm, 0 where it touches or fouls; null where no pair shares depth. */
  readonly clearanceMm: number | null;
  readonly worstClearanceMm: number | null;
  /** Joint frame, mm, the moving point where it stands now. */
  readonly nearest: NearestPlaces | null;
}

/** The least clearance at one position, proved for the outlines as traced. */
export function clearanceAt(joint: Joint, position: Position): Standing {
  const pairs = pairsOn(sidesOf(joint), [standingAt(position)], pairRule(joint));
  const { state, clearanceMm, worstClearanceMm, decisive } = measureOf(pairs, joint.fit.clearance.wayInMm);
  return { state, clearanceMm, worstClearanceMm, nearest: decisive && nearestOf(decisive) };
}
