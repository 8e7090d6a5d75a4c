import { treeOf } from '../clearance/trees.ts';
import { regionContains } from '../geometry/motion/containment.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { buildOutlineTree, type OutlineTree } from '../geometry/motion/outline-tree.ts';
import { difference } from '../geometry/polygon-engine.ts';
import { polygonise } from '../geometry/polygonise.ts';
import { loopsOf, type Polygon, type Polygons } from '../geometry/polygons.ts';
import { round6, roundPoint6 } from '../geometry/rounding.ts';
import { distance, lerp, type Vec } from '../geometry/vec.ts';
import type { ThinPlace } from '../model/grind-answer.ts';
import type { Fit } from '../model/job.ts';
import type { SectionCut } from './layers.ts';
import { handErrorOf } from './walls.ts';

/** An edge of what is left lies on the outline as it was where its middle is this near to it. */
const onOutlineMm = 2.5e-3;

/** Arcs of the outline keep within this, on the side of less metal. */
const arcToleranceMm = 1e-3;

/** Edges are looked at in stretches no longer than this. */
const stretchMm = 2;

/**
 * What lies across the metal is at least so many times farther along the outline than through the metal; what is nearer
 * along it is the same flank, or a corner wider than 39°.
 */
const roundAbout = 3;

/** So much more than twice the least wall is thick enough not to be spoken of, mm. */
const inReachMm = 5;

/**
 * Where a cut leaves the part thinner than the fit's least wall, or nearest to it: in each section and band the least
 * distance through metal from the new edge to the outline as it was across from it. None where no least wall is set.
 */
export function thinPlaces(cuts: readonly SectionCut[], fit: Fit): ThinPlace[] {
  const keepMm = fit.minWallMm;
  if (keepMm === null) return [];
  return cuts.flatMap(({ section, bands }) => {
    const metal = polygonise(section.loops, arcToleranceMm, 'inside');
    const outline = treeOf(section.loops);
    return bands.flatMap(({ depth, last, planned }): ThinPlace[] => {
      const reachMm = 2 * keepMm + inReachMm;
      const atWorst = thinnest(difference(metal, last), outline, reachMm);
      const nominal = atWorst && thinnest(difference(metal, planned), outline, reachMm + atWorst.mm);
      if (atWorst === null || nominal === null) return [];
      const wallMm = atWorst.mm - section.traceErrorMm - handErrorOf(fit);
      return [
        {
          section: section.id,
          depth: depth && [round6(depth.fromMm), round6(depth.toMm)],
          wallMm: round6(wallMm),
          nominalMm: round6(nominal.mm),
          keepMm: round6(keepMm),
          at: roundPoint6(atWorst.at),
          across: roundPoint6(atWorst.across),
          holds: wallMm >= keepMm - 1e-3,
        },
      ];
    });
  });
}

interface Thickness {
  readonly mm: number;
  readonly at: Vec;
  readonly across: Vec;
}

/** A stretch of an outline, and how far along its loop it begins. */
interface Stretch {
  readonly a: Vec;
  readonly b: Vec;
  readonly loop: number;
  readonly loopMm: number;
  readonly alongMm: number;
}

/** The least thickness of what is left at its new edges; null where nothing old faces them within reach. */
export function thinnest(left: Polygons, outline: OutlineTree, reachMm: number): Thickness | null {
  const stretches = left.flatMap(stretchesOf);
  const isOld = stretches.map(({ a, b }) => nearestOnOutline(outline, lerp(a, b, 0.5)).distanceMm < onOutlineMm);
  const cut = stretches.filter((_, i) => !isOld[i]);
  const old = stretches.filter((_, i) => isOld[i]).sort((s, t) => leftOf(s) - leftOf(t));
  const inside = buildOutlineTree(loopsOf(left));
  // flat, for these are gone through for every new edge
  const lefts = Float64Array.from(old, leftOf);
  const bottoms = Float64Array.from(old, ({ a, b }) => Math.min(a.y, b.y));
  const tops = Float64Array.from(old, ({ a, b }) => Math.max(a.y, b.y));
  let best: Thickness | null = null;
  for (const s of cut) {
    const within = best?.mm ?? reachMm;
    const [from, to] = [leftOf(s) - stretchMm - within, Math.max(s.a.x, s.b.x) + within];
    const [bottom, top] = [Math.min(s.a.y, s.b.y) - within, Math.max(s.a.y, s.b.y) + within];
    for (let i = firstFrom(lefts, from); i < old.length && (lefts[i] as number) <= to; i++) {
      if ((bottoms[i] as number) >= top || (tops[i] as number) <= bottom) continue;
      const found = thicknessBetween(s, old[i] as Stretch, best?.mm ?? reachMm, inside);
      if (found !== null) best = found;
    }
  }
  return best;
}

const leftOf = ({ a, b }: Stretch): number => Math.min(a.x, b.x);

/** The first of the numbers, in order, that is no less than `x`. */
function firstFrom(sorted: Float64Array, x: number): number {
  let [from, to] = [0, sorted.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((sorted[middle] as number) < x) from = middle + 1;
    else to = middle;
  }
  return from;
}

function stretchesOf(polygon: Polygon, loop: number): Stretch[] {
  const edges = polygon.map((a, i) => [a, polygon[(i + 1) % polygon.length] as Vec] as const);
  const loopMm = edges.reduce((sum, [a, b]) => sum + distance(a, b), 0);
  let alongMm = 0;
  return edges.flatMap(([a, b]) => {
    const count = Math.max(1, Math.ceil(distance(a, b) / stretchMm));
    const from = alongMm;
    alongMm += distance(a, b);
    return Array.from({ length: count }, (_, i) => ({
      a: lerp(a, b, i / count),
      b: lerp(a, b, (i + 1) / count),
      loop,
      loopMm,
      alongMm: from + (distance(a, b) * i) / count,
    }));
  });
}

/** The thickness of metal between two stretches where it is less than `within` and they lie across from each other. */
function thicknessBetween(s: Stretch, t: Stretch, within: number, inside: OutlineTree): Thickness | null {
  const { at, across } = nearestBetween(s, t);
  const mm = distance(at, across);
  if (mm >= within || mm === 0) return null;
  if (s.loop === t.loop) {
    const gone = Math.abs(s.alongMm + distance(s.a, at) - (t.alongMm + distance(t.a, across)));
    if (Math.min(gone, s.loopMm - gone) < roundAbout * mm) return null;
  }
  const middle = lerp(at, across, 0.5);
  return regionContains(inside, middle.x, middle.y) ? { mm, at, across } : null;
}

/** The nearest points of two stretches that do not cross: one of them is an end. */
function nearestBetween(s: Stretch, t: Stretch): { at: Vec; across: Vec } {
  const pairs = [
    { at: s.a, across: nearestOn(t, s.a) },
    { at: s.b, across: nearestOn(t, s.b) },
    { at: nearestOn(s, t.a), across: t.a },
    { at: nearestOn(s, t.b), across: t.b },
  ];
  return pairs.reduce((p, q) => (distance(p.at, p.across) <= distance(q.at, q.across) ? p : q));
}

function nearestOn({ a, b }: Stretch, p: Vec): Vec {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const squared = dx * dx + dy * dy;
  const t = squared === 0 ? 0 : ((p.x - a.x) * dx + (p.y - a.y) * dy) / squared;
  return lerp(a, b, Math.max(0, Math.min(1, t)));
}
