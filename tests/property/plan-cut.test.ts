import fc from 'fast-check';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { BandAnswer, GrindAnswer } from '../../src/answers/grind-answer.ts';
import { motionAt } from '../../src/geometry/motion/motion.ts';
import { moveRegion, type Region } from '../../src/geometry/plane/loop.ts';
import { compose, type Rigid, rigid } from '../../src/geometry/plane/rigid.ts';
import { vec } from '../../src/geometry/plane/vec.ts';
import type { DepthRange, Section } from '../../src/job/casting.ts';
import { loopOf } from '../../src/job/lengths.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { GeosPlane, type Shape } from '../support/oracles/geos-plane.ts';
import { answerTo } from '../support/plan-answer.ts';
import { Random } from '../support/random.ts';
import { randomFit } from '../support/random-fit.ts';

let geos: GeosPlane;
beforeAll(async () => {
  geos = await GeosPlane.start();
});
afterEach(() => geos.free());

const chordMm = 1e-4;
const steps = 40;

/** Where the moving part stands at one instant, as the fixed part sees it, and what is asked there. */
interface Instant {
  readonly at: Rigid;
  readonly standOffMm: number;
  readonly askedMm: number;
}

/** Home, and every leg at even steps. */
function instantsOf({ fit }: Joint): Instant[] {
  const home: Instant = { at: rigid(0, vec(0, 0)), standOffMm: 0, askedMm: fit.clearance.homeMm };
  const legs = fit.legs.flatMap(({ from, to, motion }) =>
    Array.from({ length: steps + 1 }, (_, i) => ({
      at: compose(motionAt(motion, i / steps), rigid(from.turnRad, from.shift)),
      standOffMm: from.standOffMm + (i / steps) * (to.standOffMm - from.standOffMm),
      askedMm: fit.clearance.wayInMm,
    })),
  );
  return [home, ...legs];
}

/** Depths strictly between all the ends at which anything can change, so that one stands for its neighbourhood. */
function depthsIn(section: Section, bands: readonly BandAnswer[]): number[] {
  const { fromMm, toMm } = section.depth ?? { fromMm: 0, toMm: 0 };
  const ends = [fromMm, toMm, ...bands.flatMap(({ depth }) => depth ?? [])].sort((a, b) => a - b);
  return ends.slice(1).flatMap((to, i) => {
    const from = ends[i] as number;
    return to - from < 1e-6 ? [] : [from + 0.03 * (to - from), from + 0.5 * (to - from), from + 0.97 * (to - from)];
  });
}

const bandAt = (bands: readonly BandAnswer[], mm: number): BandAnswer | undefined =>
  bands.find(({ depth }) => depth !== null && depth[0] < mm && mm < depth[1]);

const regionOf = (loops: BandAnswer['loops']): Region => loops.map((loop) => loopOf(loop, 1));

/** Lengthened by the margin but where both facing ends are mating faces, written out here once more. */
function lengthened(moving: Section, fixed: Section, marginMm: number): DepthRange {
  const [m, f] = [moving, fixed].map(({ depth }) => depth ?? { fromMm: 0, toMm: 0 }) as [DepthRange, DepthRange];
  return {
    fromMm: m.fromMm === 0 && f.fromMm === 0 ? 0 : m.fromMm - marginMm,
    toMm: m.toMm === 0 && f.toMm === 0 ? 0 : m.toMm + marginMm,
  };
}

/** Whether a part of the moving section reaches the depth of the fixed part at a stand-off, the margin added. */
function reaches(moving: Section, fixed: Section, fixedDepthMm: number, standOffMm: number, marginMm: number): boolean {
  const { fromMm, toMm } = lengthened(moving, fixed, marginMm);
  return standOffMm + fromMm < -fixedDepthMm && -fixedDepthMm < standOffMm + toMm;
}

const bandsOf = ({ sections }: GrindAnswer, { id }: Section): readonly BandAnswer[] =>
  sections.find((s) => s.id === id)?.bands ?? [];

describe('a plan, measured again by GEOS at sampled instants and depths', () => {
  it('leaves the asked clearance, and takes little more than the least', () => {
    fc.assert(
      fc.property(fc.nat(10_000), (seed) => {
        const joint = randomFit(new Random(seed));
        const answer = answerTo(joint);
        const instants = instantsOf(joint);
        for (const section of joint.fixed.sections) {
          const whole = geos.region(section.loops, chordMm);
          const bands = bandsOf(answer, section);
          for (const depthMm of depthsIn(section, bands)) {
            const band = bandAt(bands, depthMm);
            // chords of inward arcs lie outside the metal: what they alone would leave is none
            const cut = geos.buffer(geos.region(regionOf(band?.loops ?? []), chordMm), 2 * chordMm, 8);
            const left = geos.difference(whole, cut);
            expectRoom(joint, instants, section, depthMm, left);
          }
          for (const band of bands) expectLittle(joint, instants, section, band, answer.boundMm, whole);
        }
        expect(answer.afterCut.home.state).not.toBe('undecided');
        geos.free();
      }),
      { numRuns: 12, seed: 20 },
    );
  });

  function expectRoom(
    joint: Joint,
    instants: readonly Instant[],
    section: Section,
    depthMm: number,
    left: Shape,
  ): void {
    if (geos.areaMm2(left) === 0) return;
    for (const moving of joint.moving.sections) {
      for (const { at, standOffMm, askedMm } of instants) {
        if (!reaches(moving, section, depthMm, standOffMm, joint.fit.depthMarginMm)) continue;
        const gap = geos.distanceMm(left, geos.region(moveRegion(moving.loops, at), chordMm));
        // chords of inward arcs stand nearer than the arcs, on both sides
        expect(gap).toBeGreaterThan(askedMm - 0.001 - 4 * chordMm);
      }
    }
  }

  /** No more than 2 % over what the sampled copies take, and the bound along the whole of the cut's outline. */
  function expectLittle(
    joint: Joint,
    instants: readonly Instant[],
    section: Section,
    band: BandAnswer,
    boundMm: number,
    whole: Shape,
  ): void {
    const [fromMm, toMm] = band.depth ?? [0, 0];
    const taken = joint.moving.sections.flatMap((moving) =>
      instants
        .filter(({ standOffMm }) => {
          const { fromMm: m0, toMm: m1 } = lengthened(moving, section, joint.fit.depthMarginMm);
          return standOffMm + m0 < -fromMm && -toMm < standOffMm + m1;
        })
        .map(({ at, askedMm }) => geos.buffer(geos.region(moveRegion(moving.loops, at), chordMm), askedMm, 64)),
    );
    const least = geos.areaMm2(geos.intersection(whole, geos.union(...taken)));
    const planned = geos.region(regionOf(band.loops), chordMm);
    expect(section.mayCut).toBe(true);
    expect(band.areaMm2).toBeLessThan(1.02 * least + (boundMm + 0.02) * geos.lengthMm(planned));
  }
});
