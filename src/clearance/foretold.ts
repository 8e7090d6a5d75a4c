import { staysClear } from '../geometry/motion/least-distance.ts';
import { partOfMotion } from '../geometry/motion/motion.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { buildOutlineTree, type OutlineTree } from '../geometry/motion/outline-tree.ts';
import { passage } from '../geometry/motion/passage.ts';
import { type Rigid, rigid } from '../geometry/plane/rigid.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import { metalOnLeft } from '../geometry/polygons/metal-on-left.ts';
import { offset } from '../geometry/polygons/offset.ts';
import { engineErrorMm } from '../geometry/polygons/polygon-engine.ts';
import { loopsOf } from '../geometry/polygons/polygons.ts';
import { remembered } from '../geometry/remembered.ts';
import type { DepthRange, Section } from '../job/casting.ts';
import { type DowelGap, dowelGaps } from '../joint/dowel-gaps.ts';
import type { Joint } from '../joint/joint.ts';
import type { Instant } from './check-result.ts';
import { asTheyAre, pairsOn, placeErrors } from './pairs.ts';
import { type CountedWay, passings, waysOf } from './passings.ts';
import { reasonOf, reasonsBeforehand } from './reasons.ts';
import { type DepthView, type Fractions, meetingFractions } from './shared-depth.ts';
import { type Solid, sidesOf } from './solids.ts';

/** Where the moving part would go no farther. */
export interface Stop extends Instant {
  readonly fixedSection: string;
  readonly movingSection: string;
  /** In the joint frame, mm. */
  readonly where: Vec;
  /** Of the fixed part, where the two meet; null for sections without depth. */
  readonly depth: DepthRange | null;
  /** How far each dowel then is from its hole. */
  readonly dowelGaps: readonly DowelGap[];
}

/**
 * Where the castings will stop on the way in as they are, before anything is cut. Each of the three is null where it goes
 * all the way: by the outlines as traced, and with the tracing errors (95 %) against the builder and in his favour.
 */
export interface Foretold {
  /** Why nothing is foretold: only home was asked, or nothing of the job can be judged. Null where something is. */
  readonly unknown: 'no-way-in' | 'not-judged' | null;
  /** Whether it passes where nobody has traced, so that metal may stop it sooner. */
  readonly untraced: boolean;
  readonly stop: Stop | null;
  readonly earliest: Stop | null;
  readonly latest: Stop | null;
}

/**
 * Where castings stop: the first instant at which outlines meet, and those at which they would with metal larger by their
 * error (root sum of squares), or smaller by it. What meets end on stops where depths begin to be shared.
 */
export function foretold(joint: Joint): Foretold {
  const unknown = unknownBecause(joint);
  if (unknown !== null) return { unknown, untraced: false, stop: null, earliest: null, latest: null };
  return {
    unknown,
    untraced: passesUntraced(joint),
    stop: firstStop(joint, 'as-measured', () => 0),
    earliest: firstStop(joint, 'at-worst', (errorMm) => errorMm),
    latest: firstStop(joint, 'as-measured', (errorMm) => -errorMm),
  };
}

function unknownBecause(joint: Joint): Foretold['unknown'] {
  if (reasonOf(joint, reasonsBeforehand(joint)) !== null) return 'not-judged';
  return joint.fit.legs.length === 0 ? 'no-way-in' : null;
}

function passesUntraced(joint: Joint): boolean {
  return pairsOn(sidesOf(joint), waysOf(joint.fit.legs), asTheyAre).some(
    ({ fixed, moving, passage: { state } }) => (fixed.untraced || moving.untraced) && state !== 'clear',
  );
}

