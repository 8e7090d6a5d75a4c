import type { Progress } from '../../geometry/progress.ts';
import type { Casting } from '../../job/casting.ts';
import type { Joint } from '../../joint/joint.ts';
import type { CheckResult, FoulingStretch, HomeResult, RotatingResult, WayInResult } from '../check-result.ts';
import type { Claim, FoulStretch } from './verify-claim.ts';
import { type Doubt, doubt, type Verification } from './verify-doubt.ts';
import { dowelDoubts, placeErrorsMm } from './verify-dowels.ts';
import { endGapDoubts } from './verify-end-gap.ts';
import { errorDoubts } from './verify-error.ts';
import {
  type Extrusion,
  fixedExtrusions,
  type Lengthening,
  meetingsAtHome,
  meetingsOnLegs,
  movingExtrusions,
  rotatingExtrusions,
} from './verify-extrusions.ts';
import { foulFigureDoubts } from './verify-foul-figures.ts';
import { foulingDoubts } from './verify-fouling.ts';
import { type ClaimEvidence, lookAtWorst, lookInto } from './verify-gaps.ts';
import { Looks } from './verify-look.ts';
import { nearestDoubts } from './verify-nearest.ts';
import { verdictDoubts } from './verify-verdict.ts';
import { atHome } from './verify-way.ts';

/** Points that are measured against outlines in all, about; shared evenly among all that is looked at. */
const mostLooks = 2_000_000;

/** The sections of both parts. */
interface Extrusions {
  readonly fixed: readonly Extrusion[];
  readonly moving: readonly Extrusion[];
}

/**
 * Measures a result again, by other means than it was got: points along the outlines as traced are followed on their
 * way, witnesses are looked up on the outlines, and figures that follow from others are worked out from them. It
 * samples, so it can find a result wrong but never prove it right.
 */
export function* verifyCheck(joint: Joint, check: CheckResult): Generator<Progress, Verification> {
  const looks = new Looks(mostLooks);
  const extrusions: Extrusions = { fixed: fixedExtrusions(joint.fixed), moving: movingExtrusions(joint.moving) };
  const { rotating } = joint;
  const steps = 2 + rotating.length;
  yield { step: 'verify home', done: 0, of: steps };
  const doubts = [...dowelDoubts(joint), ...homeDoubts(joint, check.home, extrusions, looks, looks.share(steps))];
  yield { step: 'verify way in', done: 1, of: steps };
  doubts.push(...wayInDoubts(joint, check.wayIn, extrusions, looks, looks.share(steps - 1)));
  const found: ClaimEvidence[] = [];
  for (const [i, part] of rotating.entries()) {
    yield { step: `verify ${part.name}`, done: 2 + i, of: steps };
    const results = check.rotating.slice(2 * i, 2 * i + 2);
    found.push(...lookRound(joint, part, results, extrusions, looks, looks.share(rotating.length - i)));
  }
  const worsts = found.map(({ worstMm }) => worstMm);
  doubts.push(...found.flatMap((claim) => claim.doubts), ...verdictDoubts(joint, check, worsts));
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
  home: HomeResult,
  { fixed, moving }: Extrusions,
  looks: Looks,
  mostLooks: number,
): Doubt[] {
  const claim: Claim = { ...home, ...foulDepth(home), where: 'home', askedMm: joint.fit.clearance.homeMm };
  const place = placeErrorsMm(joint);
  const by = mating(joint);
  const meetings = meetingsAtHome(fixed, moving, by);
  return [
    ...lookInto(claim, meetings, place, looks, mostLooks / 4).doubts,
    ...lookAtWorst(claim, meetingsAtHome(fixed, moving, atWorst(by)), place, looks, mostLooks / 4).doubts,
    ...nearestDoubts(claim, home.nearest, meetings),
    ...errorDoubts('home', home, meetings, place),
    ...foulFigureDoubts('home', home, fixed, meetings, looks, mostLooks / 4),
    ...endGapDoubts('home', home.endGapMm, fixed, moving, [atHome], looks, mostLooks / 4),
  ];
}

function wayInDoubts(
  joint: Joint,
  wayIn: WayInResult | null,
  { fixed, moving }: Extrusions,
  looks: Looks,
  mostLooks: number,
): Doubt[] {
  const { legs, clearance } = joint.fit;
  const where = 'install';
  if (wayIn === null) return legs.length === 0 ? [] : [doubt('state', where, 'Nothing is said of the way in.')];
  const claim: Claim = {
    ...wayIn,
    ...foulDepth(wayIn),
    fouling: wayIn.fouling.map(stretchOf),
    where,
    askedMm: clearance.wayInMm,
  };
  const place = placeErrorsMm(joint);
  const by = mating(joint);
  const meetings = meetingsOnLegs(legs, fixed, moving, by);
  return [
    ...lookInto(claim, meetings, place, looks, mostLooks / 4).doubts,
    ...lookAtWorst(claim, meetingsOnLegs(legs, fixed, moving, atWorst(by)), place, looks, mostLooks / 4).doubts,
    ...nearestDoubts(claim, wayIn.nearest, meetings),
    ...errorDoubts(where, wayIn, meetings, place),
    ...foulingDoubts(wayIn, meetings, looks, mostLooks / 8),
    ...foulFigureDoubts(where, wayIn, fixed, meetings, looks, mostLooks / 4),
    ...endGapDoubts(where, wayIn.endGapMm, fixed, moving, legs, looks, mostLooks / 8),
  ];
}

const foulDepth = ({ foul }: HomeResult | WayInResult): Pick<Claim, 'deepestMm'> => ({ deepestMm: foul.deepestMm });

const stretchOf = ({ from, to, fixedSection, movingSection }: FoulingStretch): FoulStretch => ({
  leg: from.leg,
  fromAt: from.at,
  toAt: to.at,
  fixedSection,
  movingSection,
});

/** A rotating part against the moving part, home and on the way in, and against the fixed part. */
function lookRound(
  joint: Joint,
  part: Casting,
  results: readonly RotatingResult[],
  { fixed, moving }: Extrusions,
  looks: Looks,
  mostLooks: number,
): ClaimEvidence[] {
  const { legs, clearance } = joint.fit;
  const { rotatingMm } = clearance;
  const rings = rotatingExtrusions(part);
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
    const result = results.find((said) => said.part === part.name && said.against === against);
    if (result === undefined) {
      const text = `Nothing is said of "${part.name}" against the ${against} part.`;
      return { doubts: [doubt('rotating-part', 'rotating', text)], worstMm: null };
    }
    const { state, clearanceMm, toleranceMm, nearest, instant } = result;
    const claim: Claim = { state, clearanceMm, toleranceMm, where: 'rotating', askedMm: rotatingMm };
    const { doubts } = lookInto(claim, meetings, place, looks, mostLooks / 4);
    const { worstMm } = lookAtWorst(claim, meetingsBy(atWorst(turning)), place, looks, mostLooks / 4);
    return { worstMm, doubts: [...doubts, ...nearestDoubts(claim, nearest && { ...nearest, ...instant }, meetings)] };
  });
}
