import type { Progress } from '../geometry/progress.ts';
import type { Joint } from '../joint/joint.ts';
import type { Casting } from '../model/casting.ts';
import type { CheckAnswer, HomeAnswer, InstallAnswer, RotatingAnswer } from '../model/check-answer.ts';
import { type Claim, type ClaimFound, lookInto } from './verify-claim.ts';
import type { Doubt, Verification } from './verify-doubt.ts';
import { dowelDoubts, placeErrorsMm } from './verify-dowels.ts';
import { errorDoubts } from './verify-error.ts';
import { foulingDoubts } from './verify-fouling.ts';
import { Looks } from './verify-look.ts';
import {
  fixedSolids,
  meetingsAtHome,
  meetingsOnLegs,
  movingSolids,
  rotatingSolids,
  type Solid,
} from './verify-solids.ts';
import { verdictDoubts } from './verify-verdict.ts';
import { type Scene, witnessDoubts } from './verify-witness.ts';

/** Points that are measured against outlines in all, about; shared evenly among all that is looked at. */
const mostLooks = 2_000_000;

/**
 * Measures an answer again, by other means than it was got: points along the outlines as traced are followed on their
 * way, witnesses are looked up on the outlines, and figures that follow from others are worked out from them. It
 * samples, so it can find an answer wrong but never prove it right.
 */
export function* verifyCheck(joint: Joint, answer: CheckAnswer): Generator<Progress, Verification> {
  const looks = new Looks(mostLooks);
  const { fit, rotating } = joint;
  const scene: Scene = {
    fixed: fixedSolids(joint.fixed),
    moving: movingSolids(joint.moving, fit.depthMarginMm),
    legs: fit.legs,
  };
  const steps = 2 + rotating.length;
  yield { step: 'verify home', done: 0, of: steps };
  const doubts = [...dowelDoubts(joint, answer), ...homeDoubts(joint, answer.home, scene, looks, looks.share(steps))];
  yield { step: 'verify way in', done: 1, of: steps };
  if (answer.install) doubts.push(...wayInDoubts(joint, answer.install, scene, looks, looks.share(steps - 1)));
  const found: ClaimFound[] = [];
  for (const [i, part] of rotating.entries()) {
    yield { step: `verify ${part.name}`, done: 2 + i, of: steps };
    found.push(
      ...lookRound(joint, part, answer.rotating.slice(2 * i, 2 * i + 2), looks, looks.share(rotating.length - i)),
    );
  }
  doubts.push(
    ...found.flatMap((claim) => claim.doubts),
    ...verdictDoubts(
      joint,
      answer,
      found.map(({ worstMm }) => worstMm),
    ),
  );
  return { doubts, looks: looks.made };
}

function homeDoubts(joint: Joint, home: HomeAnswer, scene: Scene, looks: Looks, mostLooks: number): Doubt[] {
  const claim: Claim = { ...home, where: 'home', askedMm: joint.fit.clearance.homeMm };
  const place = placeErrorsMm(joint);
  return [
    ...lookInto(claim, meetingsAtHome(scene.fixed, scene.moving), place, looks, mostLooks).doubts,
    ...witnessDoubts(claim, home.nearest, scene),
    ...errorDoubts('home', home, scene, place),
  ];
}

function wayInDoubts(joint: Joint, install: InstallAnswer, scene: Scene, looks: Looks, mostLooks: number): Doubt[] {
  const claim: Claim = { ...install, where: 'install', askedMm: joint.fit.clearance.wayInMm };
  const place = placeErrorsMm(joint);
  const meetings = meetingsOnLegs(joint.fit.legs, scene.fixed, scene.moving);
  return [
    ...lookInto(claim, meetings, place, looks, mostLooks / 2).doubts,
    ...witnessDoubts(claim, install.nearest, scene),
    ...errorDoubts('install', install, scene, place),
    ...foulingDoubts(claim, install, meetings, looks, mostLooks / 2),
  ];
}

/** A rotating part against the moving part, home and on the way in, and against the fixed part. */
function lookRound(
  joint: Joint,
  part: Casting,
  answers: readonly RotatingAnswer[],
  looks: Looks,
  mostLooks: number,
): ClaimFound[] {
  const { rotatingMm } = joint.fit.clearance;
  const rings = rotatingSolids(part);
  const [moving, fixed] = answers;
  return [
    lookPast(joint, 'moving', moving, rings, movingSolids(joint.moving, rotatingMm), looks, mostLooks / 2),
    lookPast(joint, 'fixed', fixed, rings, fixedSolids(joint.fixed, rotatingMm), looks, mostLooks / 2),
  ];
}

function lookPast(
  joint: Joint,
  against: 'moving' | 'fixed',
  answer: RotatingAnswer | undefined,
  rings: readonly Solid[],
  others: readonly Solid[],
  looks: Looks,
  mostLooks: number,
): ClaimFound {
  if (answer?.against !== against) {
    const text = `No answer is given for a rotating part against the ${against} part.`;
    return {
      doubts: [{ what: 'rotating-part', where: 'rotating', text, claimedMm: null, foundMm: null }],
      worstMm: null,
    };
  }
  const { state, clearanceMm, toleranceMm, nearest } = answer;
  const claim: Claim = { state, clearanceMm, toleranceMm, where: 'rotating', askedMm: joint.fit.clearance.rotatingMm };
  const legs = against === 'moving' ? joint.fit.legs : [];
  const meetings = [...meetingsAtHome(rings, others), ...meetingsOnLegs(legs, rings, others)];
  const place = against === 'moving' ? placeErrorsMm(joint) : [];
  const found = lookInto(claim, meetings, place, looks, mostLooks);
  return {
    ...found,
    doubts: [...found.doubts, ...witnessDoubts(claim, nearest, { fixed: rings, moving: others, legs })],
  };
}
