import { add, cross, distance, dot, lerp, scale, sub, type Vec, vec } from '../../../src/geometry/plane/vec.ts';
import type { Fit } from '../../../src/job/job.ts';
import type { Complaint } from './complaint.ts';
import type { GeosPlane, Shape } from './geos-plane.ts';
import { middleOf } from './judge-forbidden.ts';
import type { CutPart } from './judge-room.ts';
import type { Layer } from './layered-solid.ts';

/** Metal less wide than twice this is a film along an edge. */
const filmMm = 0.05;

/** A ledge counts where it is as wide as it is thick, give or take the judge's own chords. */
const halfWideMm = (thickMm: number): number => Math.max(filmMm, 0.5 * thickMm - 0.01);

/** Walls may be thinner than asked by so much: chords, and the plan's bound. */
const wallSlackMm = 0.02;

/** Faces this nearly opposite lie across from one another: within some 18°. */
const opposite = -0.95;

/** And it must be so many times as far along the outline as through the metal, and this much more, mm. */
const timesAlong = 3;
const moreAlongMm = 1;

/** Floors and webs that a cut leaves thinner than the least wall. */
export function thinComplaints(geos: GeosPlane, part: CutPart, { minWallMm }: Fit): Complaint[] {
  if (minWallMm === null) return [];
  return [...thinFloors(geos, part, minWallMm), ...thinWebs(geos, part, minWallMm)];
}

/** Metal left beyond the end of a cut, as far as it goes on without a break toward the back or the face. */
function thinFloors(geos: GeosPlane, { part, layers }: CutPart, minWallMm: number): Complaint[] {
  return layers.flatMap((layer, i) =>
    geos.isEmpty(layer.planned)
      ? []
      : [
          ...floorFrom(geos, layer, layers.slice(i + 1), minWallMm, (l) => [l.fromMm, l.toMm]),
          ...floorFrom(geos, layer, layers.slice(0, i).reverse(), minWallMm, (l) => [-l.toMm, -l.fromMm]),
        ].map((floor) => ({ ...floor, part })),
  );
}

function floorFrom(
  geos: GeosPlane,
  layer: Layer,
  beyond: readonly Layer[],
  minWallMm: number,
  along: (layer: Layer) => readonly [near: number, far: number],
): Omit<Complaint, 'part'>[] {
  const [, end] = along(layer);
  let floor = layer.planned;
  let reached = end;
  for (const next of beyond) {
    const [near, far] = along(next);
    if (near > reached + 1e-9 || reached - end >= minWallMm - wallSlackMm) break;
    const ends = reached > end ? geos.buffer(geos.difference(floor, next.stay), -halfWideMm(reached - end), 4) : null;
    const [at] = ends === null ? [] : geos.rings(ends).flat();
    if (at !== undefined) return [thinFloor(layer, at, reached - end, minWallMm)];
    floor = geos.intersection(floor, next.stay);
    reached = far;
    if (geos.isEmpty(floor)) return [];
  }
  const [at] =
    reached > end && reached - end < minWallMm - wallSlackMm
      ? geos.rings(geos.buffer(floor, -halfWideMm(reached - end), 4)).flat()
      : [];
  return at === undefined ? [] : [thinFloor(layer, at, reached - end, minWallMm)];
}

const thinFloor = (layer: Layer, { x, y }: Vec, mm: number, askedMm: number): Omit<Complaint, 'part'> => ({
  what: 'thin-floor',
  of: layer.sections.map(({ section }) => section.id).join(),
  where: [x, y],
  depthMm: middleOf(layer),
  mm,
  askedMm,
});

interface Side {
  readonly a: Vec;
  readonly b: Vec;
  /** Which ring it belongs to, how far along it begins, and how long the ring is, mm. */
  readonly ring: number;
  readonly alongMm: number;
  readonly ringMm: number;
  /** Square to it, into the metal. */
  readonly inward: Vec;
}

