import { homeAnswer, installAnswer } from '../answers/check.ts';
import { warningOf } from '../answers/warning.ts';
import { checkJoint } from '../clearance/check.ts';
import type { Progress } from '../geometry/progress.ts';
import type { Joint } from '../joint/joint.ts';
import type { CutPlan } from './cut-plan.ts';

/** The answer where nothing can be judged: no cut, nothing else proposed, the figures as they stand, and why. */
export function* refusedPlan(joint: Joint): Generator<Progress, CutPlan> {
  const check = yield* checkJoint(joint);
  const part = joint.fit.cut === 'moving' ? 'moving' : 'fixed';
  return {
    part: joint[part],
    judged: joint,
    afterCut: check,
    answer: {
      format: 'fettle-grind/1',
      title: joint.fit.title,
      part,
      holds: false,
      reason: check.reason,
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
      movingCut: null,
      smallestFilletMm: null,
      severed: [],
      uncured: [],
      table: [],
      afterCut: { home: homeAnswer(check.home), install: check.wayIn && installAnswer(check.wayIn) },
      alternatives: [],
      warnings: check.notices.map((notice) => warningOf(notice, joint.fit.units)),
    },
  };
}