function firstStop(joint: Joint, view: DepthView, largerBy: (errorMm: number) => number): Stop | null {
  const sides = sidesOf(joint);
  for (const way of waysOf(joint.fit.legs)) {
    const stops = [...passings(sides, [way])].flatMap(({ fixed, moving }) => {
      if (fixed.untraced || moving.untraced) return [];
      const errorMm = Math.hypot(fixed.traceErrorMm, moving.traceErrorMm, ...placeErrors(joint));
      const fractions = meetingFractions(fixed, moving, way.leg, asTheyAre.depth, view);
      const at = fractions && blockedFrom(joint, fixed, moving, way, fractions, largerBy(errorMm));
      return at === null ? [] : [{ at, fixed, moving }];
    });
    if (stops.length === 0) continue;
    const { at, fixed, moving } = stops.reduce((first, one) => (one.at < first.at ? one : first));
    return stopOf(joint, way, at, fixed, moving);
  }
  return null;
}

/** Halvings of a leg: to a millionth of it. */
const halvings = 20;

/** The first fraction of a leg at which two solids are nearer than so much; null where they never are. */
function blockedFrom(
  joint: Joint,
  fixed: Solid,
  moving: Solid,
  { leg }: CountedWay,
  { from, to }: Fractions,
  largerByMm: number,
): number | null {
  const tree = largerByMm < 0 ? smaller(joint, moving, -largerByMm) : moving.tree;
  const isFreeUntil = (until: number): boolean => {
    const part = partOfMotion(rigid(leg.from.turnRad, leg.from.shift), leg.motion, from, until);
    // outlines that cross while nothing moves in the plane are told by their distance alone
    return staysClear(fixed.tree, tree, part.start, part.motion, Math.max(engineErrorMm, largerByMm));
  };
  if (isFreeUntil(to)) return null;
  if (!isFreeUntil(from)) return from;
  let [free, blocked] = [from, to];
  for (let k = 0; k < halvings; k++) {
    const middle = (free + blocked) / 2;
    if (isFreeUntil(middle)) free = middle;
    else blocked = middle;
  }
  return blocked;
}

const shrunk = remembered<OutlineTree>(2);
const arcsMm = 1e-3;

/** A moving solid without everything so near to its outside. */
function smaller({ moving: { sections } }: Joint, { name, tree }: Solid, byMm: number): OutlineTree {
  const loops = sections.find(({ id }: Section) => id === name)?.loops ?? [];
  return shrunk(tree, `${byMm}`, () =>
    buildOutlineTree(loopsOf(offset(metalOnLeft(loops), -byMm, arcsMm, 'inside').polygons)),
  );
}

function stopOf(joint: Joint, { leg, count }: CountedWay, at: number, fixed: Solid, moving: Solid): Stop {
  const { start } = partOfMotion(rigid(leg.from.turnRad, leg.from.shift), leg.motion, at, at);
  const standOffMm = leg.from.standOffMm + at * (leg.to.standOffMm - leg.from.standOffMm);
  return {
    leg: count,
    at,
    turnRad: leg.from.turnRad + at * (leg.to.turnRad - leg.from.turnRad),
    standOffMm,
    fixedSection: fixed.name,
    movingSection: moving.name,
    where: placeOf(fixed.tree, moving.tree, start),
    depth: sharedDepth(fixed.depth, moving.depth, standOffMm),
    dowelGaps: dowelGaps(joint, count, at),
  };
}

function placeOf(fixed: OutlineTree, moving: OutlineTree, start: Rigid): Vec {
  const { nearest } = passage(fixed, moving, start, { kind: 'slide', by: { x: 0, y: 0 } });
  const at = nearest?.fixedAt ?? start.shift;
  return nearestOnOutline(fixed, at).point;
}

/** The depth of the fixed part that two sections share at a stand-off. */
function sharedDepth(fixed: DepthRange | null, moving: DepthRange | null, standOffMm: number): DepthRange | null {
  if (fixed === null || moving === null) return fixed;
  return {
    fromMm: Math.max(fixed.fromMm, -standOffMm - moving.toMm),
    toMm: Math.min(fixed.toMm, -standOffMm - moving.fromMm),
  };
}
