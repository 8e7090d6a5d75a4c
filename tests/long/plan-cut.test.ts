import { describe, expect, it } from 'vitest';
import type { BandAnswer } from '../../src/answers/grind-answer.ts';
import { holdsClearance } from '../../src/clearance/measure.ts';
import { loopFaults } from '../../src/geometry/plane/loop-faults.ts';
import { difference } from '../../src/geometry/polygons/polygon-engine.ts';
import { polygonise } from '../../src/geometry/polygons/polygonise.ts';
import { areaMm2, type Polygons } from '../../src/geometry/polygons/polygons.ts';
import { loopOf } from '../../src/job/lengths.ts';
import { answerTo } from '../support/plan-answer.ts';
import { Random } from '../support/random.ts';
import { randomFit } from '../support/random-fit.ts';

const regionOf = (loops: BandAnswer['loops']) => loops.map((loop) => loopOf(loop, 1));
const polygonsOf = (loops: BandAnswer['loops']): Polygons => polygonise(regionOf(loops), 1e-4, 'outside');

describe.each(['fixed', 'moving'] as const)('plans for 300 random fits, the %s part cut', (cut) => {
  it('keep the clearance asked, with sound loops, first within planned within last', () => {
    for (let seed = 0; seed < 300; seed++) {
      const joint = randomFit(new Random(seed), cut);
      const { homeMm, wayInMm } = joint.fit.clearance;
      const { sections, afterCut, boundMm } = answerTo(joint);
      const { home, install } = afterCut;
      expect(holdsClearance(home.state, home.clearanceMm, homeMm), `seed ${seed}, home`).toBe(true);
      if (install)
        expect(holdsClearance(install.state, install.clearanceMm, wayInMm), `seed ${seed}, way in`).toBe(true);
      expect(boundMm).toBeLessThan(0.001);
      for (const band of sections.flatMap(({ bands }) => bands)) {
        for (const loops of [band.loops, band.firstLoops, band.lastLoops]) {
          expect(loopFaults(regionOf(loops)), `seed ${seed}`).toEqual([]);
        }
        const [first, planned, last] = [band.firstLoops, band.loops, band.lastLoops].map(polygonsOf) as [
          Polygons,
          Polygons,
          Polygons,
        ];
        expect(areaMm2(difference(first, planned)), `seed ${seed}`).toBeLessThan(1e-4);
        expect(areaMm2(difference(planned, last)), `seed ${seed}`).toBeLessThan(1e-4);
      }
    }
  });
});
