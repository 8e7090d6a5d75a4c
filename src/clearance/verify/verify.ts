import type { CheckAnswer, HomeAnswer, InstallAnswer, RotatingAnswer } from '../../answers/check-answer.ts';
import type { Progress } from '../../geometry/progress.ts';
import type { Casting } from '../../job/casting.ts';
import type { Joint } from '../../joint/joint.ts';
import type { Claim } from './verify-claim.ts';
import { type Doubt, doubt, type Verification } from './verify-doubt.ts';
import { dowelDoubts, placeErrorsMm } from './verify-dowels.ts';
import { endGapDoubts } from './verify-end-gap.ts';
import { errorDoubts } from './verify-error.ts';
import { foulFigureDoubts } from './verify-foul-figures.ts';
import { foulingDoubts } from './verify-fouling.ts';
import { type ClaimFound, lookAtWorst, lookInto } from './verify-gaps.ts';
import { Looks } from './verify-look.ts';
import {
  fixedSolids,
  type Lengthening,
  meetingsAtHome,
  meetingsOnLegs,
  movingSolids,
  rotatingSolids,
  type Solid,
} from './verify-solids.ts';
import { verdictDoubts } from './verify-verdict.ts';
import { atHome } from './verify-way.ts';
import { witnessDoubts } from './verify-witness.ts';

/** Points that are measured against outlines in all, about; shared evenly among all that is looked at. */
const mostLooks = 2_000_000;

/** The sections of both parts. */
interface Solids {
  readonly fixed: readonly Solid[];
  readonly moving: readonly Solid[];
}

/**
 * Measures an answer again, by other means than it was got: points along the outlines as traced are followed on their
 * way, witnesses are looked up on the outlines, and figures that follow from others are worked out from them. It
 * samples, so it can find an answer wrong but never prove it right.
 */
export function* verifyCheck(joint: Joint, answer: CheckAnswer): Generator<Progress, Verification> {
  const looks = new Looks(mostLooks);
  const solids: Solids = { fixed: fixedSolids(joint.fixed), moving: movingSolids(joint.moving) };
  const { rotating } = joint;
  const steps = 2 + rotating.length;
  yield { step: 'verify home', done: 0, of: steps };
  const doubts = [...dowelDoubts(joint, answer), ...homeDoubts(joint, answer.home, solids, looks, looks.share(steps))];
  yield { step: 'verify way in', done: 1, of: steps };
  doubts.push(...wayInDoubts(joint, answer.install, solids, looks, looks.share(steps - 1)));
  const found: ClaimFound[] = [];
  for (const [i, part] of rotating.entries()) {
    yield { step: `verify ${part.name}`, done: 2 + i, of: steps };
    const answers = answer.rotating.slice(2 * i, 2 * i + 2);
    found.push(...lookRound(joint, part, answers, solids, looks, looks.share(rotating.length - i)));
  }
  const worsts = found.map(({ worstMm }) => worstMm);
  doubts.push(...found.flatMap((claim) => claim.doubts), ...verdictDoubts(joint, answer, worsts));
  return { doubts, looks: looks.made };
}

/** Sections of the two parts, whose mating faces come together. */
const mating = ({ fit }: Joint): Lengthening => ({
  marginMm: fit.depthMarginMm,
  sparesFaces: true,
  withDepthErrors: false,
});

const atWorst = (by: Lengthening): Lengthening => ({ ...by, withDepthErrors: true });

function homeDoubts(
  joint: Joint,
  home: HomeAnswer,
  { fixed, moving }: Solids,
  looks: Looks,
  mostLooks: number,
): Doubt[] {
  const claim: Claim = { ...home, where: 'home', askedMm: joint.fit.clearance.homeMm };
  const place = placeErrorsMm(joint);
  const by = mating(joint);
  const meetings = meetingsAtHome(fixed, moving, by);
  return [
    ...lookInto(claim, meetings, place, looks, mostLooks / 4).doubts,
    ...lookAtWorst(claim, meetingsAtHome(fixed, moving, atWorst(by)), place, looks, mostLooks / 4).doubts,
    ...witnessDoubts(claim, home.nearest, meetings),
    ...errorDoubts('home', home, meetings, place),
    ...foulFigureDoubts('home', home, fixed, meetings, looks, mostLooks / 4),
    ...endGapDoubts('home', home.endGapMm, fixed, moving, [atHome], looks, mostLooks / 4),
  ];
}

function wayInDoubts(
  joint: Joint,
  install: InstallAnswer | null,
  { fixed, moving }: Solids,
  looks: Looks,
  mostLooks: number,
): Doubt[] {
  const { legs, clearance } = joint.fit;
  if (install === null) return legs.length === 0 ? [] : [doubt('state', 'install', 'Nothing is said of the way in.')];
  const claim: Claim = { ...install, where: 'install', askedMm: clearance.wayInMm };
  const place = placeErrorsMm(joint);
  const by = mating(joint);
  const meetings = meetingsOnLegs(legs, fixed, moving, by);
  return [
    ...lookInto(claim, meetings, place, looks, mostLooks / 4).doubts,
    ...lookAtWorst(claim, meetingsOnLegs(legs, fixed, moving, atWorst(by)), place, looks, mostLooks / 4).doubts,
    ...witnessDoubts(claim, install.nearest, meetings),
    ...errorDoubts('install', install, meetings, place),
    ...foulingDoubts(install, meetings, looks, mostLooks / 8),
    ...foulFigureDoubts('install', install, fixed, meetings, looks, mostLooks / 4),
    ...endGapDoubts('install', install.endGapMm, fixed, moving, legs, looks, mostLooks / 8),
  ];
}

/** A rotating part against the moving part, home and on the way in, and against the fixed part. */
function lookRound(
  joint: Joint,
  part: Casting,
  answers: readonly RotatingAnswer[],
  { fixed, moving }: Solids,
  looks: Looks,
  mostLooks: number,
): ClaimFound[] {
  const { legs, clearance } = joint.fit;
  const { rotatingMm } = clearance;
  const rings = rotatingSolids(part);
  const turning: Lengthening = { marginMm: rotatingMm, sparesFaces: false, withDepthErrors: false };
  const pastMoving = (by: Lengthening) => [
    ...meetingsAtHome(rings, moving, by),
    ...meetingsOnLegs(legs, rings, moving, by),
  ];
  const sides = [
    { against: 'moving', meetings: pastMoving, place: placeErrorsMm(joint) },
    { against: 'fixed', meetings: (by: Lengthening) => meetingsAtHome(rings, fixed, by), place: [] },
  ] as const;
  return sides.map(({ against, meetings: meetingsBy, place }) => {
    const meetings = meetingsBy(turning);
    const answer = answers.find((said) => said.part === part.name && said.against === against);
    if (answer === undefined) {
      const text = `Nothing is said of "${part.name}" against the ${against} part.`;
      return { doubts: [doubt('rotating-part', 'rotating', text)], worstMm: null };
    }
    const { state, clearanceMm, toleranceMm, nearest } = answer;
    const claim: Claim = { state, clearanceMm, toleranceMm, where: 'rotating', askedMm: rotatingMm };
    const { doubts } = lookInto(claim, meetings, place, looks, mostLooks / 4);
    const { worstMm } = lookAtWorst(claim, meetingsBy(atWorst(turning)), place, looks, mostLooks / 4);
    return { worstMm, doubts: [...doubts, ...witnessDoubts(claim, nearest, meetings)] };
  });
}
