import { asTheyAre, pairsOn } from '../clearance/pairs.ts';
import { standingAt } from '../clearance/passings.ts';
import { type Solid, sidesOf } from '../clearance/solids.ts';
import { regionContains } from '../geometry/motion/containment.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { outlinePoints, outwardNormal } from '../geometry/motion/outline-points.ts';
import { boxOfOutline, type OutlineTree } from '../geometry/motion/outline-tree.ts';
import { apply, inverse, type Rigid, rigid, rotate } from '../geometry/plane/rigid.ts';
import { add, distance, dot, scale, sub, type Vec, vec } from '../geometry/plane/vec.ts';
import type { Part } from '../job/part.ts';
import type { Position } from '../job/path.ts';
import type { Joint } from '../joint/joint.ts';
import { type Correction, motionOf, truly, type Unknown, type Unknowns } from './correction.ts';

/** Where the castings come nearest at one position, or how far the one is in the other; joint frame, mm. */
export interface Contact {
  /** Negative where metal is in metal: minus how deep. */
  readonly gapMm: number;
  readonly fixedAt: Vec;
  readonly movingAt: Vec;
  /** Unit vector out of the fixed metal into the moving. */
  readonly normal: Vec;
  readonly fixedSection: string;
  readonly movingSection: string;
}

/** A joint as it is offered up at one go, and where its fixed part has a surface that was cut: no tracing error is in that. */
export interface Offered {
  readonly joint: Joint;
  readonly isCutAt: (section: string, at: Vec) => boolean;
}

/** A joint before anything was cut. */
export const uncut = (joint: Joint): Offered => ({ joint, isCutAt: () => false });

/**
 * The nearest place of the two castings with the moving one truly where it stands, each section as much larger as the
 * correction says; null where nothing shares depth there. Depths count at their worst only where none do as measured.
 */
export function contactAt(offered: Offered, position: Position, correction: Correction): Contact | null {
  const { joint } = offered;
  const at = truly(position, correction);
  const pairs = pairsOn(sidesOf(joint), [standingAt(at)], asTheyAre).filter(
    ({ fixed, moving }) => !fixed.untraced && !moving.untraced,
  );
  const measured = pairs.filter(({ view }) => view === 'as-measured');
  const placed = rigid(at.turnRad, at.shift);
  const contacts = (measured.length > 0 ? measured : pairs).flatMap(({ fixed, moving, passage }) => {
    const between = { fixedSection: fixed.name, movingSection: moving.name };
    const { nearest } = passage;
    if (passage.distanceMm === null || nearest === null) return [];
    const { fixedAt, movingAt } = nearest;
    const apartMm = distance(fixedAt, movingAt);
    const found =
      passage.state === 'clear' && apartMm > leastApartMm
        ? { gapMm: apartMm, fixedAt, movingAt, normal: scale(sub(movingAt, fixedAt), 1 / apartMm) }
        : (deepest(fixed.tree, moving.tree, placed) ?? touchingAt(fixed.tree, fixedAt));
    const nearerMm = fixedMovesMm(offered, correction, fixed.name, found) + correction.offsetMm('moving', moving.name);
    return [{ ...found, ...between, gapMm: found.gapMm - nearerMm }];
  });
  return contacts.reduce<Contact | null>(
    (least, one) => (least === null || one.gapMm < least.gapMm ? one : least),
    null,
  );
}

/** Nearer, and the way from the one to the other is rounding, mm. */
const leastApartMm = 1e-6;

/** How far a correction brings fixed metal towards the moving, where it is as cast. */
function fixedMovesMm(
  { isCutAt }: Offered,
  { fixed, offsetMm }: Correction,
  section: string,
  { fixedAt, normal }: Pick<Contact, 'fixedAt' | 'normal'>,
): number {
  if (isCutAt(section, fixedAt)) return 0;
  return offsetMm('fixed', section) + dot(normal, sub(apply(motionOf(fixed), fixedAt), fixedAt));
}

type Between = Omit<Contact, 'fixedSection' | 'movingSection'>;

/** Points of outlines are looked at as far apart as this: deeper places between them are missed by less than touching is read to, mm. */
const pointsApartMm = 1;

/** The point of either outline that is deepest in the other solid; null where none is. */
function deepest(fixed: OutlineTree, moving: OutlineTree, placed: Rigid): Between | null {
  const back = inverse(placed);
  const ofMoving = deepestIn(fixed, moving, (p) => apply(placed, p));
  const ofFixed = deepestIn(moving, fixed, (p) => apply(back, p));
  if (ofFixed !== null && (ofMoving === null || ofFixed.depthMm > ofMoving.depthMm)) {
    const { depthMm, point, onto } = ofFixed;
    const normal = rotate(placed, scale(sub(point, onto), 1 / depthMm));
    return { gapMm: -depthMm, fixedAt: apply(placed, point), movingAt: apply(placed, onto), normal };
  }
  if (ofMoving === null) return null;
  const { depthMm, point, onto } = ofMoving;
  return { gapMm: -depthMm, fixedAt: onto, movingAt: point, normal: scale(sub(onto, point), 1 / depthMm) };
}