/** Metal left beside a cut at one depth, to whatever face lies across from it. */
function thinWebs(geos: GeosPlane, { part, layers }: CutPart, minWallMm: number): Complaint[] {
  return layers.flatMap((layer) => {
    if (geos.isEmpty(layer.planned)) return [];
    const sides = sidesOf(geos, layer.stay);
    const old = sidesOf(geos, layer.metal);
    const found = sides.flatMap((side) => pointsAlong(side, minWallMm / 4).map((p) => ({ side, p })));
    return found.flatMap(({ side, p }): Complaint[] => {
      if (old.some((other) => distance(p, nearestOn(other, p)) < 0.01)) return [];
      const mm = throughMm(p, side, sides, minWallMm - wallSlackMm);
      if (mm === null) return [];
      const of = layer.sections.map(({ section }) => section.id).join();
      return [{ what: 'thin-web', part, of, where: [p.x, p.y], depthMm: middleOf(layer), mm, askedMm: minWallMm }];
    });
  });
}

/** How far it is through the metal to a face that lies across; null where that is farther than asked, or none does. */
function throughMm(p: Vec, from: Side, sides: readonly Side[], askedMm: number): number | null {
  const { inward } = from;
  let least: { mm: number; side: Side } | null = null;
  for (const side of sides) {
    const way = sub(side.b, side.a);
    const turn = cross(inward, way);
    if (Math.abs(turn) < 1e-12) continue;
    const mm = cross(sub(side.a, p), way) / turn;
    const along = cross(sub(side.a, p), inward) / turn;
    if (along >= 0 && along <= 1 && mm > 1e-4 && mm < (least?.mm ?? askedMm)) least = { mm, side };
  }
  if (least === null || least.mm <= filmMm || dot(least.side.inward, inward) >= opposite) return null;
  const goneMm = alongMm(from, p, least.side, add(p, scale(inward, least.mm)));
  return goneMm >= timesAlong * least.mm + moreAlongMm ? least.mm : null;
}

/** How far apart two points of an outline are along it, the shorter way; endless between two rings. */
function alongMm(s: Side, p: Vec, t: Side, q: Vec): number {
  if (s.ring !== t.ring) return Number.POSITIVE_INFINITY;
  const gone = Math.abs(s.alongMm + distance(s.a, p) - t.alongMm - distance(t.a, q));
  return Math.min(gone, s.ringMm - gone);
}

const pointsAlong = ({ a, b }: Side, stepMm: number): Vec[] => {
  const count = Math.max(1, Math.ceil(distance(a, b) / stepMm));
  return Array.from({ length: count }, (_, i) => lerp(a, b, (i + 0.5) / count));
};

/** The edges of a shape, each knowing where its metal is. */
function sidesOf(geos: GeosPlane, shape: Shape): Side[] {
  return geos.rings(shape).flatMap((ring, i, all) => {
    // an outer ring has its metal on the inside; GEOS runs inner rings the other way
    const left = signedArea(ring) > 0 === isOuter(ring, i, all);
    const ringMm = ring.reduce((sum, a, j) => sum + distance(a, ring[(j + 1) % ring.length] as Vec), 0);
    let gone = 0;
    return ring.flatMap((a, j) => {
      const b = ring[(j + 1) % ring.length] as Vec;
      const way = sub(b, a);
      const mm = distance(a, b);
      const alongMm = gone;
      gone += mm;
      if (mm < 1e-9) return [];
      const inward = scale(left ? vec(-way.y, way.x) : vec(way.y, -way.x), 1 / mm);
      return [{ a, b, ring: i, alongMm, ringMm, inward }];
    });
  });
}

/** Whether a ring lies in an even number of the others. */
function isOuter(ring: readonly Vec[], own: number, all: readonly (readonly Vec[])[]): boolean {
  const [a, b] = ring as [Vec, Vec];
  const middle = add(a, scale(sub(b, a), 0.5));
  return all.filter((other, i) => i !== own && holds(other, middle)).length % 2 === 0;
}

const holds = (ring: readonly Vec[], { x, y }: Vec): boolean =>
  ring.filter((a, i) => {
    const b = ring[(i + 1) % ring.length] as Vec;
    return a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x);
  }).length %
    2 ===
  1;

const signedArea = (ring: readonly Vec[]): number =>
  ring.reduce((sum, a, i) => sum + cross(a, ring[(i + 1) % ring.length] as Vec), 0) / 2;

function nearestOn({ a, b }: Side, p: Vec): Vec {
  const way = sub(b, a);
  return lerp(a, b, Math.min(1, Math.max(0, dot(sub(p, a), way) / dot(way, way))));
}
