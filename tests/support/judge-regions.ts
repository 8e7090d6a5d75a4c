import { regionContains } from '../../src/geometry/motion/containment.ts';
import { motionAt } from '../../src/geometry/motion/motion.ts';
import { nearestOnOutline } from '../../src/geometry/motion/nearest-point.ts';
import { buildOutlineTree, type OutlineTree } from '../../src/geometry/motion/outline-tree.ts';
import { sweptRegion } from '../../src/geometry/motion/swept-region.ts';
import { polygonLoop, type Region } from '../../src/geometry/plane/loop.ts';
import { apply, compose, inverse } from '../../src/geometry/plane/rigid.ts';
import { polar, type Vec, vec } from '../../src/geometry/plane/vec.ts';
import { metalOnLeft } from '../../src/geometry/polygons/metal-on-left.ts';
import { offset } from '../../src/geometry/polygons/offset.ts';
import { loopsOf, type Polygons } from '../../src/geometry/polygons/polygons.ts';
import type { Random } from './random.ts';
import type { Setting } from './random-settings.ts';

const sides = ['outside', 'inside'] as const;
const toleranceMm = 1e-4;

/** What the grid of the polygon engine may shift an outline by. */
const gridMm = 5e-6;

/** How far a point lies outside a solid, mm; negative inside. */
function outsideMm(tree: OutlineTree, p: Vec): number {
  return nearestOnOutline(tree, p).distanceMm * (regionContains(tree, p.x, p.y) ? -1 : 1);
}

/** Random points all over a box, and every other one close to a corner of the polygons under test. */
function randomPoint(random: Random, corners: readonly Vec[], reachMm: number): Vec {
  if (corners.length > 0 && random.chance(0.5)) {
    return polar(random.pick(corners), random.magnitude(1e-5, 1), random.between(-4, 4));
  }
  return vec(random.between(-reachMm, reachMm), random.between(-reachMm, reachMm));
}

/** Points at which an offset solid is wrong: whether a point belongs to it is a matter of its distance from the solid. */
export function offsetFaults(solid: Region, byMm: number, random: Random, points: number): string[] {
  const tree = buildOutlineTree(solid);
  return sides.flatMap((side) => {
    const { polygons, boundMm } = offset(metalOnLeft(solid), byMm, toleranceMm, side);
    const judged = buildOutlineTree(loopsOf(polygons));
    return faultsAt(random, points, polygons, (p) => {
      const beyond = outsideMm(tree, p) - byMm;
      return verdict(judged, p, beyond, side === 'outside' ? boundMm : gridMm, side === 'inside' ? boundMm : gridMm);
    });
  });
}

const instants = 800;

/**
 * Points at which a swept region is wrong: a point is carried back by many instants of the motion and looked for in the
 * solid; every low of its distance over time is refined.
 */
export function sweepFaults({ moving, start, motion }: Setting, random: Random, points: number): string[] {
  const tree = buildOutlineTree(moving);
  const outsideAt = (p: Vec, t: number): number =>
    outsideMm(tree, apply(inverse(compose(motionAt(motion, t), start)), p));
  const beyondMm = (p: Vec): number => {
    const coarse = Array.from({ length: instants + 1 }, (_, i) => outsideAt(p, i / instants));
    const lows = coarse.flatMap((mm, i) => (mm <= (coarse[i - 1] ?? mm) && mm <= (coarse[i + 1] ?? mm) ? [i] : []));
    return Math.min(...lows.map((i) => refined((t) => outsideAt(p, t), i / instants, coarse[i] as number)));
  };
  return sides.flatMap((side) => {
    const { polygons, boundMm } = sweptRegion(moving, start, motion, toleranceMm, side);
    const judged = buildOutlineTree(loopsOf(polygons));
    // lows are found to a hair: what only grazes is not judged
    return faultsAt(random, points, polygons, (p) => {
      const beyond = beyondMm(p);
      const nearOutline = nearestOnOutline(judged, p).distanceMm < 2 * boundMm;
      return nearOutline ? null : verdict(judged, p, beyond, boundMm + 1e-4, gridMm);
    });
  });
}

/** A low near an instant, by ever smaller steps either way. */
function refined(mmAt: (t: number) => number, t: number, mm: number): number {
  let [least, at] = [mm, t];
  for (let step = 0.5 / instants; step > 1e-9; step *= 0.6) {
    for (const other of [at - step, at + step].filter((u) => u >= 0 && u <= 1)) {
      const there = mmAt(other);
      if (there < least) [least, at] = [there, other];
    }
  }
  return least;
}

function faultsAt(random: Random, count: number, polygons: Polygons, judge: (p: Vec) => string | null): string[] {
  const corners = polygons.flat();
  const reachMm = corners.reduce((most, p) => Math.max(most, Math.abs(p.x), Math.abs(p.y)), 50) + 5;
  return Array.from({ length: count }, () => judge(randomPoint(random, corners, reachMm))).filter((f) => f !== null);
}

/** A point is wrongly missed when it lies deeper than `missMm` within the truth, wrongly held when `holdMm` beyond. */
function verdict(judged: OutlineTree, p: Vec, beyondMm: number, holdMm: number, missMm: number): string | null {
  const isHeld = regionContains(judged, p.x, p.y);
  if (isHeld && beyondMm > holdMm) return `(${p.x}, ${p.y}) is held, ${beyondMm} beyond`;
  return !isHeld && beyondMm < -missMm ? `(${p.x}, ${p.y}) is missed, ${-beyondMm} within` : null;
}

/** A scanned outline: hundreds of short edges with noise, now and then with a rough bore. */
export function roughStar(random: Random): Region {
  const count = random.whole(30, 500);
  const noise = random.magnitude(0.01, 6);
  const waves = random.whole(0, 9);
  const star = (radius: number) =>
    polygonLoop(
      Array.from({ length: count }, (_, i) => {
        const angle = (2 * Math.PI * i) / count;
        const waved = radius * (1 + 0.2 * Math.sin(waves * angle));
        return polar(vec(0, 0), waved + noise * random.between(-0.5, 0.5), angle);
      }),
    );
  return random.chance(0.3) && noise < 5 ? [star(40), star(16)] : [star(40)];
}
