import type { Box } from '../geometry/plane/edge-box.ts';
import { polar, type Vec, vec } from '../geometry/plane/vec.ts';
import { intersection, pieces } from '../geometry/polygons/polygon-engine.ts';
import type { Polygons } from '../geometry/polygons/polygons.ts';
import type { Bench, BenchBand } from './marking-out-bench.ts';
import { groundDown } from './marking-out-bosses.ts';
import {
  type BridgeHindrance,
  boxOf,
  type Hindering,
  hinderingOf,
  rectangleOf,
  thinMm,
} from './marking-out-hindering.ts';
import { plyMm } from './marking-out-plate.ts';

/** From one end to the other along a line, mm. */
export interface Span {
  readonly fromMm: number;
  readonly toMm: number;
}

/**
 * A piece of ply that stands on the face astride a boss: on its two feet once the boss is ground down. Lengths along it
 * are from `middle`.
 */
export interface Bridge {
  /** What is ground off, and how high it may still stand: the height of the notch. */
  readonly boss: Polygons;
  readonly standsMm: number;
  readonly middle: Vec;
  /** From its left foot to its right one, as the bench is seen from its front. */
  readonly alongRad: number;
  readonly left: Span;
  readonly right: Span;
  /** How far it is moved over the boss, square to itself. */
  readonly moved: Span;
}

/** Of each boss that a band grinds down: its bridge, or what hinders it. */
export type BridgeReading = { readonly bridge: Bridge } | { readonly hindrances: readonly BridgeHindrance[] };

/** How wide a foot is, and how far from the boss, mm. */
const footMm = 12;
const clearMm = 2;
const reachMm = 45;
/** The ways it may stand across a boss. */
const ways = 12;

export const bridgesOf = (bench: Bench, band: BenchBand): BridgeReading[] => {
  const bosses = groundDown(bench, band);
  if (bosses.length === 0) return [];
  const standsMm = Math.max(0, -(band.depth?.toMm ?? 0));
  const hindering = hinderingOf(bench, bosses, standsMm);
  return bosses.map((boss) => bridgeOver(boss, standsMm, hindering));
};

/** The narrowest bridge that can sit; where none can, what hinders the one that would be narrowest. */
function bridgeOver(boss: Polygons, standsMm: number, hindering: readonly Hindering[]): BridgeReading {
  const found = Array.from({ length: ways }, (_, i) => standing(boss, standsMm, hindering, (i * Math.PI) / ways));
  const bridges = found.flatMap((one) => ('bridge' in one ? [one.bridge] : []));
  const [best] = bridges.toSorted((a, b) => widthMm(a) - widthMm(b));
  if (best !== undefined) return { bridge: best };
  const [nearest] = found.flatMap((one) => ('hindrances' in one ? [one] : [])).toSorted((a, b) => a.overMm - b.overMm);
  return { hindrances: nearest?.hindrances ?? [] };
}

/** A hair aside, so that of two ways alike the first is taken on any machine. */
const widthMm = ({ left, right }: Bridge): number => Math.round(1e3 * (right.toMm - left.fromMm));

type Stood = { readonly bridge: Bridge } | { readonly hindrances: readonly BridgeHindrance[]; readonly overMm: number };

