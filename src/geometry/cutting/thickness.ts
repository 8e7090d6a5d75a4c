import { regionContains } from '../motion/containment.ts';
import { nearestOnOutline } from '../motion/nearest-point.ts';
import { buildOutlineTree, type OutlineTree } from '../motion/outline-tree.ts';
import { type Box, boxAround, gapOfBoxesMm } from '../plane/edge-box.ts';
import { distance, lerp, type Vec } from '../plane/vec.ts';
import { loopsOf, type Polygon, type Polygons, signedAreaMm2 } from '../polygons/polygons.ts';
import { alongOutline, roughMm } from './along-outline.ts';
import { outlineMiddleMm } from './tolerances.ts';

/** Edges are looked at in stretches no longer than this. */
const stretchMm = 2;

/** Two stretches that lie too near one another along the outline are parted until they are this short. */
const shortestMm = 0.05;

/**
 * What lies across the metal is at least so many times farther along the outline than through the metal; what is nearer
 * along it is the same flank, or a corner wider than 39°.
 */
const roundAbout = 3;

/** The least of the metal at new edges, and the places on the new edge and across from it. */
export interface Thickness {
  readonly mm: number;
  readonly at: Vec;
  readonly across: Vec;
}

/**
 * The least thickness of what is left between a new edge and another, old or new; null where none faces it within reach. Old is what lies on the outline as it was; a way along an outline is measured without its roughness, and what
 * stands out from it by less, or hangs on nothing and is smaller, is a burr and no wall.
 */
export function thinnest(left: Polygons, outline: OutlineTree, reachMm: number): Thickness | null {
  const stretches = left.flatMap((polygon, loop) => (isCrumb(polygon) ? [] : stretchesOf(polygon, loop)));
  const isOld = stretches.map(({ a, b }) => nearestOnOutline(outline, lerp(a, b, 0.5)).distanceMm < outlineMiddleMm);
  const cut = stretches.filter((_, i) => !isOld[i]);
  const old = stretches.filter((_, i) => isOld[i]);
  if (cut.length === 0) return null;
  const search: Search = { inside: buildOutlineTree(loopsOf(left)), reachMm, best: null };
  const fresh = groupOf(cut);
  if (old.length > 0) lookBetween(search, fresh, groupOf(old));
  lookWithin(search, fresh);
  return search.best;
}

/** Looks between all stretches of one group. */
function lookWithin(search: Search, { halves }: Group): void {
  if (halves === null) return;
  lookBetween(search, ...halves);
  for (const half of halves) lookWithin(search, half);
}

/** What hangs on nothing, all of it within the roughness of an outline. */
function isCrumb(polygon: Polygon): boolean {
  const [first] = polygon;
  return first !== undefined && signedAreaMm2(polygon) > 0 && polygon.every((p) => distance(first, p) < roughMm);
}

/** A straight piece of an outline, and where along its loop it begins and ends, mm. */
interface Stretch {
  readonly a: Vec;
  readonly b: Vec;
  readonly aMm: number;
  readonly bMm: number;
  readonly loop: number;
  readonly loopMm: number;
}

function stretchesOf(polygon: Polygon, loop: number): Stretch[] {
  const { atMm, lengthMm: loopMm } = alongOutline(polygon);
  return polygon.flatMap((a, i) => {
    const isLast = i + 1 === polygon.length;
    const b = polygon[isLast ? 0 : i + 1] as Vec;
    const whole = { a, b, aMm: atMm[i] as number, bMm: isLast ? loopMm : (atMm[i + 1] as number), loop, loopMm };
    const count = Math.max(1, Math.ceil(distance(a, b) / stretchMm));
    return count === 1 ? [whole] : Array.from({ length: count }, (_, k) => partOf(whole, k / count, (k + 1) / count));
  });
}

function partOf(stretch: Stretch, from: number, to: number): Stretch {
  const { a, b, aMm, bMm } = stretch;
  const along = (t: number): number => aMm + (bMm - aMm) * t;
  return { ...stretch, a: lerp(a, b, from), b: lerp(a, b, to), aMm: along(from), bMm: along(to) };
}

/** Stretches that follow one another, under a binary tree of boxes. */
interface Group {
  readonly box: Box;
  /** Null where they are of several loops. */
  readonly loop: number | null;
  readonly loopMm: number;
  readonly fromMm: number;
  readonly toMm: number;
  /** What a leaf stands for; null above. */
  readonly stretch: Stretch | null;
  readonly halves: readonly [Group, Group] | null;
}

function groupOf(stretches: readonly Stretch[], from = 0, to = stretches.length): Group {
  if (to - from === 1) return leafOf(stretches[from] as Stretch);
  const middle = (from + to) >> 1;
  const [s, t] = [groupOf(stretches, from, middle), groupOf(stretches, middle, to)];
  return {
    box: boxAround([s.box, t.box]),
    loop: s.loop === t.loop ? s.loop : null,
    loopMm: s.loopMm,
    fromMm: Math.min(s.fromMm, t.fromMm),
    toMm: Math.max(s.toMm, t.toMm),
    stretch: null,
    halves: [s, t],
  };
}

