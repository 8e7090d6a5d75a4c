import fc from 'fast-check';
import { afterEach, beforeAll, expect, it } from 'vitest';
import type { BandAnswer } from '../../src/answers/grind-answer.ts';
import type { Region } from '../../src/geometry/plane/loop.ts';
import { distance, vec } from '../../src/geometry/plane/vec.ts';
import { loopOf } from '../../src/job/lengths.ts';
import { arcsWithinMm } from '../../src/plan/bands/tolerance.ts';
import { GeosPlane, type Shape } from '../support/oracles/geos-plane.ts';
import { answerTo } from '../support/plan-answer.ts';
import { Random } from '../support/random.ts';
import { randomFit } from '../support/random-fit.ts';
import { edgesWithin, expectStraight, flatCutter } from '../support/straight-edges.ts';

let geos: GeosPlane;
beforeAll(async () => {
  geos = await GeosPlane.start();
});
afterEach(() => geos.free());

const chordMm = 1e-4;
const regionOf = (loops: BandAnswer['loops']): Region => loops.map((loop) => loopOf(loop, 1));

it('a straight edge is of flats of 10 mm and arcs of the cutter’s radius, and the cut holds the one it was made from', () => {
  const seen = { edges: 0, asTheyWere: 0, changed: 0, flats: 0 };
  fc.assert(
    fc.property(fc.nat(10_000), fc.constantFrom(null, 1, 3, 6), (seed, radiusMm) => {
      const made = randomFit(new Random(seed));
      const joint = { ...made, fit: { ...made.fit, cutter: radiusMm === null ? null : flatCutter(radiusMm) } };
      const bare = answerTo(joint);
      const answer = answerTo({ ...joint, fit: { ...joint.fit, straight: true } });
      const asItWas = answer.straight?.asItWas ?? [];
      seen.asTheyWere += asItWas.length;
      answer.sections.forEach(({ id, bands }, s) => {
        const loops = joint.fixed.sections.find((section) => section.id === id)?.loops ?? [];
        const metal = geos.region(loops, chordMm);
        bands.forEach((band, b) => {
          const plain = bare.sections[s]?.bands[b] as BandAnswer;
          expect(band.depth).toEqual(plain.depth);
          const [cut, least] = [
            geos.region(regionOf(band.loops), chordMm),
            geos.region(regionOf(plain.loops), chordMm),
          ];
          // arcs of either are within so much of one polygon, and chords of them besides
          const beside = (shape: Shape): Shape => geos.buffer(shape, arcsWithinMm + 2 * chordMm, 8);
          expect(geos.areaMm2(geos.difference(least, beside(cut)))).toBeLessThan(1e-3);
          const last = geos.region(regionOf(band.lastLoops), chordMm);
          expect(geos.areaMm2(geos.difference(geos.intersection(cut, metal), beside(last)))).toBeLessThan(1e-3);
          expect(geos.areaMm2(geos.difference(cut, least))).toBeCloseTo(band.straightExtraAreaMm2 as number, 1);
          if ((band.straightExtraAreaMm2 as number) > 0.1) seen.changed++;
          for (const edge of edgesWithin(band.loops, loops)) {
            if (asItWas.some(({ at: [x, y] }) => edge.some((p) => distance(p, vec(x, y)) < 0.01))) continue;
            seen.edges++;
            seen.flats += expectStraight(edge, answer.straight?.leastArcRadiusMm as number);
          }
        });
      });
      // what the plain plan clears, the straight one clears
      if (bare.holds && answer.severed.length === 0) expect(answer.uncured).toEqual([]);
      const [before, after] = [bare.afterCut.home.clearanceMm, answer.afterCut.home.clearanceMm];
      if (before !== null && after !== null) expect(after).toBeGreaterThan(before - 2e-3);
      geos.free();
    }),
    { numRuns: 6, seed: 11 },
  );
  expect(seen.edges).toBeGreaterThan(5);
  expect(seen.changed).toBeGreaterThan(2);
  expect(seen.flats).toBeGreaterThan(10);
});
