import type { CheckAnswer, HomeAnswer, InstallAnswer } from '../answers/check-answer.ts';
import { round6, roundUp6 } from '../geometry/plane/rounding.ts';
import type { Progress } from '../geometry/progress.ts';
import type { Leg } from '../job/path.ts';
import type { Joint } from '../joint/joint.ts';
import { alongCrankMm } from './along-crank.ts';
import { endGapAtHome, endGapOnLegs } from './end-gap.ts';
import { type Foul, homeFoul, installFoul, noFoul } from './foul.ts';
import { insideOtherMetal } from './inside-other-metal.ts';
import { holdsClearance, type Measure, measureOf } from './measure.ts';
import { firstTouchOf, foulingOf, momentOf, witnessOf } from './moments.ts';
import { type PairPassage, pairRule, pairsAt, pairsOnLeg } from './pairs.ts';
import { farReason, reasonOf, reasonsBeforehand } from './reasons.ts';
import { checkRotating, type RotatingMeasure } from './rotating.ts';
import { solidsOf } from './solids.ts';
import { verdictOf } from './verdict.ts';
import { clearanceWarnings } from './warnings.ts';

/** The answer to "does it go together", and the regions that foul, for drawing. */
export interface Check {
  readonly answer: CheckAnswer;
  readonly homeFoul: Foul;
  /** Null when only home is asked. */
  readonly installFoul: Foul | null;
}

/** Checks a job at home, on every leg of the way in, and past its rotating parts: proved for the outlines as traced. */
export function* checkJoint(joint: Joint): Generator<Progress, Check> {
  const { fit } = joint;
  const fixed = solidsOf(joint.fixed);
  const moving = solidsOf(joint.moving);
  const steps = 1 + fit.legs.length + joint.rotating.length;

  yield { step: 'home', done: 0, of: steps };
  const rule = pairRule(joint);
  const homePairs = pairsAt(fixed, moving, rule);
  const home = measureOf(homePairs, fit.clearance.homeMm);
  const homeMetal = home.state === 'fouls' ? homeFoul(joint) : noFoul;

  const pairs: PairPassage[] = [];
  for (const [i, leg] of fit.legs.entries()) {
    yield { step: `leg ${i + 1}`, done: 1 + i, of: steps };
    pairs.push(...pairsOnLeg(fixed, moving, leg, i + 1, rule));
  }
  const install = fit.legs.length > 0 ? measureOf(pairs, fit.clearance.wayInMm) : null;
  const installMetal = install?.state === 'fouls' ? installFoul(joint) : noFoul;

  const rotating: RotatingMeasure[] = [];
  for (const [i, part] of joint.rotating.entries()) {
    yield { step: part.name, done: 1 + fit.legs.length + i, of: steps };
    rotating.push(...checkRotating(joint, part, fixed, moving));
  }

  const endGaps = { home: endGapAtHome(fixed, moving), install: endGapOnLegs(fixed, moving, fit.legs) };
  const reasons = [...reasonsBeforehand(joint), ...farReason(joint, { home, install })];
  const reason = reasonOf(joint, reasons);
  const answer: CheckAnswer = {
    format: 'fettle-check/1',
    title: fit.title,
    verdict: reason === null ? verdictOf(fit.clearance, home, install, rotating) : 'undecided',
    reason,
    meetsClearance: reason === null && meets(joint, home, install, rotating),
    dowelUp: joint.dowelUp,
    bolts: [...joint.bolts],
    home: homeAnswer(home, homeMetal, endGaps.home, homePairs),
    install: install && installAnswer(joint, install, installMetal, endGaps.install, pairs),
    rotating: rotating.map((measure) => measure.answer),
    warnings: [
      ...joint.warnings,
      ...reasons,
      ...insideOtherMetal(joint),
      ...clearanceWarnings(joint, home, install, rotating),
    ],
  };
  return { answer, homeFoul: homeMetal, installFoul: install && installMetal };
}

function meets(joint: Joint, home: Measure, install: Measure | null, rotating: readonly RotatingMeasure[]): boolean {
  const { homeMm, wayInMm, rotatingMm } = joint.fit.clearance;
  return (
    holdsClearance(home.state, home.clearanceMm, homeMm) &&
    (install === null || holdsClearance(install.state, install.clearanceMm, wayInMm)) &&
    rotating.every(({ measure }) => holdsClearance(measure.state, measure.clearanceMm, rotatingMm))
  );
}

function measureAnswer(
  measure: Measure,
  foul: Foul,
  endGapMm: number | null,
  pairs: readonly PairPassage[],
  legs: readonly Leg[],
) {
  const alongMm = alongCrankMm(pairs, legs);
  return {
    state: measure.state,
    clearanceMm: roundOrNull(measure.clearanceMm),
    toleranceMm: roundUp6(measure.toleranceMm),
    errorMm: roundOrNull(measure.errorMm),
    errorRssMm: roundOrNull(measure.errorRssMm),
    worstClearanceMm: roundOrNull(worstOf(measure, foul, alongMm)),
    foulAreaMm2: round6(foul.areaMm2),
    deepestMm: roundOrNull(foul.deepestMm),
    endGapMm: roundOrNull(endGapMm),
    alongCrankMm: roundOrNull(alongMm),
  };
}

/** Metal that goes into other metal is worse than touching by as deep as it goes. */
function worstOf(
  { state, worstClearanceMm, errorMm }: Measure,
  { deepestMm }: Foul,
  alongMm: number | null,
): number | null {
  if (state !== 'fouls' || alongMm !== 0 || worstClearanceMm === null) return worstClearanceMm;
  return deepestMm === null ? null : Math.min(worstClearanceMm, 0 - deepestMm - (errorMm ?? 0));
}

const roundOrNull = (x: number | null): number | null => (x === null ? null : round6(x));

function homeAnswer(measure: Measure, foul: Foul, endGapMm: number | null, pairs: readonly PairPassage[]): HomeAnswer {
  const nearest = measure.decisive && witnessOf(measure.decisive);
  return { ...measureAnswer(measure, foul, endGapMm, pairs, []), nearest };
}

function installAnswer(
  joint: Joint,
  measure: Measure,
  foul: Foul,
  endGapMm: number | null,
  pairs: readonly PairPassage[],
): InstallAnswer {
  const { decisive } = measure;
  const { legs } = joint.fit;
  const witness = decisive && witnessOf(decisive);
  const moment = decisive && momentOf(decisive, legs);
  return {
    ...measureAnswer(measure, foul, endGapMm, pairs, legs),
    nearest: witness && moment && { ...witness, ...moment },
    firstTouch: firstTouchOf(measure, legs),
    fouling: foulingOf(pairs, legs),
  };
}
