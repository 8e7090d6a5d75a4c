import { describe, expect, it } from 'vitest';
import { matingRule } from '../../src/clearance/passings.ts';
import { reachOf } from '../../src/clearance/shared-depth.ts';
import { boxOfRegion } from '../../src/geometry/plane/region-box.ts';
import { apply, inverse, rigid } from '../../src/geometry/plane/rigid.ts';
import { type Vec, vec } from '../../src/geometry/plane/vec.ts';
import { drain } from '../../src/geometry/progress.ts';
import type { DepthRange, Section } from '../../src/job/casting.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { leastMetal } from '../../src/ways/cheapest/least-metal.ts';
import { metalModel } from '../../src/ways/cheapest/metal-model.ts';
import { metalMm3, passingMm3, type WayBox } from '../../src/ways/cheapest/way-cost.ts';
import { boundaryDistance, contains, type Solid, solidOf } from '../support/oracles/solid.ts';
import { Random } from '../support/random.ts';
import { rimJob } from '../support/rim-job.ts';

const deg = Math.PI / 180;
const asked = { fromRad: -30 * deg, toRad: 30 * deg };

/** One turn before home, or more. */
const wayOf = (turnsDeg: readonly number[], standOffsMm: readonly number[]): WayBox => ({
  turns: turnsDeg.map((turn) => ({ from: turn * deg, to: turn * deg })),
  standOffs: standOffsMm.map((mm) => ({ from: mm, to: mm })),
});

/**
 * The same metal counted point by point: a point of a section at a depth goes if at any of many positions of the way the
 * other part comes nearer to it than asked there.
 */
function countedMm3(joint: Joint, { turns, standOffs }: WayBox, pitchMm: number): number {
  const positions = positionsOf(
    turns.map(({ from }) => from),
    standOffs.map(({ from }) => from),
  );
  return joint.fixed.sections.reduce((sum, section) => sum + countedOf(joint, section, positions, pitchMm), 0);
}

interface Stay {
  readonly turnRad: number;
  readonly inMm: number;
  readonly outMm: number;
}

/** Slides, and turns in steps of a twentieth of a degree. */
function positionsOf(turns: readonly number[], standOffs: readonly number[]): Stay[] {
  const stays: Stay[] = [];
  let outMm = 1e6;
  for (const [i, atMm] of standOffs.entries()) {
    const [from, to] = [turns[i] as number, turns[i + 1] ?? 0];
    stays.push({ turnRad: from, inMm: atMm, outMm });
    const steps = Math.max(1, Math.ceil(Math.abs(to - from) / (0.05 * deg)));
    for (let k = 0; k <= steps; k++) stays.push({ turnRad: from + ((to - from) * k) / steps, inMm: atMm, outMm: atMm });
    outMm = atMm;
  }
  return [...stays, { turnRad: 0, inMm: 0, outMm }];
}

function countedOf(joint: Joint, section: Section, stays: readonly Stay[], pitchMm: number): number {
  const { minX, minY, maxX, maxY } = boxOfRegion(section.loops);
  const depth = section.depth as DepthRange;
  let mm3 = 0;
  for (let x = minX + pitchMm / 2; x < maxX; x += pitchMm) {
    for (let y = minY + pitchMm / 2; y < maxY; y += pitchMm) {
      const p = vec(x, y);
      if (contains(solidAs(section), p)) mm3 += pitchMm ** 2 * depthCut(joint, section, depth, p, stays);
    }
  }
  return mm3;
}

const solids = new Map<Section, Solid>();
function solidAs(section: Section): Solid {
  const solid = solids.get(section) ?? solidOf(section.loops);
  solids.set(section, solid);
  return solid;
}

