import { describe, expect, it } from 'vitest';
import { arcToleranceOf } from '../../src/geometry/cutting/tolerances.ts';
import { loopFaults } from '../../src/geometry/plane/loop-faults.ts';
import { loopOf } from '../../src/job/lengths.ts';
import { arcsWithinMm } from '../../src/plan/bands/tolerance.ts';
import { GeosPlane, type Shape } from '../support/oracles/geos-plane.ts';
import { answerTo } from '../support/plan-answer.ts';
import { Random } from '../support/random.ts';
import { randomFit } from '../support/random-fit.ts';

const chordMm = 1e-4;
const quarter = 128;

/** Trimming what chords leave also trims the tips of needles: a spot so small there is none of ours. */
const spotMm2 = 1e-6;

describe('cuts shaped for a cutter, many of them', () => {
  it('leave no corner it cannot make, in sound outlines, first within planned within last', async () => {
    const geos = await GeosPlane.start();
    for (let seed = 0; seed < 300; seed++) {
      const random = new Random(20_000 + seed);
      const joint = randomFit(random, random.pick(['fixed', 'moving']));
      const radiusMm = random.pick([0.5, 2, 4, 8, 20]);
      const cutter = {
        radiusMm,
        nose: random.pick(['flat', 'ball'] as const),
        handErrorMm: 0.5,
        runOut: random.pick(['cut-past', 'leave'] as const),
        stepoverMm: null,
      };
      const answer = answerTo({ ...joint, fit: { ...joint.fit, cutter } });
      // what GEOS' chords leave out of a disc, twice, and ours of an arc: a disc so much smaller must get everywhere
      const oracleMm = 2 * radiusMm * (1 - Math.cos(Math.PI / (4 * quarter))) + 4 * arcToleranceOf(radiusMm);
      const discMm = radiusMm - oracleMm;
      for (const { id, bands } of answer.sections) {
        const whole = geos.region(joint[answer.part].sections.find((s) => s.id === id)?.loops ?? [], chordMm);
        for (const band of bands) {
          const [first, removed, last] = [band.firstLoops, band.loops, band.lastLoops].map((loops) => {
            const region = loops.map((loop) => loopOf(loop, 1));
            expect(loopFaults(region), `seed ${seed}`).toEqual([]);
            return geos.region(region, chordMm);
          }) as [Shape, Shape, Shape];
          // chords of arcs, and of the planned and the last line where they run on one another arcs of their own
          const [within, beside] = [
            geos.buffer(removed, 2 * chordMm, 8),
            geos.buffer(last, arcsWithinMm + 2 * chordMm, 8),
          ];
          expect(geos.areaMm2(geos.difference(first, within))).toBeLessThan(1e-6);
          expect(geos.areaMm2(geos.difference(removed, beside))).toBeLessThan(1e-6);
          const left = geos.difference(whole, geos.buffer(removed, 2 * chordMm, 8));
          if (geos.areaMm2(left) === 0) continue;
          const closed = geos.buffer(geos.buffer(left, discMm, quarter), -discMm, quarter);
          const missed = geos.difference(
            geos.intersection(closed, removed),
            geos.buffer(left, answer.boundMm + oracleMm, 16),
          );
          expect(geos.areaMm2(missed), `seed ${seed}`).toBeLessThan(spotMm2);
        }
      }
      geos.free();
    }
  });
});
