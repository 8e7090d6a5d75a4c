import { checkJoint } from '../clearance/check.ts';
import type { Progress } from '../geometry/progress.ts';
import type { Joint } from '../joint/joint.ts';
import type { CutPlan } from './cut-plan.ts';

/** The answer where nothing can be judged: no cut, nothing else proposed, the figures as they stand, and why. */
export function* refusedPlan(joint: Joint): Generator<Progress, CutPlan> {
  const { answer: check } = yield* checkJoint(joint);
  const part = joint.fit.cut === 'moving' ? 'moving' : 'fixed';
  return {
    part: joint[part],
    judged: joint,
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
      afterCut: { home: check.home, install: check.install },
      alternatives: [],
      warnings: check.warnings,
    },
  };
}
