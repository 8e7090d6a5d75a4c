import { expect, it } from 'vitest';
import { regionContains } from '../../src/geometry/motion/containment.ts';
import { nearestOnOutline } from '../../src/geometry/motion/nearest-point.ts';
import { buildOutlineTree } from '../../src/geometry/motion/outline-tree.ts';
import { distance, lerp, type Vec } from '../../src/geometry/plane/vec.ts';
import { loopsOf, type Polygons } from '../../src/geometry/polygons/polygons.ts';
import { drain } from '../../src/geometry/progress.ts';
import { planPart } from '../../src/plan/plan-part.ts';
import { Random } from '../support/random.ts';
import { randomFit } from '../support/random-fit.ts';

interface Point {
  readonly at: Vec;
  readonly loop: number;
  readonly goneMm: number;
  readonly loopMm: number;
}

/** Points every 0.4 mm or so along the outlines of a solid. */
function pointsAlong(polygons: Polygons): Point[] {
  return polygons.flatMap((polygon, loop) => {
    const next = (i: number): Vec => polygon[(i + 1) % polygon.length] as Vec;
    const loopMm = polygon.reduce((sum, p, i) => sum + distance(p, next(i)), 0);
    let goneMm = 0;
    return polygon.flatMap((p, i) => {
      const edgeMm = distance(p, next(i));
      const count = Math.max(1, Math.ceil(edgeMm / 0.4));
      const from = goneMm;
      goneMm += edgeMm;
      return Array.from({ length: count }, (_, k) => {
        const t = (k + 0.5) / count;
        return { at: lerp(p, next(i), t), loop, goneMm: from + edgeMm * t, loopMm };
      });
    });
  });
}

/** The shortest of all straight ways through metal from a new edge to another, old or new, far from it along the outline. */
function leastByAllWays(left: Polygons, isOld: (p: Vec) => boolean, reachMm: number): number {
  const inside = buildOutlineTree(loopsOf(left));
  const points = pointsAlong(left);
  const cut = points.filter(({ at }) => !isOld(at));
  let leastMm = reachMm;
  for (const p of cut) {
    for (const q of points) {
      const mm = distance(p.at, q.at);
      if (mm >= leastMm) continue;
      const gone = Math.abs(p.goneMm - q.goneMm);
      if (p.loop === q.loop && Math.min(gone, p.loopMm - gone) < Math.max(3, 4 * mm)) continue;
      const isMetal = [0.1, 0.3, 0.5, 0.7, 0.9].every((t) => {
        const { x, y } = lerp(p.at, q.at, t);
        return regionContains(inside, x, y);
      });
      if (isMetal) leastMm = mm;
    }
  }
  return leastMm;
}

it('no way through metal from a new edge to one across from it is shorter than the wall told', () => {
  let [thin, thick] = [0, 0];
  for (let seed = 0; seed < 80; seed++) {
    const made = randomFit(new Random(seed));
    const joint = { ...made, fit: { ...made.fit, minWallMm: 4 } };
    const { cuts, cut } = drain(planPart(joint, 'fixed'));
    for (const { section, bands } of cuts) {
      const outline = buildOutlineTree(section.loops);
      for (const { left, depth } of bands) {
        const told = cut.thin.find(
          (place) => place.along === 'plane' && place.section === section.id && place.depth?.fromMm === depth?.fromMm,
        );
        const leastMm = leastByAllWays(left, (p) => nearestOnOutline(outline, p).distanceMm < 2.5e-3, 13);
        if (leastMm === 13) {
          thick++;
          continue;
        }
        thin++;
        expect(told?.nominalMm, `seed ${seed}, ${section.id}`).toBeLessThan(leastMm + 2e-3);
      }
    }
  }
  expect(Math.min(thin, thick)).toBeGreaterThan(10);
});