/** Over how much of its depth a point of a section goes, mm. */
function depthCut(joint: Joint, section: Section, depth: DepthRange, p: Vec, stays: readonly Stay[]): number {
  const ranges: [number, number][] = [];
  for (const other of joint.moving.sections) {
    const [own, tool] = [section, other].map((one) => ({
      depth: one.depth as DepthRange,
      whole: one.depth as DepthRange,
      depthErrorMm: 0,
    })) as [Parameters<typeof reachOf>[0], Parameters<typeof reachOf>[0]];
    const reach = reachOf(tool, own, matingRule(joint), 'as-measured');
    for (const { turnRad, inMm, outMm } of stays) {
      const range: [number, number] = [
        Math.max(depth.fromMm, -outMm - reach.toMm),
        Math.min(depth.toMm, -inMm - reach.fromMm),
      ];
      if (range[0] >= range[1]) continue;
      const there = apply(inverse(rigid(turnRad, vec(0, 0))), p);
      const near = boundaryDistance(solidAs(other), there) < joint.fit.clearance.wayInMm;
      if (near || contains(solidAs(other), there)) ranges.push(range);
    }
  }
  let [sum, until] = [0, Number.NEGATIVE_INFINITY];
  for (const [from, to] of ranges.toSorted(([a], [b]) => a - b)) {
    if (to > until) sum += to - Math.max(from, until);
    until = Math.max(until, to);
  }
  return sum;
}

describe('the metal that a way takes', () => {
  it('is what a count of points says, and never surely more, in 60 ways of 20 jobs', () => {
    const random = new Random(21);
    for (let job = 0; job < 20; job++) {
      const joint = rimJob(random);
      const targets = metalModel(joint, 'fixed');
      for (const turns of [0, 1, 2]) {
        const standOffs = Array.from({ length: turns }, () => random.between(0, 50)).sort((a, b) => b - a);
        const way = wayOf(
          Array.from({ length: turns }, () => random.between(-30, 30)),
          standOffs,
        );
        const counted = countedMm3(joint, way, 0.5);
        const told = metalMm3(targets, way, 'middle');
        const where = `job ${job}, ${JSON.stringify(way)}: counted ${counted}, told ${told}`;
        expect(Math.abs(told - counted), where).toBeLessThanOrEqual(20 + 0.02 * counted);
        expect(metalMm3(targets, way, 'surely'), where).toBeLessThanOrEqual(20 + 1.02 * counted);
      }
    }
  }, 600_000);
});

describe('the cheapest way of one turn', () => {
  it('is within 1 % of the best of a grid of 0.5° and 1 mm, and no way of the grid is below its bound, in 60 jobs', () => {
    const random = new Random(22);
    const astray = new Random(23);
    const narrow = { fromRad: (-2 * Math.PI) / 180, toRad: (2 * Math.PI) / 180 };
    let [saved, bounded] = [0, 0];
    for (let job = 0; job < 60; job++) {
      const joint = rimJob(random);
      const targets = metalModel(joint, 'fixed');
      const standOffs = levels(targets);
      const { best, boundMm3 } = drain(leastMetal(targets, asked, standOffs, 1, 100));
      let least = metalMm3(targets, wayOf([], []), 'middle');
      const straight = least;
      for (let turn = -30; turn <= 30; turn += 0.5) {
        for (let mm = 0; mm <= 60; mm += 1) least = Math.min(least, metalMm3(targets, wayOf([turn], [mm]), 'middle'));
      }
      const where = `job ${job}: found ${best.mm3}, grid ${least}, bound ${boundMm3}`;
      expect(best.mm3, where).toBeLessThanOrEqual(1.01 * least + 1);
      expect(boundMm3, where).toBeLessThanOrEqual(least + 1e-6);
      // the bound for any number of turns, of few enough degrees that something is in every way
      const passing = passingMm3(targets, narrow);
      for (let k = 0; k < 100; k++) {
        const turns = [0, 0, 0].map(() => astray.between(-2, 2));
        const at = [0, 0, 0].map(() => astray.between(0, 60)).sort((one, other) => other - one);
        expect(passing, where).toBeLessThanOrEqual(metalMm3(targets, wayOf(turns, at), 'middle', true) + 1e-6);
      }
      if (passing > 0) bounded += 1;
      if (best.mm3 < 0.9 * straight) saved += 1;
    }
    expect(saved).toBeGreaterThan(3);
    expect(bounded).toBeGreaterThan(3);
  }, 900_000);
});

const levels = (targets: ReturnType<typeof metalModel>): number[] => {
  const all = targets.flatMap(({ depth, tools }) =>
    tools.flatMap((tool) =>
      [depth.fromMm, depth.toMm].flatMap((mm) => [-mm - tool.depth.fromMm, -mm - tool.depth.toMm]),
    ),
  );
  return [...new Set([0, ...all])].filter((mm) => mm >= 0 && mm < 100).sort((a, b) => a - b);
};
