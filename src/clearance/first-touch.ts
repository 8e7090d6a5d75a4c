import type { Joint } from '../joint/joint.ts';
import type { FirstTouch } from '../model/check-answer.ts';
import { measureOf } from './measure.ts';
import { firstTouchOf } from './moments.ts';
import { pairOnLeg, placeErrors } from './pairs.ts';
import { solidsOf } from './solids.ts';

/** Where the parts of a job first meet on its legs, as a check tells it; null when they never do, or nobody can know. */
export function firstTouch(joint: Joint): FirstTouch | null {
  const { legs, depthMarginMm, clearance } = joint.fit;
  const [fixed, moving] = [solidsOf(joint.fixed), solidsOf(joint.moving)];
  const pairs = legs.flatMap((leg, i) =>
    fixed.flatMap((f) => moving.flatMap((m) => pairOnLeg(f, m, leg, i + 1, depthMarginMm, placeErrors(joint)) ?? [])),
  );
  return firstTouchOf(measureOf(pairs, clearance.wayInMm), legs);
}