/** In the frame of `solid`: the deepest of the other's points, and the point of the outline nearest to it. */
function deepestIn(solid: OutlineTree, other: OutlineTree, carry: (p: Vec) => Vec) {
  const { minX, minY, maxX, maxY } = boxOfOutline(solid);
  let found: { depthMm: number; point: Vec; onto: Vec } | null = null;
  for (const own of outlinePoints(other, pointsApartMm)) {
    const point = carry(own.point);
    if (point.x < minX || point.x > maxX || point.y < minY || point.y > maxY) continue;
    if (!regionContains(solid, point.x, point.y)) continue;
    const { distanceMm: depthMm, point: onto } = nearestOnOutline(solid, point);
    if (depthMm > Math.max(leastApartMm, found?.depthMm ?? 0)) found = { depthMm, point, onto };
  }
  return found;
}

function touchingAt(fixed: OutlineTree, near: Vec): Between {
  const { point, edge } = nearestOnOutline(fixed, near);
  return { gapMm: 0, fixedAt: point, movingAt: point, normal: outwardNormal(fixed, edge, point) };
}

/** A place on the outline of a fixed section, and the way out of the metal there. */
export interface SurfacePlace {
  readonly section: string;
  readonly at: Vec;
  readonly normal: Vec;
  readonly depthMm: number;
}

/**
 * From a place on the fixed part, which lies as much farther out as its section is larger, to the nearest moving metal at
 * its depth; negative where it is in that metal. Null where no moving section reaches that depth.
 */
export function gapFrom(
  offered: Offered,
  place: SurfacePlace,
  position: Position,
  correction: Correction,
): Contact | null {
  const at = truly(position, correction);
  const placed = rigid(at.turnRad, at.shift);
  const back = inverse(placed);
  const isCut = offered.isCutAt(place.section, place.at);
  const grownMm = correction.offsetMm('fixed', place.section);
  const fixedAt = isCut ? place.at : add(apply(motionOf(correction.fixed), place.at), scale(place.normal, grownMm));
  const own = apply(back, fixedAt);
  let nearest: Contact | null = null;
  for (const solid of movingAtDepth(offered.joint, place.depthMm, position.standOffMm)) {
    const { distanceMm, point, edge } = nearestOnOutline(solid.tree, own);
    if (edge < 0) continue;
    const inside = regionContains(solid.tree, own.x, own.y);
    const gapMm = (inside ? -distanceMm : distanceMm) - correction.offsetMm('moving', solid.name);
    if (nearest !== null && gapMm >= nearest.gapMm) continue;
    const normal =
      distanceMm > leastApartMm
        ? scale(sub(point, own), (inside ? -1 : 1) / distanceMm)
        : scale(outwardNormal(solid.tree, edge, point), -1);
    nearest = {
      gapMm,
      fixedAt,
      movingAt: apply(placed, point),
      normal: rotate(placed, normal),
      fixedSection: place.section,
      movingSection: solid.name,
    };
  }
  return nearest;
}

/** Moving metal at a depth of the fixed part; what ends no farther from it than depths are in error counts where nothing else does. */
export function movingAtDepth(joint: Joint, depthMm: number, standOffMm: number): Solid[] {
  const z = -depthMm - standOffMm;
  const within = (slackMm: (solid: Solid) => number): Solid[] =>
    sidesOf(joint).moving.filter(
      (solid) =>
        !solid.untraced &&
        (solid.depth === null || (solid.depth.fromMm - slackMm(solid) <= z && z <= solid.depth.toMm + slackMm(solid))),
    );
  const exact = within(() => 0);
  return exact.length > 0 ? exact : within(({ depthErrorMm }) => depthErrorMm);
}

/** How the gap of a contact, or the gap from a place, changes with each unknown, mm per mm. */
export function slopesOf(
  contact: Contact,
  { isCutAt }: Offered,
  position: Position,
  { moving }: Correction,
  { list, leverMm }: Unknowns,
  place?: SurfacePlace,
): number[] {
  const { fixedSection, movingSection, fixedAt, movingAt, normal } = contact;
  const isCut = isCutAt(fixedSection, place?.at ?? fixedAt);
  const turned = rigid(position.turnRad, vec(0, 0));
  // the moving point where the correction puts it at home, from the point that its turn is about
  const arm = sub(rotate(inverse(turned), sub(movingAt, position.shift)), moving.shift);
  const lies = {
    moving: { arm, along: (v: Vec): number => dot(normal, rotate(turned, v)) },
    fixed: { arm: place?.at ?? fixedAt, along: (v: Vec): number => (isCut ? 0 : 0 - dot(normal, v)) },
  };
  // metal grows square to its outline: towards the other at the nearest place, slantwise from a place that was given
  const growth = (part: Part, section: string): number => {
    if (section !== (part === 'moving' ? movingSection : fixedSection)) return 0;
    if (part === 'moving') return 1;
    return isCut ? 0 : place === undefined ? 1 : dot(normal, place.normal);
  };
  const slope = (unknown: Unknown): number => {
    if (unknown.kind === 'farther-on') return 0;
    if (unknown.kind === 'offset') return 0 - growth(unknown.part, unknown.section);
    const lie = lies[unknown.part];
    switch (unknown.kind) {
      case 'shift-x':
        return lie.along(vec(1, 0));
      case 'shift-y':
        return lie.along(vec(0, 1));
      case 'turn':
        return lie.along(vec(-lie.arm.y, lie.arm.x)) / leverMm;
    }
  };
  return list.map(slope);
}
