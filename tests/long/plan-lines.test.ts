import { expect, it } from 'vitest';
import type { BandAnswer } from '../../src/answers/grind-answer.ts';
import { motionAt } from '../../src/geometry/motion/motion.ts';
import { moveRegion, type Region } from '../../src/geometry/plane/loop.ts';
import { compose, inverse, rigid } from '../../src/geometry/plane/rigid.ts';
import type { DepthRange, Section } from '../../src/job/casting.ts';
import { loopOf } from '../../src/job/lengths.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { GeosPlane, type Shape } from '../support/oracles/geos-plane.ts';
import { judgedPlans, randomPlan } from '../support/random-plans.ts';

const jobs = 150;

/** So many of them must hold, lest nothing be shown. */
const holdAtLeast = 50;

const chordMm = 1e-4;
const stepsOfLeg = 8;

/** What chords, the engine's grid and a clearance held to 1e-3 may amount to, mm. */
const slackMm = 3e-3;

const regionOf = (loops: BandAnswer['loops']): Region => loops.map((loop) => loopOf(loop, 1));

/** Where the moving part stands, as the fixed one sees it, and what is asked there. */
function instantsOf({ fit }: Joint) {
  const legs = fit.legs.flatMap(({ from, to, motion }) =>
    Array.from({ length: stepsOfLeg + 1 }, (_, i) => ({
      at: compose(motionAt(motion, i / stepsOfLeg), rigid(from.turnRad, from.shift)),
      standOffMm: from.standOffMm + (i / stepsOfLeg) * (to.standOffMm - from.standOffMm),
      askedMm: fit.clearance.wayInMm,
    })),
  );
  return [{ at: rigid(0, { x: 0, y: 0 }), standOffMm: 0, askedMm: fit.clearance.homeMm }, ...legs];
}

/** The fixed depths at which the moving section counts as there, lengthened but where two mating faces meet. */
function reachOf(moving: DepthRange, fixed: DepthRange, marginMm: number, standOffMm: number): DepthRange {
  const from = moving.fromMm === 0 && fixed.fromMm === 0 ? 0 : moving.fromMm - marginMm;
  const to = moving.toMm === 0 && fixed.toMm === 0 ? 0 : moving.toMm + marginMm;
  return { fromMm: -standOffMm - to, toMm: -standOffMm - from };
}

it('a plan that holds touches nothing it must not, and what a cutter leaves keeps the asked clearance', async () => {
  const { wrong, held } = judgedPlans(await GeosPlane.start(), 0, jobs);
  expect(wrong).toEqual({});
  expect(held).toBeGreaterThan(holdAtLeast);
});

it('the first line lies in the plan, that in the last, and all that is needed is in the plan or named', async () => {
  const geos = await GeosPlane.start();
  const isOver = (shape: Shape): boolean => !geos.isEmpty(geos.buffer(shape, -slackMm / 2, 4));
  const out = (inner: Shape, outer: Shape): boolean => isOver(geos.difference(inner, outer));
  for (let seed = 0; seed < jobs; seed++) {
    const { joint, answer } = randomPlan(seed);
    if (answer.reason !== null) continue;
    const cuts = [{ part: answer.part, cut: answer }];
    const all = answer.movingCut === null ? cuts : [...cuts, { part: 'moving' as const, cut: answer.movingCut }];
    for (const { part, cut } of all) {
      for (const { id, bands } of cut.sections) {
        for (const band of bands) {
          const shape = (loops: BandAnswer['loops']): Shape => geos.region(regionOf(loops), chordMm);
          const where = `seed ${seed}, ${part} ${id} ${band.depth}`;
          expect(out(shape(band.firstLoops), shape(band.loops)), `first line of ${where}`).toBe(false);
          expect(out(shape(band.loops), shape(band.lastLoops)), `planned line of ${where}`).toBe(false);
        }
      }
      // of both parts the fixed one is cut for less on purpose
      if (answer.movingCut === null)
        for (const section of joint[part].sections.filter(({ mayCut, depth }) => mayCut && depth !== null))
          expectNeedTaken(joint, part, section, cut.sections.find(({ id }) => id === section.id)?.bands ?? [], seed);
    }
    geos.free();
  }

  function expectNeedTaken(
    joint: Joint,
    part: 'fixed' | 'moving',
    section: Section,
    bands: readonly BandAnswer[],
    seed: number,
  ): void {
    const own = section.depth as DepthRange;
    const others = joint[part === 'fixed' ? 'moving' : 'fixed'].sections;
    const metal = geos.region(section.loops, chordMm);
    for (const instant of instantsOf(joint)) {
      for (const other of others) {
        if (other.depth === null) continue;
        const [f, m] = part === 'fixed' ? [own, other.depth] : [other.depth, own];
        const reach = reachOf(m, f, joint.fit.depthMarginMm, instant.standOffMm);
        const shared = { fromMm: Math.max(reach.fromMm, f.fromMm), toMm: Math.min(reach.toMm, f.toMm) };
        if (shared.toMm - shared.fromMm < 1e-5) continue;
        // a depth of the cut part within what is shared
        const middle = (shared.fromMm + shared.toMm) / 2;
        const depthMm =
          part === 'fixed'
            ? middle
            : Math.min(own.toMm - 1e-6, Math.max(own.fromMm + 1e-6, -middle - instant.standOffMm));
        const placed =
          part === 'fixed' ? moveRegion(other.loops, instant.at) : moveRegion(other.loops, inverse(instant.at));
        const near = geos.buffer(geos.region(placed, chordMm), instant.askedMm - slackMm, 32);
        const needed = geos.intersection(metal, near);
        const here = ({ depth }: { readonly depth: DepthRange | null }): boolean =>
          depth === null || (depth.fromMm < depthMm && depthMm < depth.toMm);
        const kept = [...joint[part].sections.filter((one) => !one.mayCut), ...joint[part].doNotCut].filter(here);
        const taken = bands
          .filter(({ depth }) => depth === null || (depth[0] <= depthMm && depthMm <= depth[1]))
          .map(({ loops }) => geos.region(regionOf(loops), chordMm));
        const rest = [...taken, ...kept.map(({ loops }) => geos.region(loops, chordMm))].reduce(
          (left, shape) => geos.difference(left, shape),
          needed,
        );
        expect(isOver(rest), `seed ${seed}, ${part} ${section.id} at ${depthMm}`).toBe(false);
      }
    }
  }
});
