import { describe, expect, it } from 'vitest';
import { drillResult } from '../../src/drill/drill-result.ts';
import { type Vec, vec } from '../../src/geometry/plane/vec.ts';
import type { Casting } from '../../src/job/casting.ts';
import { castingOf, disc, holeOf } from '../support/jobs.ts';
import { jointOf } from '../support/joints.ts';
import { boundaryDistance, contains, solidOf } from '../support/oracles/solid.ts';
import { Random } from '../support/random.ts';
import { randomRegion } from '../support/random-outlines.ts';

const jobs = 150;
const holesOfAJob = 6;

/** A casting of a few outlines at overlapping depths, with a hollow and a hole that is there. */
function casting(random: Random): Casting {
  const depth = (): readonly [number, number] => {
    const from = random.whole(0, 20);
    return [from, from + random.whole(4, 30)];
  };
  return castingOf({
    sections: Array.from({ length: random.whole(1, 3) }, (_, i) => ({
      id: `section-${i}`,
      depth: random.chance(0.15) ? null : depth(),
      loops: randomRegion(random, 60),
    })),
    hollows: [
      {
        id: 'jacket',
        depth: depth(),
        keepWallMm: random.between(0, 4),
        loops: [disc(random.between(-40, 40), random.between(-40, 40), random.between(4, 15))],
      },
    ],
    holes: [
      holeOf({
        id: 'B1',
        kind: 'tapped',
        at: [random.between(-40, 40), random.between(-40, 40)],
        diameterMm: 8,
        depth: [0, 15],
      }),
      ...Array.from({ length: holesOfAJob }, (_, i) => {
        const from = random.whole(0, 15);
        return holeOf({
          id: `N${i}`,
          kind: 'planned',
          at: [random.between(-50, 50), random.between(-50, 50)],
          diameterMm: random.between(3, 12),
          depth: random.chance(0.2) ? null : [from, from + random.whole(2, 15)],
        });
      }),
    ],
  });
}

/** Whether a point in space lies in metal, by counting: in any section that stands at its depth. */
const inMetal = ({ sections }: Casting, p: Vec, depthMm: number): boolean =>
  sections.some(
    ({ depth, loops }) =>
      (depth === null || (depth.fromMm < depthMm && depthMm < depth.toMm)) && contains(solidOf(loops), p),
  );

const inHollow = ({ hollows }: Casting, p: Vec, depthMm: number): boolean =>
  hollows.some(
    ({ depth, loops }) =>
      (depth === null || (depth.fromMm < depthMm && depthMm < depth.toMm)) && contains(solidOf(loops), p),
  );

describe('a planned hole that does, in random castings', () => {
  it('has metal all round for the wall it wants, over all of its depth, and breaks into nothing: points counted one by one', () => {
    const random = new Random(163);
    const seen = { does: 0, not: 0, points: 0 };
    for (let job = 0; job < jobs; job++) {
      const fixed = casting(random);
      const { planned } = drillResult(jointOf({ fixed, nothingShares: true }), null, {
        edgeFactor: 1,
        drillErrorMm: 0,
        spotFaceMm: null,
        socketMm: null,
      });
      for (const { hole, diameterMm, verdict } of planned) {
        if (diameterMm === null || (verdict !== 'does' && verdict !== 'as-traced')) {
          seen.not += 1;
          continue;
        }
        seen.does += 1;
        const { fromMm, toMm } = hole.depth ?? { fromMm: 0, toMm: 0 };
        for (let k = 0; k < 40; k++) {
          // the wall wanted by the rule is half a diameter, so all within a diameter of its middle is metal
          const away = diameterMm * 0.999 * Math.sqrt(random.between(0, 1));
          const round = random.between(0, 2 * Math.PI);
          const p = vec(hole.at.x + away * Math.cos(round), hole.at.y + away * Math.sin(round));
          if (hole.depth === null) continue;
          const depthMm = random.between(fromMm, toMm);
          const where = `job ${job}, ${hole.id}, ${JSON.stringify({ p, depthMm })}`;
          expect(inMetal(fixed, p, depthMm), where).toBe(true);
          if (away < diameterMm / 2) expect(inHollow(fixed, p, depthMm), where).toBe(false);
          seen.points += 1;
        }
      }
    }
    expect(seen.does).toBeGreaterThan(40);
    expect(seen.not).toBeGreaterThan(100);
    expect(seen.points).toBeGreaterThan(1000);
  });

  it('is never refused for its edge where one outline stands alone and leaves the wall wanted', () => {
    const random = new Random(164);
    let plain = 0;
    for (let job = 0; job < 200; job++) {
      const [loops, at] = [randomRegion(random, 60), vec(random.between(-50, 50), random.between(-50, 50))];
      const diameterMm = random.between(2, 12);
      const fixed = castingOf({
        sections: [{ id: 'one', depth: [0, 20] as const, loops }],
        holes: [holeOf({ id: 'N', kind: 'planned', at: [at.x, at.y], diameterMm, depth: [0, 20] })],
      });
      const rules = { edgeFactor: 1.5, drillErrorMm: 0, spotFaceMm: null, socketMm: null };
      const [judged] = drillResult(jointOf({ fixed, nothingShares: true }), null, rules).planned;
      const solid = solidOf(loops);
      const keptMm = contains(solid, at) ? boundaryDistance(solid, at) : 0;
      if (Math.abs(keptMm - 1.5 * diameterMm) < 0.01) continue;
      expect(judged?.verdict !== 'does-not', `job ${job}`).toBe(keptMm > 1.5 * diameterMm);
      plain += keptMm > 1.5 * diameterMm ? 1 : 0;
    }
    expect(plain).toBeGreaterThan(15);
  });
});
