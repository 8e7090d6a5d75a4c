import { isWithin, nearestOnOutline } from '../motion/nearest-point.ts';
import { buildOutlineTree, type OutlineTree } from '../motion/outline-tree.ts';
import { type Box, boxesMeet } from '../plane/edge-box.ts';
import { circleLoop, type Loop } from '../plane/loop.ts';
import { distance, lerp, scale, sub, type Vec, vec } from '../plane/vec.ts';
import { offset } from '../polygons/offset.ts';
import { difference, intersection, pieces, union } from '../polygons/polygon-engine.ts';
import { polygonise } from '../polygons/polygonise.ts';
import { loopsOf, outlinesOf, type Polygons } from '../polygons/polygons.ts';
import { boxRound, rectangle, solidNear } from '../polygons/solid-near.ts';
import { metalLeft } from './metal-left.ts';
import { type Centre, roomiest } from './roomiest.ts';
import { arcToleranceOf, biteMm, standingMm } from './tolerances.ts';

/** What lies this near to metal that stays need not be in the cutter's reach: that much of a corner may be left. */
export const cornerSlackMm = (radiusMm: number): number => 4 * arcToleranceOf(radiusMm);

/** More bites than this for one corner is no corner: the cut is then grown all along instead. */
const mostBites = 64;

/** The further metal a round cutter takes where it gets at all of a cut, and where it has no way in from the side. */
export interface CornerRelief {
  /** All the metal that is bitten, overlapping the cut, so that no seam is left between the two; and what of it is new. */
  readonly bitten: Polygons;
  readonly extra: Polygons;
  readonly narrow: readonly Narrow[];
}

/** A place of a cut that the cutter's centre cannot be moved to without going through metal that stays. */
export interface Narrow {
  readonly at: Vec;
  /** The width between the metal on either side. */
  readonly gapMm: number;
}

/** What the clearance takes off a section, polygons in the joint frame. */
export interface ReliefNeed {
  readonly metal: Polygons;
  readonly needed: Polygons;
  /** The metal without what is needed. */
  readonly left: Polygons;
  /** Other metal that stays. */
  readonly beside: Polygons;
}

/**
 * The metal beyond a cut that a cutter of `radiusMm` must take so that every corner it leaves is one it can make: where
 * its disc, kept clear of the metal that stays, does not get at some of the cut, it bites into the metal beside. A bite is
 * set where it goes least deep for the farthest place not yet reached, and runs there from where the centre may go
 * freely. Null where a corner would take too many bites. Yields wherever it may have taken long.
 */
export function* cornerRelief(
  { metal, needed, left, beside }: ReliefNeed,
  radiusMm: number,
): Generator<void, CornerRelief | null> {
  const stays = beside.length === 0 ? left : union([...left, ...metalLeft(beside, needed)]);
  if (stays.length === 0) return { bitten: [], extra: [], narrow: [] };
  const open = difference([rectangle(boxRound([...metal, ...beside], 4 * radiusMm))], stays);
  yield;
  const toleranceMm = arcToleranceOf(radiusMm);
  const free = offset(outlinesOf(open), -radiusMm, toleranceMm, 'inside').polygons;
  yield;
  const reached = offset(outlinesOf(free), radiusMm, toleranceMm, 'inside').polygons;
  yield;
  const room: DiscRoom = {
    radiusMm,
    stays: buildOutlineTree(loopsOf(stays)),
    free: buildOutlineTree(loopsOf(free)),
    reached: buildOutlineTree(loopsOf(reached)),
  };
  const bites: Bite[] = [];
  for (const piece of pieces(difference(needed, reached)).flatMap((whole) => worthABite(stays, whole, radiusMm))) {
    yield;
    // one bite may well do for the corners of a rough edge beside it
    const found = bitesFor(room, without(piece, bites));
    if (found === null) return null;
    bites.push(...found);
  }
  const groups = meetingBites(bites).map(taken);
  yield;
  const takenFrom = (solid: Polygons): Polygons => groups.flatMap((group) => intersection(solid, group));
  return {
    bitten: takenFrom(metal),
    extra: takenFrom(left),
    narrow: bites.filter(({ isBarred }) => isBarred).map(({ centre }) => ({ at: centre.at, gapMm: 2 * centre.roomMm })),
  };
}

/** The pieces of what is not reached that are more than what may be left of a corner. */
function worthABite(stays: Polygons, piece: Polygons, radiusMm: number): readonly Polygons[] {
  const slackMm = cornerSlackMm(radiusMm);
  const about = solidNear(stays, boxRound(piece, 2 * slackMm));
  return pieces(difference(piece, offset(outlinesOf(about), slackMm, slackMm / 4, 'inside').polygons));
}

interface DiscRoom {
  readonly radiusMm: number;
  readonly stays: OutlineTree;
  /** Where the cutter's centre may go, and what it gets at from there. */
  readonly free: OutlineTree;
  readonly reached: OutlineTree;
}

