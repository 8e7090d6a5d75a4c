import { apply, inverse } from '../geometry/rigid.ts';
import { distance, vec } from '../geometry/vec.ts';
import type { Leg } from '../model/path.ts';
import { type Claim, pairName } from './verify-claim.ts';
import type { Doubt, DoubtCode } from './verify-doubt.ts';
import { roundingMm } from './verify-dowels.ts';
import type { Solid } from './verify-solids.ts';
import { atHome, overlapMm, pathMm, placementAt, sharedStretch, standOffAt, type Way } from './verify-way.ts';

type Point = readonly [number, number];

/** A place on the way in, as an answer gives it. */
export interface Moment {
  readonly leg: number;
  readonly at: number;
  readonly turnDeg: number;
  readonly standOffMm: number;
}

/** Two points an answer points out, with the moment where it is not home. */
export interface Witness extends Partial<Moment> {
  readonly fixedAt: Point;
  readonly movingAt: Point;
  readonly fixedSection: string;
  readonly movingSection: string;
}

/** Points this near an outline, mm, lie on it: answers are rounded to 1e-6. */
const onOutlineMm = 1e-5;

/** How a pair is found, and what it goes by. */
export interface Scene {
  readonly fixed: readonly Solid[];
  readonly moving: readonly Solid[];
  readonly legs: readonly Leg[];
}

/** What two witness points say against a claim: that they lie elsewhere, at another time, or another way apart. */
export function witnessDoubts(claim: Claim, witness: Witness | null, scene: Scene): Doubt[] {
  const doubt = doubter(claim);
  if (witness === null) {
    return claim.clearanceMm === null ? [] : [doubt('witness', 'A clearance is given without its two points.')];
  }
  const { fixedSection, movingSection } = witness;
  const f = scene.fixed.find(({ name }) => name === fixedSection);
  const m = scene.moving.find(({ name }) => name === movingSection);
  if (f === undefined || m === undefined) {
    return [doubt('witness-section', `There is no ${pairName({ name: fixedSection }, { name: movingSection })}.`)];
  }
  const way = witness.leg === undefined ? atHome : scene.legs[witness.leg - 1];
  if (way === undefined) return [doubt('moment', `There is no leg ${witness.leg}.`)];
  return [
    ...momentDoubts(claim, witness, way),
    ...depthDoubts(claim, f, m, way, witness.at ?? 0),
    ...placeDoubts(claim, witness, f, m, way),
  ];
}

const doubter =
  ({ where }: Claim) =>
  (
    what: DoubtCode,
    text: string,
    claimedMm: number | null = null,
    foundMm: number | null = null,
    at?: Point,
  ): Doubt => ({
    what,
    where,
    text,
    claimedMm,
    foundMm,
    ...(at && { at }),
  });

/** Turn and stand-off must be those of the leg at that fraction. */
export function momentDoubts(claim: Claim, { leg, at = 0, turnDeg, standOffMm }: Partial<Moment>, way: Way): Doubt[] {
  if (leg === undefined || turnDeg === undefined || standOffMm === undefined) return [];
  const spanDeg = ((way.to.turnRad - way.from.turnRad) * 180) / Math.PI;
  const foundDeg = (way.from.turnRad * 180) / Math.PI + at * spanDeg;
  const span = Math.abs(way.to.standOffMm - way.from.standOffMm);
  const agrees =
    at >= 0 &&
    at <= 1 &&
    Math.abs(foundDeg - turnDeg) <= roundingMm * (1 + Math.abs(spanDeg)) &&
    Math.abs(standOffAt(way, at) - standOffMm) <= roundingMm * (1 + span);
  if (agrees) return [];
  const text = `Leg ${leg} at ${at} has turn ${foundDeg}° and stand-off ${standOffAt(way, at)} mm; given are ${turnDeg}° and ${standOffMm} mm.`;
  return [doubter(claim)('moment', text, standOffMm, standOffAt(way, at))];
}

function depthDoubts(claim: Claim, f: Solid, m: Solid, way: Way, at: number): Doubt[] {
  if (f.z === null || m.z === null) return [];
  const slack = onOutlineMm + roundingMm * Math.abs(way.to.standOffMm - way.from.standOffMm);
  const sharedMm = overlapMm(f.z, m.z, standOffAt(way, at));
  if (sharedMm >= -slack) return [];
  return [doubter(claim)('witness-depth', `${pairName(f, m)} share no depth then.`, null, sharedMm)];
}

function placeDoubts(claim: Claim, witness: Witness, f: Solid, m: Solid, way: Way): Doubt[] {
  const doubt = doubter(claim);
  const at = witness.at ?? 0;
  const [fixedAt, movingAt] = [vec(...witness.fixedAt), vec(...witness.movingAt)];
  const slack = onOutlineMm + 1e-6 * pathMm(way, movingAt);
  const fixedGap = f.shape.gapMm(fixedAt, 1);
  const movingGap = m.shape.gapMm(apply(inverse(placementAt(way, at)), movingAt), 1);
  const apart = distance(fixedAt, movingAt);
  const inside = claim.state !== 'clear' && isStart(f, m, way, at);
  const off = [fixedGap, movingGap].filter((gap) => Math.abs(gap) > slack && !(inside && gap < 0));
  return [
    ...off.map((gap) =>
      doubt('witness-place', `A point of ${pairName(f, m)} lies off its outline.`, 0, gap, witness.fixedAt),
    ),
    ...distanceDoubts(claim, apart, witness),
  ];
}

/** Whether a pair comes into one another's depth at that instant, and so can begin overlapped. */
function isStart(f: Solid, m: Solid, way: Way, at: number): boolean {
  const stretch = sharedStretch(f.z, m.z, way);
  return stretch !== null && Math.abs(at - stretch.from) <= roundingMm;
}

function distanceDoubts(claim: Claim, apart: number, { fixedAt }: Witness): Doubt[] {
  const slack = 2 * roundingMm + claim.toleranceMm;
  const fits = claim.state === 'undecided' || Math.abs(apart - (claim.clearanceMm ?? 0)) <= slack;
  if (fits) return [];
  const text = `The two points are ${apart} mm apart, not ${claim.clearanceMm} mm.`;
  return [doubter(claim)('witness-distance', text, claim.clearanceMm, apart, fixedAt)];
}
