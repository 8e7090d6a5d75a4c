import { arcSpans, type Edge } from '../../../src/geometry/plane/edge.ts';
import { edgesOf, type Region } from '../../../src/geometry/plane/loop.ts';
import { apply, type Rigid } from '../../../src/geometry/plane/rigid.ts';
import {
  add,
  angleOf,
  cross,
  distance,
  dot,
  polar,
  scale,
  sub,
  type Vec,
  vec,
} from '../../../src/geometry/plane/vec.ts';
import { commonNormals, edgeGap, type Gap, nearestOnEdge, placeEdge, roughGap } from './edge-gap.ts';

/** A region as a plain list of edges, for brute force. */
export interface Solid {
  readonly edges: readonly Edge[];
  /** One point of every loop. */
  readonly loopPoints: readonly Vec[];
}

export function solidOf(region: Region): Solid {
  const loops = region.map(edgesOf);
  return { edges: loops.flat(), loopPoints: loops.flatMap((edges) => edges.slice(0, 1).map((e) => e.a)) };
}

export const placeSolid = ({ edges, loopPoints }: Solid, motion: Rigid): Solid => ({
  edges: edges.map((e) => placeEdge(e, (p) => apply(motion, p), motion.turnRad)),
  loopPoints: loopPoints.map((p) => apply(motion, p)),
});

// three directions that no drawing is made in; two of three decide, lest one ray runs through a vertex
const rays = [0.6127, 2.3411, 4.7713].map((angle) => polar(vec(0, 0), 1, angle));

/** Whether a point lies in the solid, by counting what three rays cross; on the outline either answer may come. */
export const contains = (solid: Solid, p: Vec): boolean =>
  rays.filter((ray) => solid.edges.reduce((count, edge) => count + crossed(edge, p, ray), 0) % 2 === 1).length >= 2;

function crossed(edge: Edge, p: Vec, ray: Vec): number {
  if (edge.kind === 'line') {
    const a = sub(edge.a, p);
    const b = sub(edge.b, p);
    const aSide = cross(ray, a);
    const bSide = cross(ray, b);
    if (aSide > 0 === bSide > 0) return 0;
    return dot(a, ray) + ((dot(b, ray) - dot(a, ray)) * aSide) / (aSide - bSide) > 0 ? 1 : 0;
  }
  const c = sub(edge.centre, p);
  const off = cross(ray, c);
  if (Math.abs(off) >= edge.radius) return 0;
  const half = Math.sqrt(edge.radius ** 2 - off ** 2);
  const reaches = [dot(c, ray) - half, dot(c, ray) + half].filter((s) => s > 0);
  return reaches.filter((s) => arcSpans(edge, angleOf(sub(add(p, scale(ray, s)), edge.centre)))).length;
}

export const boundaryDistance = (solid: Solid, p: Vec): number => distance(p, nearestOnOutline(solid, p));

function nearestOnOutline({ edges }: Solid, p: Vec): Vec {
  let best = vec(Number.POSITIVE_INFINITY, 0);
  for (const edge of edges) {
    const q = nearestOnEdge(edge, p);
    if (distance(p, q) < distance(p, best)) best = q;
  }
  return best;
}

/** The least distance between two outlines, whatever lies inside what. */
export function outlineGap(fixed: Solid, moving: Solid): Gap {
  let best: Gap = { mm: Number.POSITIVE_INFINITY, p: vec(0, 0), q: vec(0, 0) };
  for (const f of fixed.edges) {
    for (const m of moving.edges) {
      // a hair of slack, for discs round as well
      if (roughGap(f, m) > best.mm + 1e-9) continue;
      const gap = edgeGap(f, m);
      if (gap.mm < best.mm) best = gap;
    }
  }
  return best;
}

/** Whether one solid holds a point of a loop of the other: with outlines apart, whether the solids overlap. */
export const nested = (fixed: Solid, moving: Solid): boolean =>
  moving.loopPoints.some((p) => contains(fixed, p)) || fixed.loopPoints.some((p) => contains(moving, p));

/** The least distance between two solids, 0 where they overlap. */
export function solidDistance(fixed: Solid, moving: Solid): number {
  const { mm } = outlineGap(fixed, moving);
  return mm > 0 && nested(fixed, moving) ? 0 : mm;
}

/**
 * The depth of a point that lies about as deep as any in both solids at once, and 0 when they share no ground: begun
 * where one outline reaches deepest into the other solid, then bettered by smaller and smaller steps.
 */
export function sharedDepth(fixed: Solid, moving: Solid): number {
  const { p, q } = deepestReach(fixed, moving);
  const depthAt = (x: Vec): number => Math.min(depthIn(fixed, x), depthIn(moving, x));
  let best = scale(add(p, q), 0.5);
  let depth = depthAt(best);
  for (let step = distance(p, q) / 2; step > distance(p, q) / 500; step /= 2) {
    for (const x of rays.concat(rays.map((ray) => scale(ray, -1))).map((ray) => add(best, scale(ray, step)))) {
      const there = depthAt(x);
      if (there > depth) [best, depth] = [x, there];
    }
  }
  return Math.max(0, depth);
}

/** How far inside a point lies; negative outside. */
const depthIn = (solid: Solid, p: Vec): number => (contains(solid, p) ? 1 : -1) * boundaryDistance(solid, p);

/**
 * Where an outline reaches deepest into the other solid, and the place on that one's outline it is nearest to: tried
 * at vertices, edges' middles and wherever two edges face one another squarely, as they do across a shallow overlap.
 */
function deepestReach(fixed: Solid, moving: Solid): Gap {
  let deepest: Gap = { mm: 0, p: vec(0, 0), q: vec(0, 0) };
  const tryPoint = (solid: Solid, p: Vec): void => {
    const q = nearestOnOutline(solid, p);
    const mm = distance(p, q);
    if (mm > deepest.mm && contains(solid, p)) deepest = { mm, p, q };
  };
  for (const f of fixed.edges) for (const p of ownPoints(f)) tryPoint(moving, p);
  for (const m of moving.edges) for (const p of ownPoints(m)) tryPoint(fixed, p);
  for (const f of fixed.edges) {
    for (const m of moving.edges) {
      for (const [p, q] of commonNormals(f, m)) {
        tryPoint(moving, p);
        tryPoint(fixed, q);
      }
    }
  }
  return deepest;
}

const ownPoints = (edge: Edge): Vec[] => [
  edge.a,
  edge.kind === 'line'
    ? scale(add(edge.a, edge.b), 0.5)
    : polar(edge.centre, edge.radius, edge.startRad + edge.sweepRad / 2),
];
