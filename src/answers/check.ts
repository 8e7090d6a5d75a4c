import type {
  CheckResult,
  Clearance,
  FirstTouch,
  FoulingStretch,
  HomeResult,
  Instant,
  NearestPlaces,
  RotatingResult,
  StrayedResult,
  WanderResult,
  WayInResult,
} from '../clearance/check-result.ts';
import { round6, roundPoint6, roundUp6 } from '../geometry/plane/rounding.ts';
import type { Wander } from '../job/wander.ts';
import type { Bolt } from '../joint/bolts.ts';
import type { Joint } from '../joint/joint.ts';
import type {
  BoltAnswer,
  CheckAnswer,
  DowelUpAnswer,
  FirstTouchAnswer,
  FoulingAnswer,
  HomeAnswer,
  InstallAnswer,
  RotatingAnswer,
  StrayedAnswer,
  WanderAnswer,
} from './check-answer.ts';
import { roundDegrees, roundOrNull } from './rounded.ts';
import { warningOf } from './warning.ts';

/**
 * A check as JSON, the answer of `fettle check --json`: mm, mm² and degrees, each figure rounded to 1e-6 here and nowhere
 * else. What is not known is null. Nothing is computed and nothing thrown; both are of one job.
 *
 * @example An adapter on guide studs.
 * ```ts
 * import { readFileSync } from 'node:fs';
 * import { analyse, checkAnswer, drain, readJob } from 'fettle';
 *
 * const fit = 'profiles/sae-3-adapter/adapter.fit.json';
 * const read = readJob(fit, (path) => ({ ok: true, value: readFileSync(path, 'utf8') }));
 * const found = read.ok ? analyse(read.value) : read;
 * if (!found.ok) throw new Error(JSON.stringify(found.findings));
 * const { joint, check } = found.value;
 * const { verdict, home, install } = checkAnswer(joint, drain(check()));
 * console.log(verdict, home.clearanceMm, install?.state); // goes 6.3495 clear
 * ```
 */
export const checkAnswer = (joint: Joint, result: CheckResult): CheckAnswer => ({
  format: 'fettle-check/1',
  title: joint.fit.title,
  verdict: result.verdict,
  reason: result.reason,
  meetsClearance: result.meetsClearance,
  dowelUp: dowelUpAnswer(joint.dowelUp),
  bolts: joint.bolts.map(boltAnswer),
  home: homeAnswer(result.home),
  install: result.wayIn && installAnswer(result.wayIn),
  ...(result.wander && { astray: strayedAnswer(result.wander) }),
  rotating: result.rotating.map(rotatingAnswer),
  warnings: result.notices.map((notice) => warningOf(notice, joint.fit.units)),
});

const dowelUpAnswer = ({ turnRad, shift, rmsMm, spacingErrorMm, pairs, hand }: Joint['dowelUp']): DowelUpAnswer => ({
  turnDeg: roundDegrees(turnRad),
  shiftMm: roundPoint6(shift),
  rmsMm: roundOrNull(rmsMm),
  spacingErrorMm: roundOrNull(spacingErrorMm),
  pairs: pairs.map(({ fixed, moving, offsetMm }) => ({ fixed, moving, offsetMm: round6(offsetMm) })),
  hand,
});

const boltAnswer = ({ fixed, moving, offsetMm, allowedMm, linesUp }: Bolt): BoltAnswer => ({
  fixed,
  moving,
  offsetMm: round6(offsetMm),
  allowedMm: roundOrNull(allowedMm),
  linesUp,
});

const clearanceAnswer = (clearance: Clearance) => ({
  state: clearance.state,
  clearanceMm: roundOrNull(clearance.clearanceMm),
  toleranceMm: roundUp6(clearance.toleranceMm),
  errorMm: roundOrNull(clearance.errorMm),
  errorRssMm: roundOrNull(clearance.errorRssMm),
  worstClearanceMm: roundOrNull(clearance.worstClearanceMm),
  foulAreaMm2: round6(clearance.foul.areaMm2),
  deepestMm: roundOrNull(clearance.foul.deepestMm),
  endGapMm: roundOrNull(clearance.endGapMm),
  alongCrankMm: roundOrNull(clearance.alongCrankMm),
});

const nearestAnswer = ({ fixedAt, movingAt, fixedSection, movingSection }: NearestPlaces) => ({
  fixedAt: roundPoint6(fixedAt),
  movingAt: roundPoint6(movingAt),
  fixedSection,
  movingSection,
});

const instantAnswer = ({ leg, at, turnRad, standOffMm }: Instant) => ({
  leg,
  at: round6(at),
  turnDeg: roundDegrees(turnRad),
  standOffMm: round6(standOffMm),
});

/** What a result finds at home, as JSON. */
export const homeAnswer = (home: HomeResult): HomeAnswer => ({
  ...clearanceAnswer(home),
  nearest: home.nearest && nearestAnswer(home.nearest),
});

/** What a result finds on the way in, as JSON. */
export const installAnswer = (wayIn: WayInResult): InstallAnswer => ({
  ...clearanceAnswer(wayIn),
  nearest: wayIn.nearest && { ...nearestAnswer(wayIn.nearest), ...instantAnswer(wayIn.nearest) },
  firstTouch: wayIn.firstTouch && firstTouchAnswer(wayIn.firstTouch),
  fouling: wayIn.fouling.map(foulingAnswer),
});

/** How far one may stray, as JSON. */
export const wanderAnswer = ({ turnRad, standOffMm, shiftMm, tiltRad }: Wander): WanderAnswer => ({
  turn: roundDegrees(turnRad),
  standOff: round6(standOffMm),
  shift: round6(shiftMm),
  tilt: roundDegrees(tiltRad),
});

/** What is kept within a wander, as JSON. */
export const strayedAnswer = ({ wander, rotating, ...castings }: WanderResult): StrayedAnswer => ({
  wander: wanderAnswer(wander),
  ...keptAnswer(castings),
  rotating: rotating.map(({ part, ...kept }) => ({ part, ...keptAnswer(kept) })),
});

const keptAnswer = ({ state, clearanceMm, worstClearanceMm, nearest }: StrayedResult) => ({
  state,
  clearanceMm: roundOrNull(clearanceMm),
  worstClearanceMm: roundOrNull(worstClearanceMm),
  nearest,
});

const firstTouchAnswer = (touch: FirstTouch): FirstTouchAnswer => ({
  ...instantAnswer(touch),
  fixedSection: touch.fixedSection,
  movingSection: touch.movingSection,
  where: roundPoint6(touch.where),
});

const foulingAnswer = ({ from, to, fixedSection, movingSection }: FoulingStretch): FoulingAnswer => {
  const [start, end] = [instantAnswer(from), instantAnswer(to)];
  return {
    leg: start.leg,
    fromAt: start.at,
    toAt: end.at,
    fromTurnDeg: start.turnDeg,
    toTurnDeg: end.turnDeg,
    fromStandOffMm: start.standOffMm,
    toStandOffMm: end.standOffMm,
    fixedSection,
    movingSection,
  };
};

function rotatingAnswer(result: RotatingResult): RotatingAnswer {
  const { part, against, state, nearest, instant } = result;
  return {
    part,
    against,
    state,
    clearanceMm: roundOrNull(result.clearanceMm),
    toleranceMm: roundUp6(result.toleranceMm),
    leg: instant?.leg ?? null,
    nearest: nearest && { ...nearestAnswer(nearest), ...(instant && instantAnswer(instant)) },
  };
}
