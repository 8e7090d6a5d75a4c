import type { Foretold, Stop } from '../clearance/foretold.ts';
import { round6, roundPoint6 } from '../geometry/plane/rounding.ts';
import type { Joint } from '../joint/joint.ts';
import type { TrialResult } from '../trial/trial-result.ts';
import { grindAnswer } from './grind.ts';
import { roundDegrees, roundDepth } from './rounded.ts';
import type { StopAnswer, TrialAnswer } from './trial-answer.ts';

/** What trial fits teach as JSON, the answer of `fettle trial --json`: mm, mm² and degrees, rounded to 1e-6. */
export function trialAnswer(joint: Joint, result: TrialResult, foretold: Foretold): TrialAnswer {
  const { explanation, measureNext, next } = result;
  return {
    format: 'fettle-trial-answer/1',
    title: joint.fit.title,
    conclusion: explanation.conclusion,
    shiftMm: roundPoint6(explanation.shift),
    turnDeg: roundDegrees(explanation.turnRad),
    shiftErrorMm: round6(explanation.shiftErrorMm),
    turnErrorDeg: roundDegrees(explanation.turnErrorRad),
    sections: explanation.sections.map(({ part, section, offsetMm, errorMm, wrong }) => ({
      part,
      section,
      offsetMm: round6(offsetMm),
      errorMm: round6(errorMm),
      wrong: round6(wrong),
    })),
    readings: explanation.readings.map(({ id, go, relation, measuredMm, expectedMm, wrong }) => ({
      id,
      go,
      relation,
      measuredMm: round6(measuredMm),
      expectedMm: round6(expectedMm),
      wrong: round6(wrong),
    })),
    disagrees: explanation.readings.filter(({ disagrees }) => disagrees).map(({ id }) => id),
    measureNext: measureNext && {
      kind: 'clay',
      position: 'home',
      place: measureNext.place,
      section: measureNext.section,
      at: roundPoint6(measureNext.at),
      depthMm: round6(measureNext.depthMm),
      expectedMm: round6(measureNext.expectedMm),
      expectedErrorMm: round6(measureNext.expectedErrorMm),
    },
    foretold: {
      unknown: foretold.unknown,
      untraced: foretold.untraced,
      stop: foretold.stop && stopAnswer(foretold.stop),
      earliest: foretold.earliest && stopAnswer(foretold.earliest),
      latest: foretold.latest && stopAnswer(foretold.latest),
    },
    nextCut: next && grindAnswer(next.joint, next.plan, next.tables, null),
    pastLast: (next?.pastLast ?? []).map((past) => ({ ...past, areaMm2: round6(past.areaMm2) })),
  };
}

const stopAnswer = (stop: Stop): StopAnswer => ({
  leg: stop.leg,
  at: round6(stop.at),
  turnDeg: roundDegrees(stop.turnRad),
  standOffMm: round6(stop.standOffMm),
  fixedSection: stop.fixedSection,
  movingSection: stop.movingSection,
  where: roundPoint6(stop.where),
  depth: roundDepth(stop.depth),
  dowels: stop.dowelGaps.map(({ fixed, moving, gapMm }) => ({ fixed, moving, gapMm: round6(gapMm) })),
});