function standing(boss: Polygons, standsMm: number, hindering: readonly Hindering[], alongRad: number): Stood {
  const { minX, maxX, minY, maxY } = boxOf(boss);
  const middle = vec((minX + maxX) / 2, (minY + maxY) / 2);
  const own = boxOf(turned(boss, middle, alongRad));
  const moved = movedOver(own);
  const strip = rectangleOf(own.minX - clearMm - reachMm, moved.fromMm, own.maxX + clearMm + reachMm, moved.toMm);
  const inStrip = hindering.flatMap(({ why, at, ofNotch }) =>
    pieces(intersection(turned(at, middle, alongRad), strip)).flatMap((piece) => {
      const met = boxOf(piece);
      if (Math.min(met.maxX - met.minX, met.maxY - met.minY) < thinMm) return [];
      return [{ why, ofNotch, fromMm: met.minX, toMm: met.maxX }];
    }),
  );
  // the stump of the boss and what stands beside it no higher pass under the notch
  const right = footBeyond(own.maxX + clearMm, inStrip);
  const mirrored = inStrip.map(({ fromMm, toMm, ...rest }) => ({ ...rest, fromMm: -toMm, toMm: -fromMm }));
  const other = footBeyond(-own.minX + clearMm, mirrored);
  const left = other && { fromMm: -other.toMm, toMm: -other.fromMm };
  const high = (from: number, to: number) =>
    inStrip.filter(({ ofNotch, fromMm, toMm }) => ofNotch && fromMm < to && toMm > from);
  if (left !== null && right !== null && high(left.toMm, right.fromMm).length === 0) {
    return { bridge: { boss, standsMm, middle, alongRad, left, right, moved } };
  }
  const near = [
    ...high(own.minX, own.maxX),
    ...(right === null ? under(own.maxX + clearMm, inStrip) : []),
    ...(left === null ? under(-own.minX + clearMm, mirrored) : []),
    ...high(left?.toMm ?? own.minX, right?.fromMm ?? own.maxX),
  ];
  const named = new Map(near.map(({ why }) => [JSON.stringify(why), why]));
  return { hindrances: [...named.values()], overMm: Math.round(1e3 * (own.maxX - own.minX)) };
}

type InStrip = Span & Pick<Hindering, 'why' | 'ofNotch'>;

/** The first room for a foot at or past a place. */
function footBeyond(fromMm: number, inStrip: readonly InStrip[]): Span | null {
  let at = fromMm;
  for (const one of inStrip.toSorted((a, b) => a.fromMm - b.fromMm)) {
    if (one.toMm <= at) continue;
    if (one.fromMm >= at + footMm) break;
    at = one.toMm;
  }
  return at + footMm > fromMm + reachMm ? null : { fromMm: at, toMm: at + footMm };
}

/** What lies under a foot as near to the boss as it can be. */
const under = (fromMm: number, inStrip: readonly InStrip[]): InStrip[] =>
  inStrip.filter((one) => one.fromMm < fromMm + footMm && one.toMm > fromMm);

/** With its thickness it stays over the boss. */
function movedOver({ minY, maxY }: Box): Span {
  const half = Math.max(maxY - minY - 2 * thinMm, plyMm) / 2;
  const middle = (minY + maxY) / 2;
  return { fromMm: middle - half, toMm: middle + half };
}

/** Laid so that the bridge stands along x, its middle at the origin. */
function turned(polygons: Polygons, middle: Vec, alongRad: number): Polygons {
  const { x: c, y: s } = polar(vec(0, 0), 1, alongRad);
  return polygons.map((polygon) =>
    polygon.map(({ x, y }) => {
      const [dx, dy] = [x - middle.x, y - middle.y];
      return vec(c * dx + s * dy, c * dy - s * dx);
    }),
  );
}

/** A place on the bench that lies so far along a bridge, and so far square to it. */
export function besideBridge({ middle, alongRad }: Bridge, alongMm: number, asideMm: number): Vec {
  const { x: c, y: s } = polar(vec(0, 0), 1, alongRad);
  return vec(middle.x + c * alongMm - s * asideMm, middle.y + s * alongMm + c * asideMm);
}

/** How high a bridge stands over its notch, mm: enough for its name, and not to bend. */
const spineMm = 20;

/** The ply as one sees it from its front, the face at y = 0. */
export function bridgeOutline({ left, right, standsMm }: Bridge): Polygons {
  const topMm = standsMm + spineMm;
  const notch =
    standsMm < thinMm
      ? []
      : [vec(left.toMm, 0), vec(left.toMm, standsMm), vec(right.fromMm, standsMm), vec(right.fromMm, 0)];
  return [[vec(left.fromMm, 0), ...notch, vec(right.toMm, 0), vec(right.toMm, topMm), vec(left.fromMm, topMm)]];
}
