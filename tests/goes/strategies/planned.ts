import { checkJoint } from '../../../src/clearance/check.ts';
import type { CheckResult } from '../../../src/clearance/check-result.ts';
import { offset } from '../../../src/geometry/polygons/offset.ts';
import { outlinesOf } from '../../../src/geometry/polygons/polygons.ts';
import { drain } from '../../../src/geometry/progress.ts';
import type { Casting } from '../../../src/job/casting.ts';
import { planCut } from '../../../src/plan/plan-cut.ts';
import type { PlanResult } from '../../../src/plan/plan-result.ts';
import type { Bench } from '../bench.ts';
import { castingNow, ground, laidOut, workpieceOf } from '../workpiece.ts';
import { goOnByEye } from './by-eye.ts';
import type { Outcome, Said, Strategy } from './strategy.ts';

/** So much more goes that no film stays along the old outline. */
const hairMm = 1e-3;

/** How far the hand strays at most, mm; what the tool takes where nobody says. */
const handErrorMm = 0.5;

/** The tool's plan of home and the way in, ground to the planned line in one go. */
export const planned: Strategy = (bench) => {
  const { traced } = bench;
  const plan = drain(planCut(traced));
  return grindTo('planned', bench, plan, { ofGo: 1, holds: plan.holds, clearsAtWorst: isClear(plan.afterCut) });
};

/** The same, ground as far as the tool lets him: no error that was stated is left to touch. */
export const lastLine: Strategy = (bench) => {
  const { traced } = bench;
  const plan = drain(planCut(traced));
  const clearsAtWorst = isClear(drain(checkJoint({ ...traced, fixed: cutToLastLine(traced.fixed, plan) })));
  return grindTo('last', bench, plan, { ofGo: 1, holds: plan.holds, clearsAtWorst });
};

/** A plan that knows home only, and has nothing to say of the way in. */
export const homeOnly: Strategy = (bench) => {
  const { traced } = bench;
  const plan = drain(planCut({ ...traced, fit: { ...traced.fit, legs: [] } }));
  return { ...grindTo('planned', bench, plan, null), said: null };
};

function grindTo(line: 'planned' | 'last', bench: Bench, plan: PlanResult, said: Said | null): Outcome {
  if (!plan.holds) return { ending: 'refused', said };
  const cuts = laidOut(plan, line);
  if (cuts.length > 0) bench.grindLaidOut(cuts);
  return { ending: goOnByEye(bench), said };
}

/** Whether all is clear with every error at its worst, the hand's among them. */
function isClear({ home, wayIn }: Pick<CheckResult, 'home' | 'wayIn'>): boolean {
  return [home, wayIn].every((measure) => (measure?.worstClearanceMm ?? Number.POSITIVE_INFINITY) > handErrorMm);
}

function cutToLastLine(fixed: Casting, plan: PlanResult): Casting {
  const removals = laidOut(plan, 'last').map((cut) => ({
    ...cut,
    room: offset(outlinesOf(cut.room), hairMm, hairMm, 'outside').polygons,
  }));
  const cut = castingNow(ground(workpieceOf(fixed), removals));
  // where a band ends is laid out from the face, and no longer read off the casting
  return { ...cut, sections: cut.sections.map((section) => ({ ...section, depthErrorMm: 0 })) };
}
