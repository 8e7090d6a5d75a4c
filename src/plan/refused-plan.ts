import type { CheckResult } from '../clearance/check-result.ts';
import type { Joint } from '../joint/joint.ts';
import type { PartCut } from './part-cut.ts';
import type { PlanResult } from './plan-result.ts';

/** The plan where nothing can be judged: no cut, nothing against it but why, and the figures as they stand. */
export function refusedPlan(joint: Joint, check: CheckResult): PlanResult {
  return {
    reason: check.reason,
    holds: false,
    cuts: [uncut(joint)],
    uncured: [],
    afterCut: { home: check.home, wayIn: check.wayIn, wander: check.wander },
    hindrances: [],
    notices: check.notices,
    judged: joint,
    alone: null,
  };
}

function uncut(joint: Joint): PartCut {
  const part = joint.fit.cut === 'moving' ? 'moving' : 'fixed';
  return {
    part,
    boundMm: 0,
    volumeMm3: 0,
    massG: null,
    sections: [],
    walls: [],
    thin: [],
    readings: [],
    unmeasured: [],
    cutter: null,
    straight: null,
    severed: [],
    after: joint[part],
  };
}