function leafOf(stretch: Stretch): Group {
  const { a, b, aMm, bMm, loop, loopMm } = stretch;
  const box = {
    minX: Math.min(a.x, b.x),
    minY: Math.min(a.y, b.y),
    maxX: Math.max(a.x, b.x),
    maxY: Math.max(a.y, b.y),
  };
  return { box, loop, loopMm, fromMm: Math.min(aMm, bMm), toMm: Math.max(aMm, bMm), stretch, halves: null };
}

interface Search {
  readonly inside: OutlineTree;
  readonly reachMm: number;
  best: Thickness | null;
}

/** Looks for what is thinner than the best so far between the stretches of two groups. */
function lookBetween(search: Search, s: Group, t: Group): void {
  const apartMm = gapOfBoxesMm(s.box, t.box);
  if (apartMm >= (search.best?.mm ?? search.reachMm) || isSameFlank(s, t, apartMm)) return;
  if (s.stretch !== null && t.stretch !== null) {
    lookAt(search, s.stretch, t.stretch);
    return;
  }
  const partsFirst = t.halves === null || (s.halves !== null && spanMm(s) >= spanMm(t));
  for (const half of (partsFirst ? s.halves : t.halves) ?? []) {
    if (partsFirst) lookBetween(search, half, t);
    else lookBetween(search, s, half);
  }
}

const spanMm = ({ box }: Group): number => Math.max(box.maxX - box.minX, box.maxY - box.minY);

/** Whether no two points of two groups that lie so far apart are across from one another. */
function isSameFlank(s: Group, t: Group, apartMm: number): boolean {
  if (s.loop === null || s.loop !== t.loop) return false;
  const mostMm = Math.max(s.toMm - t.fromMm, t.toMm - s.fromMm);
  const leastMm = Math.max(0, s.fromMm - t.toMm, t.fromMm - s.toMm);
  return !isAcross(Math.min(mostMm, s.loopMm - leastMm), apartMm);
}

/** Whether points so far from one another along an outline, and through the metal, are across from one another. */
const isAcross = (goneMm: number, mm: number): boolean => goneMm >= Math.max(roughMm, roundAbout * mm);

/** Keeps the thickness between two stretches where it is the least so far. */
function lookAt(search: Search, s: Stretch, t: Stretch): void {
  const { at, across, goneMm } = nearestBetween(s, t);
  const mm = distance(at, across);
  if (mm >= (search.best?.mm ?? search.reachMm)) return;
  if (s.loop === t.loop && !isAcross(Math.min(goneMm, s.loopMm - goneMm), mm)) {
    // too near along the outline at their nearest: farther off they may be across
    lookFarther(search, s, t, mm);
    return;
  }
  const middle = lerp(at, across, 0.5);
  if (mm > 0 && regionContains(search.inside, middle.x, middle.y)) search.best = { mm, at, across };
}

function lookFarther(search: Search, s: Stretch, t: Stretch, mm: number): void {
  const [sMm, tMm] = [distance(s.a, s.b), distance(t.a, t.b)];
  if (Math.max(sMm, tMm) <= shortestMm || isSameFlank(leafOf(s), leafOf(t), mm)) return;
  const longer = sMm >= tMm ? s : t;
  for (const half of [partOf(longer, 0, 0.5), partOf(longer, 0.5, 1)]) {
    if (longer === s) lookAt(search, half, t);
    else lookAt(search, s, half);
  }
}

interface Nearest {
  readonly at: Vec;
  readonly across: Vec;
  /** How far apart they are along the outline, mm. */
  readonly goneMm: number;
}

/** The nearest points of two stretches that do not cross: one of them is an end. */
function nearestBetween(s: Stretch, t: Stretch): Nearest {
  const pairs = [
    [0, fractionOn(t, s.a)],
    [1, fractionOn(t, s.b)],
    [fractionOn(s, t.a), 0],
    [fractionOn(s, t.b), 1],
  ] as const;
  let best: Nearest | null = null;
  for (const [u, v] of pairs) {
    const [at, across] = [lerp(s.a, s.b, u), lerp(t.a, t.b, v)];
    if (best !== null && distance(at, across) >= distance(best.at, best.across)) continue;
    const goneMm = Math.abs(s.aMm + (s.bMm - s.aMm) * u - (t.aMm + (t.bMm - t.aMm) * v));
    best = { at, across, goneMm };
  }
  return best as Nearest;
}

/** How far along a stretch, of 1, the point of it lies that is nearest to a place. */
function fractionOn({ a, b }: Stretch, p: Vec): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const squared = dx * dx + dy * dy;
  const t = squared === 0 ? 0 : ((p.x - a.x) * dx + (p.y - a.y) * dy) / squared;
  return Math.max(0, Math.min(1, t));
}
