import { describe, expect, it } from 'vitest';
import type { BandAnswer } from '../../src/answers/grind-answer.ts';
import { holdsClearance } from '../../src/clearance/measure.ts';
import { loopFaults } from '../../src/geometry/plane/loop-faults.ts';
import { metalOnLeft } from '../../src/geometry/polygons/metal-on-left.ts';
import { offset } from '../../src/geometry/polygons/offset.ts';
import { difference } from '../../src/geometry/polygons/polygon-engine.ts';
import { polygonise } from '../../src/geometry/polygons/polygonise.ts';
import { areaMm2 } from '../../src/geometry/polygons/polygons.ts';
import { loopOf } from '../../src/job/lengths.ts';
import { alikeMm } from '../../src/plan/bands/joined-needs.ts';
import { arcsWithinMm } from '../../src/plan/bands/tolerance.ts';
import { answerTo } from '../support/plan-answer.ts';
import { Random } from '../support/random.ts';
import { randomFit } from '../support/random-fit.ts';

const regionOf = (loops: BandAnswer['loops']) => loops.map((loop) => loopOf(loop, 1));
/** How much of a line's metal lies farther than so much outside another's. */
function beyondMm2(inner: BandAnswer['loops'], outer: BandAnswer['loops'], byMm: number): number {
  const held = offset(metalOnLeft(regionOf(outer)), byMm, 1e-5, 'outside').polygons;
  return areaMm2(difference(polygonise(regionOf(inner), 1e-5, 'inside'), held));
}

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
      // bands that are cut alike are one, each within so much of the first
      expect(boundMm).toBeLessThan(0.001 + 2 * alikeMm);
      for (const band of sections.flatMap(({ bands }) => bands)) {
        for (const loops of [band.loops, band.firstLoops, band.lastLoops]) {
          expect(loopFaults(regionOf(loops)), `seed ${seed}`).toEqual([]);
        }
        expect(beyondMm2(band.firstLoops, band.loops, 1e-5), `seed ${seed}`).toBeLessThan(1e-4);
        // where both run along one polygon their arcs are within so much of it
        expect(beyondMm2(band.loops, band.lastLoops, arcsWithinMm), `seed ${seed}`).toBeLessThan(1e-4);
      }
    }
  });
});
