import { type Progress, showing } from '../geometry/progress.ts';
import type { Leg } from '../job/path.ts';
import type { Joint } from '../joint/joint.ts';
import { alongCrankMm } from './along-crank.ts';
import type { CheckResult, Clearance, HomeResult, WanderResult, WayInResult } from './check-result.ts';
import { endGapOn } from './end-gap.ts';
import { type Foul, homeFoul, noFoul, wayInFoul } from './foul.ts';
import { insideOtherMetal } from './inside-other-metal.ts';
import { type Measure, measureOf } from './measure.ts';
import { firstTouchOf, foulingOf, instantOf, nearestOf } from './moments.ts';
import { type PairPassage, pairRule, pairsOn } from './pairs.ts';
import { atHome, waysOf } from './passings.ts';
import { farReason, reasonOf, reasonsBeforehand } from './reasons.ts';
import { checkRotating, type RotatingMeasure } from './rotating.ts';
import { sectionNotices } from './section-notices.ts';
import { sidesOf } from './solids.ts';
import { type Judged, keepsAll, verdictOf } from './verdict.ts';
import { wanderOf } from './wander/wander.ts';

/** Checks a job at home, on every leg of the way in, and past its rotating parts: proved for the outlines as traced. */
export function* checkJoint(joint: Joint): Generator<Progress, CheckResult> {
  const { fit } = joint;
  const solids = sidesOf(joint);
  const steps = 1 + fit.legs.length + joint.rotating.length + (fit.wander === null ? 0 : 1);

  yield { step: 'home', done: 0, of: steps };
  const rule = pairRule(joint);
  const homePairs = pairsOn(solids, [atHome], rule);
  const home = measureOf(homePairs, fit.clearance.homeMm);
  const homeMetal = home.state === 'fouls' ? yield* homeFoul(joint) : noFoul;

  const pairs: PairPassage[] = [];
  const ways = waysOf(fit.legs);
  for (const [i, way] of ways.entries()) {
    yield { step: `leg ${i + 1}`, done: 1 + i, of: steps };
    pairs.push(...pairsOn(solids, [way], rule));
  }
  const wayIn = fit.legs.length > 0 ? measureOf(pairs, fit.clearance.wayInMm) : null;
  const wayInMetal = wayIn?.state === 'fouls' ? yield* wayInFoul(joint) : noFoul;

  const rotating: RotatingMeasure[] = [];
  for (const [i, part] of joint.rotating.entries()) {
    const progress = { step: part.name, done: 1 + fit.legs.length + i, of: steps };
    rotating.push(...(yield* showing(progress, checkRotating(joint, part, solids))));
  }

  if (fit.wander !== null) yield { step: 'straying from the way in', done: steps - 1, of: steps };
  const strayed = fit.wander && wanderOf(joint, fit.wander, solids);

  const endGaps = { home: endGapOn(solids, [atHome]), wayIn: endGapOn(solids, ways) };
  const reasons = [...reasonsBeforehand(joint), ...farReason(joint, { home, wayIn })];
  const reason = reasonOf(joint, reasons);
  const onTheWay = judgedOnTheWay(joint, home, wayIn, rotating);
  const judged = [...onTheWay, ...(strayed === null ? [] : judgedAstray(joint, strayed))];
  const keeps = keepsAll(judged);
  return {
    verdict: reason === null ? verdictOf(judged) : 'undecided',
    reason,
    meetsClearance: reason === null && keeps,
    home: homeResult(home, homeMetal, endGaps.home, homePairs),
    wayIn: wayIn && wayInResult(joint, wayIn, wayInMetal, endGaps.wayIn, pairs),
    rotating: rotating.map(({ result }) => result),
    wander: strayed && { ...strayed, decides: !keeps && keepsAll(onTheWay) },
    notices: [
      ...joint.notices,
      ...reasons,
      ...insideOtherMetal(joint),
      ...sectionNotices(joint, home, wayIn, rotating),
    ],
  };
}

function judgedOnTheWay(
  { fit }: Joint,
  home: Measure,
  wayIn: Measure | null,
  rotating: readonly RotatingMeasure[],
): Judged[] {
  const { homeMm, wayInMm, rotatingMm } = fit.clearance;
  return [
    { measure: home, askedMm: homeMm },
    ...(wayIn ? [{ measure: wayIn, askedMm: wayInMm }] : []),
    ...rotating.map(({ measure }) => ({ measure, askedMm: rotatingMm })),
  ];
}

const judgedAstray = ({ fit }: Joint, strayed: Omit<WanderResult, 'decides'>): Judged[] => [
  { measure: strayed, askedMm: fit.clearance.wayInMm },
  ...strayed.rotating.map((measure) => ({ measure, askedMm: fit.clearance.rotatingMm })),
];

function clearanceOf(
  measure: Measure,
  foul: Foul,
  endGapMm: number | null,
  pairs: readonly PairPassage[],
  legs: readonly Leg[],
): Clearance {
  const { decisive: _decisive, ...measured } = measure;
  const alongMm = alongCrankMm(pairs, legs);
  return { ...measured, worstClearanceMm: worstOf(measure, foul, alongMm), foul, endGapMm, alongCrankMm: alongMm };
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

const homeResult = (
  measure: Measure,
  foul: Foul,
  endGapMm: number | null,
  pairs: readonly PairPassage[],
): HomeResult => ({
  ...clearanceOf(measure, foul, endGapMm, pairs, []),
  nearest: measure.decisive && nearestOf(measure.decisive),
});

function wayInResult(
  joint: Joint,
  measure: Measure,
  foul: Foul,
  endGapMm: number | null,
  pairs: readonly PairPassage[],
): WayInResult {
  const { decisive } = measure;
  const { legs } = joint.fit;
  const places = decisive && nearestOf(decisive);
  const instant = decisive && instantOf(decisive, legs);
  return {
    ...clearanceOf(measure, foul, endGapMm, pairs, legs),
    nearest: places && instant && { ...places, ...instant },
    firstTouch: firstTouchOf(joint, measure),
    fouling: foulingOf(joint, pairs),
  };
}
