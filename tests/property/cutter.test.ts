import fc from 'fast-check';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { BandAnswer } from '../../src/answers/grind-answer.ts';
import { circleLoop, type Region } from '../../src/geometry/plane/loop.ts';
import { vec } from '../../src/geometry/plane/vec.ts';
import type { DepthRange } from '../../src/job/casting.ts';
import { loopOf } from '../../src/job/lengths.ts';
import { GeosPlane, type Shape } from '../support/oracles/geos-plane.ts';
import { answerTo, planned } from '../support/plan-answer.ts';
import { Random } from '../support/random.ts';
import { randomFit } from '../support/random-fit.ts';

let geos: GeosPlane;
beforeAll(async () => {
  geos = await GeosPlane.start();
});
afterEach(() => geos.free());

const chordMm = 1e-4;

const quarter = 128;

/** Trimming what chords leave also trims the tips of needles: a spot so small there is none of ours. */
const spotMm2 = 1e-6;

/** GEOS' round corners are chords inside the arc: so much short for a disc of this radius, each time it is grown. */
const roundingMm = (radiusMm: number): number => radiusMm * (1 - Math.cos(Math.PI / (4 * quarter)));

const regionOf = (loops: BandAnswer['loops']): Region => loops.map((loop) => loopOf(loop, 1));

describe('a cut for a round cutter, measured again by GEOS', () => {
  it('leaves no corner the cutter cannot make: nothing removed that no disc clear of the metal left gets at', () => {
    let shaped = 0;
    fc.assert(
      fc.property(fc.nat(10_000), fc.constantFrom(1, 3, 6, 12), (seed, radiusMm) => {
        const joint = randomFit(new Random(seed));
        const cutter = { radiusMm, nose: 'flat', handErrorMm: 0.5, runOut: 'cut-past', stepoverMm: null } as const;
        const answer = answerTo({ ...joint, fit: { ...joint.fit, cutter } });
        for (const { id, bands } of answer.sections) {
          const whole = geos.region(joint.fixed.sections.find((s) => s.id === id)?.loops ?? [], chordMm);
          for (const band of bands) {
            const removed = geos.region(regionOf(band.loops), chordMm);
            // chords of inward arcs lie outside the metal: what they alone would leave is none
            const left = geos.difference(whole, geos.buffer(removed, 2 * chordMm, 8));
            if (geos.areaMm2(left) === 0) continue;
            if (band.extraAreaMm2 > 0.1) shaped++;
            // a disc smaller by what the measuring leaves out must get everywhere
            const oracleMm = 2 * roundingMm(radiusMm) + 4 * chordMm;
            const missing = missed(left, removed, radiusMm - oracleMm, answer.boundMm + oracleMm);
            expect(geos.areaMm2(missing)).toBeLessThan(spotMm2);
          }
        }
        geos.free();
      }),
      { numRuns: 40, seed: 4 },
    );
    expect(shaped).toBeGreaterThan(10);
  });

  it('would leave such corners were it only as the clearance asks', () => {
    const joint = randomFit(new Random(9993));
    const [section] = joint.fixed.sections;
    const answer = answerTo(joint);
    const loops = answer.sections.find(({ id }) => id === section?.id)?.bands[0]?.loops ?? [];
    const removed = geos.region(regionOf(loops), chordMm);
    const left = geos.difference(geos.region(section?.loops ?? [], chordMm), removed);
    expect(geos.areaMm2(missed(left, removed, 12, 0.01))).toBeGreaterThan(0.01);
  });

  /** What a disc that stays clear of the metal left cannot get at of what is removed, farther than allowed from it. */
  function missed(left: Shape, removed: Shape, radiusMm: number, allowedMm: number): Shape {
    const closed = geos.buffer(geos.buffer(left, radiusMm, quarter), -radiusMm, quarter);
    return geos.difference(geos.intersection(closed, removed), geos.buffer(left, allowedMm, 16));
  }

  it('leaves the walls GEOS measures', () => {
    let measured = 0;
    fc.assert(
      fc.property(fc.nat(10_000), (seed) => {
        const random = new Random(seed);
        const joint = randomFit(random);
        const at = vec(random.between(-25, 45), random.between(-25, 25));
        const hollow = {
          id: 'gallery',
          depth: null,
          loops: [circleLoop(at, random.between(1, 6))],
          keepWallMm: null,
          traceErrorMm: 0.2,
        };
        const cutter = { radiusMm: 3, nose: 'flat', handErrorMm: 0.3, runOut: 'cut-past', stepoverMm: null } as const;
        const fixed = { ...joint.fixed, hollows: [hollow] };
        const answer = answerTo({ ...joint, fixed, fit: { ...joint.fit, cutter } });
        const [wall] = answer.walls;
        if (wall !== undefined) {
          measured++;
          const gallery = geos.region(hollow.loops, chordMm);
          const nearest = (line: 'loops' | 'lastLoops'): number =>
            Math.min(
              ...answer.sections.flatMap(({ bands }) =>
                bands.map((band) => geos.distanceMm(geos.region(regionOf(band[line]), chordMm), gallery)),
              ),
            );
          expect(Math.abs(wall.nominalMm - nearest('loops'))).toBeLessThan(0.01);
          expect(Math.abs(wall.wallMm - (nearest('lastLoops') - 0.2 - 0.3))).toBeLessThan(0.01);
        }
        geos.free();
      }),
      { numRuns: 24, seed: 9 },
    );
    expect(measured).toBeGreaterThan(5);
  });

  it('shared between both parts keeps the asked clearance at home', () => {
    let shared = 0;
    fc.assert(
      fc.property(fc.nat(10_000), fc.constantFrom(0, 0.3, 0.5, 0.8), (seed, share) => {
        const joint = randomFit(new Random(seed));
        const { legs: _, ...rest } = joint.fit;
        const fit = { ...rest, legs: [], cut: 'both', share } as const;
        const [fixed, moving] = planned({ ...joint, fit }).plan.cuts;
        if ([fixed, moving].every((cut) => (cut?.sections.length ?? 0) > 0)) shared++;
        for (const f of fixed?.after.sections ?? []) {
          for (const m of moving?.after.sections ?? []) {
            if (!overlaps(f.depth, m.depth)) continue;
            const gap = geos.distanceMm(geos.region(f.loops, chordMm), geos.region(m.loops, chordMm));
            expect(gap).toBeGreaterThan(fit.clearance.homeMm - 0.001 - 4 * chordMm);
          }
        }
        geos.free();
      }),
      { numRuns: 24, seed: 8 },
    );
    expect(shared).toBeGreaterThan(2);
  });
});

/** Whether a moving depth at home reaches a fixed one, no margin added. */
const overlaps = (f: DepthRange | null, m: DepthRange | null): boolean =>
  f === null || m === null || (-f.toMm < m.toMm && m.fromMm < -f.fromMm);
