import { cornerSlackMm } from '../../geometry/cutting/corner-relief.ts';
import { arcToleranceOf } from '../../geometry/cutting/tolerances.ts';
import type { Box } from '../../geometry/plane/edge-box.ts';
import { offset } from '../../geometry/polygons/offset.ts';
import { difference, intersection, pieces, union } from '../../geometry/polygons/polygon-engine.ts';
import { outlinesOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import { boxRound, rectangle, solidNear } from '../../geometry/polygons/solid-near.ts';
import type { DepthRange } from '../../job/casting.ts';
import type { Cutter } from '../../job/job.ts';
import { commonDepth, gapMm, rangesBetween } from '../bands/depth-ranges.ts';
import type { MetalLayer } from '../bands/layers.ts';

/** The nose of a cutter, as wide as this at `mm` from its widest place along the crank; null beyond it. */
type Nose = (mm: number) => number | null;

/** So much smaller a cutter is taken, mm, that arcs drawn by its own radius are open to it. */
const hairMm = 2e-3;

/** Of the depth in which a ball's width changes, it is looked at in so many steps, finer where it changes faster. */
const steps = 6;

/** Where many layers end near one another those steps are fewer, until there are no more ranges of depth than these. */
const mostHeights = 32;

/** A ball of the cutter's radius, or a disc of it where the nose is flat. */
function noseOf({ nose, radiusMm }: Pick<Cutter, 'nose' | 'radiusMm'>): Nose {
  const r = radiusMm - hairMm;
  return nose === 'flat' ? (mm) => (mm < leastStepMm ? r : null) : (mm) => (mm < r ? Math.sqrt(r * r - mm * mm) : null);
}

/** What stands about a piece of a cut, within a cutter's diameter of it in the plane. */
export interface Standing {
  /** The metal that the cut leaves beside it, taken to stand at every depth. */
  readonly beside: Polygons;
  /** Metal beyond that, which bars the cutter where it stands. */
  readonly barring: readonly MetalLayer[];
}

/**
 * What a cutter cannot take of one piece of a cut without touching metal that stays: it is moved wherever its body
 * keeps clear of that, depth by depth. Never too little: widths are those at the worse end of every step of depth, and
 * rounding is on the side of more metal left. What is told ends at the depths `alsoAt` too. Where nothing bars it the cutter gets at all: the cut is shaped for that.
 */
export function* unreached(
  piece: Polygons,
  depth: DepthRange,
  standing: Standing,
  cutter: Pick<Cutter, 'nose' | 'radiusMm'>,
  alsoAt: readonly number[] = [],
): Generator<void, MetalLayer[]> {
  const { barring } = standing;
  const nose = noseOf(cutter);
  const reachMm = cutter.nose === 'flat' ? 0 : cutter.radiusMm;
  const heights = heightsOf(depth, barring, reachMm, alsoAt);
  const search: ReachSearch = {
    heights,
    nose,
    standing,
    widthsAt: (height) => barring.map((layer) => nose(gapMm(height, layer.depth)) ?? 0),
    roomAt: roomsFor(piece, standing, nose, cutter.radiusMm),
    arcMm: arcToleranceOf(cutter.radiusMm),
    slackMm: cornerSlackMm(cutter.radiusMm) + 2 * arcToleranceOf(cutter.radiusMm),
  };
  const looked = heights.filter(
    (height) =>
      commonDepth(height, depth) !== null && barring.some((layer) => nose(gapMm(height, layer.depth)) !== null),
  );
  return yield* leftIn(piece, looked, search);
}

/** What is left over several depths: none if the cutter gets at all from where it is barred at none, else half by half. */
function* leftIn(piece: Polygons, depths: readonly DepthRange[], search: ReachSearch): Generator<void, MetalLayer[]> {
  const [first, last] = [depths[0], depths.at(-1)];
  if (first === undefined || last === undefined) return [];
  if (first === last) {
    const metal = yield* leftAt(piece, first, search);
    return metal.length === 0 ? [] : [{ depth: first, metal }];
  }
  if (yield* isReached(piece, { fromMm: first.fromMm, toMm: last.toMm }, search)) return [];
  const half = depths.length >> 1;
  return [
    ...(yield* leftIn(piece, depths.slice(0, half), search)),
    ...(yield* leftIn(piece, depths.slice(half), search)),
  ];
}

/** Whether the cutter gets at all of a piece from where it is barred nowhere in a range of depth. */
function* isReached(
  piece: Polygons,
  depth: DepthRange,
  { nose, standing, roomAt, arcMm, slackMm }: ReachSearch,
): Generator<void, boolean> {
  const widthMm = nose(0) ?? 0;
  yield;
  const room = solidNear(roomAt(depth), boxRound(piece, widthMm));
  if (room.length === 0) return false;
  yield;
  const reached = offset(outlinesOf(room), widthMm, arcMm, 'inside').polygons;
  yield;
  return standingOut(difference(piece, reached), standing.beside, slackMm).length === 0;
}

/** Where the middle of the cutter may be, its widest place anywhere in a range of depth; the same one for the same room. */
function roomsFor(
  piece: Polygons,
  { beside, barring }: Standing,
  nose: Nose,
  radiusMm: number,
): (height: DepthRange) => Polygons {
  const arcMm = arcToleranceOf(radiusMm);
  const frame = rectangle(boxRound(piece, radiusMm));
  const widened = new Map<MetalLayer, Map<number, Polygons>>();
  const widenedBy = (layer: MetalLayer, byMm: number): Polygons => {
    const known = widened.get(layer) ?? new Map<number, Polygons>();
    widened.set(layer, known);
    const made = known.get(byMm) ?? offset(outlinesOf(layer.metal), byMm, arcMm, 'outside').polygons;
    known.set(byMm, made);
    return made;
  };
  const open = difference([frame], offset(outlinesOf(beside), nose(0) ?? 0, arcMm, 'outside').polygons);
  const rooms = new Map<string, Polygons>([['', open]]);
  return (height) => {
    const widthsMm = barring.map((layer) => nose(gapMm(height, layer.depth)));
    const key = widthsMm.every((mm) => mm === null) ? '' : widthsMm.join();
    const known = rooms.get(key);
    if (known !== undefined) return known;
    const blocked = barring.flatMap((layer, i) => {
      const widthMm = widthsMm[i] ?? null;
      return widthMm === null ? [] : widenedBy(layer, widthMm);
    });
    const room = difference(open, union(blocked));
    rooms.set(key, room);
    return room;
  };
}

interface ReachSearch {
  readonly heights: readonly DepthRange[];
  readonly nose: Nose;
  readonly standing: Standing;
  readonly roomAt: (height: DepthRange) => Polygons;
  /** By how much each layer of barring metal keeps the middle of the cutter off there, mm. */
  readonly widthsAt: (height: DepthRange) => readonly number[];
  /** How far arcs may be off. */
  readonly arcMm: number;
  /** What lies this near to metal that stays is a film, mm: twice what arcs may be off, and what a corner may keep. */
  readonly slackMm: number;
}

function* leftAt(
  piece: Polygons,
  depth: DepthRange,
  { heights, nose, standing, roomAt, widthsAt, arcMm, slackMm }: ReachSearch,
): Generator<void, Polygons> {
  const { beside, barring } = standing;
  const from = heights
    .map((height) => ({ height, offMm: Math.max(0, height.fromMm - depth.fromMm, depth.toMm - height.toMm) }))
    .sort((a, b) => a.offMm - b.offMm);
  const here = barring.filter((layer) => commonDepth(layer.depth, depth) !== null).flatMap(({ metal }) => metal);
  const stays = here.length === 0 ? beside : union([...beside, ...here]);
  const barred: (readonly number[])[] = [];
  let left = piece;
  for (const { height, offMm } of from) {
    const widthMm = nose(offMm);
    if (widthMm === null || left.length === 0) break;
    // nearer by the nose is wider: from where all metal keeps it off as far or farther it gets at nothing new
    const widthsMm = widthsAt(height);
    if (barred.some((nearer) => nearer.every((mm, i) => mm <= (widthsMm[i] as number)))) continue;
    barred.push(widthsMm);
    yield;
    const whole = roomAt(height);
    const room = solidNear(whole, boxRound(left, widthMm));
    if (room.length === 0) continue;
    yield;
    const reached = offset(outlinesOf(room), widthMm, arcMm, 'inside').polygons;
    yield;
    const rest = difference(left, reached);
    // most films are left by the first, and go at once; of the others each piece need be looked at but once
    left = barred.length === 1 ? standingOut(rest, stays, slackMm) : rest;
  }
  return standingOut(left, stays, slackMm);
}

/** The pieces that stand out from metal that stays by more than arcs and the grid leave along it. */
function standingOut(left: Polygons, stays: Polygons, slackMm: number): Polygons {
  return pieces(left)
    .filter((piece) => {
      const near = solidNear(stays, boxRound(piece, 2 * slackMm));
      if (near.length === 0) return offset(outlinesOf(piece), -slackMm / 2, slackMm, 'inside').polygons.length > 0;
      return difference(piece, offset(outlinesOf(near), slackMm, slackMm / 10, 'inside').polygons).length > 0;
    })
    .flat();
}

/**
 * The depths between which nothing changes but the width of the nose, and that in small steps: larger ones leave more
 * metal, never less.
 */
function heightsOf(
  depth: DepthRange,
  barring: readonly MetalLayer[],
  reachMm: number,
  alsoAt: readonly number[],
  inSteps = steps,
): DepthRange[] {
  const [least, most] = [depth.fromMm - reachMm, depth.toMm + reachMm];
  const barred = barring.flatMap((layer) => [layer.depth.fromMm, layer.depth.toMm]);
  const stops = [least, depth.fromMm, ...alsoAt, ...barred, depth.toMm, most].filter((mm) => mm >= least && mm <= most);
  for (const mm of barred) {
    for (let i = reachMm === 0 ? inSteps + 1 : -inSteps; i <= inSteps; i++) {
      const stop = mm + Math.sign(i) * (i / inSteps) ** 2 * reachMm;
      // ends are kept to the last bit, so that no step reaches a hair into the next layer
      if (stop > least && stop < most && stops.every((other) => Math.abs(other - stop) > leastStepMm)) stops.push(stop);
    }
  }
  const heights = rangesBetween(stops);
  return heights.length > mostHeights && inSteps > 1
    ? heightsOf(depth, barring, reachMm, alsoAt, inSteps - 1)
    : heights;
}

const leastStepMm = 1e-6;

/** What of some metal lies in a box. */
export const within = (metal: Polygons, box: Box): Polygons => intersection(metal, [rectangle(box)]);
