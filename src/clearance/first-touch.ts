import type { Joint } from '../joint/joint.ts';
import type { FirstTouch } from './check-result.ts';
import { measureOf } from './measure.ts';
import { firstTouchOf } from './moments.ts';
import { pairRule, pairsOn } from './pairs.ts';
import { waysOf } from './passings.ts';
import { sidesOf } from './solids.ts';

/** Where the parts of a job first meet on its legs, as a check finds it; null when they never do, or nobody can know. */
export function firstTouch(joint: Joint): FirstTouch | null {
  const { legs, clearance } = joint.fit;
  const pairs = pairsOn(sidesOf(joint), waysOf(legs), pairRule(joint));
  return firstTouchOf(joint, measureOf(pairs, clearance.wayInMm));
}