interface Bite {
  readonly centre: Centre;
  readonly polygons: Polygons;
  readonly box: Box;
  /** The way to it from where the centre may go freely leads through metal that stays. */
  readonly isBarred: boolean;
}

/** So many bites are united at once: where many lie over one another, each costs more the more there are. */
const unitedAtOnce = 12;

/** What several bites take in. */
function taken(bites: readonly Bite[]): Polygons {
  if (bites.length <= unitedAtOnce) return union(bites.flatMap(({ polygons }) => polygons));
  const half = bites.length >> 1;
  return union([...taken(bites.slice(0, half)), ...taken(bites.slice(half))]);
}

/** The bites in groups that lie apart from one another. */
function meetingBites(bites: readonly Bite[]): Bite[][] {
  let groups: Bite[][] = [];
  for (const bite of bites) {
    const meets = (group: readonly Bite[]): boolean => group.some(({ box }) => boxesMeet(box, bite.box, 0));
    groups = [...groups.filter((group) => !meets(group)), [bite, ...groups.filter(meets).flat()]];
  }
  return groups;
}

/** What bites leave of a piece. */
function without(piece: Polygons, bites: readonly Bite[]): Polygons {
  const about = boxRound(piece, 0);
  const near = bites.filter(({ box }) => boxesMeet(box, about, 0));
  return near.length === 0
    ? piece
    : difference(
        piece,
        near.flatMap(({ polygons }) => polygons),
      );
}

/** Bites until all of a piece is taken; null where that takes too many. */
function bitesFor(room: DiscRoom, piece: Polygons): Bite[] | null {
  const bites: Bite[] = [];
  for (let rest = piece; rest.length > 0; ) {
    if (bites.length === mostBites) return null;
    const centre = roomiest(room.stays, farthest(room, rest, bites), room.radiusMm - biteMm);
    if (centre === null) return null;
    const bite = biteAt(room, centre, bites);
    rest = without(rest, [bite]);
    bites.push(bite);
  }
  return bites;
}

/** The corner of what is not yet taken that lies farthest from what is. */
function farthest({ reached, radiusMm }: DiscRoom, rest: Polygons, bites: readonly Bite[]): Vec {
  const fromReachMm = (p: Vec): number => {
    const fromBites = bites.map(({ centre }) => distance(centre.at, p) - radiusMm);
    return Math.min(
      reached.edgeCount === 0 ? Number.POSITIVE_INFINITY : nearestOnOutline(reached, p).distanceMm,
      ...fromBites,
    );
  };
  let best = { mm: Number.NEGATIVE_INFINITY, at: vec(0, 0) };
  for (const at of rest.flat()) {
    const mm = fromReachMm(at);
    if (mm > best.mm) best = { mm, at };
  }
  return best.at;
}

/** The disc at a centre, drawn out to the nearest place the centre can come from, where the way there is no narrower. */
function biteAt({ stays, free, radiusMm }: DiscRoom, centre: Centre, before: readonly Bite[]): Bite {
  const doors = [
    ...(free.edgeCount > 0 ? [nearestOnOutline(free, centre.at).point] : []),
    ...before.filter(({ isBarred }) => !isBarred).map((bite) => bite.centre.at),
  ].sort((a, b) => distance(a, centre.at) - distance(b, centre.at));
  const door = doors.find((from) => isWideEnough(stays, from, centre));
  const polygons = track(door ?? centre.at, centre.at, radiusMm);
  return { centre, polygons, box: boxRound(polygons, 0), isBarred: door === undefined };
}

const wayMm = 0.5;

/** Whether no place on the straight way to a centre is much narrower than the centre's own, and than its start. */
function isWideEnough(stays: OutlineTree, from: Vec, { at, roomMm }: Centre): boolean {
  const steps = Math.ceil(distance(from, at) / wayMm);
  const leastMm = 0.98 * Math.min(roomMm, nearestOnOutline(stays, from).distanceMm);
  for (let i = 1; i < steps; i++) {
    if (isWithin(stays, lerp(from, at, i / steps), leastMm)) return false;
  }
  return true;
}

/** What a disc covers as it runs straight from one centre to another. */
function track(from: Vec, to: Vec, radiusMm: number): Polygons {
  return polygonise([trackLoop(from, to, radiusMm)], arcToleranceOf(radiusMm), 'outside');
}

function trackLoop(from: Vec, to: Vec, radiusMm: number): Loop {
  const lengthMm = distance(from, to);
  if (lengthMm < standingMm) return circleLoop(to, radiusMm);
  const along = scale(sub(to, from), radiusMm / lengthMm);
  const right = vec(along.y, -along.x);
  const at = (p: Vec, side: 1 | -1, bulge: number) => ({ x: p.x + side * right.x, y: p.y + side * right.y, bulge });
  return { kind: 'path', vertices: [at(from, 1, 0), at(to, 1, 1), at(to, -1, 0), at(from, -1, 1)] };
}
