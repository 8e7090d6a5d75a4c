import { describe, expect, it } from 'vitest';
import { pairRule, pairsOn } from '../../src/clearance/pairs.ts';
import { standingAt } from '../../src/clearance/passings.ts';
import { sidesOf } from '../../src/clearance/solids.ts';
import { pointOnEdge } from '../../src/geometry/plane/edge.ts';
import { edgesOf, moveRegion, type Region } from '../../src/geometry/plane/loop.ts';
import { apply, rigid } from '../../src/geometry/plane/rigid.ts';
import { vec } from '../../src/geometry/plane/vec.ts';
import { drain } from '../../src/geometry/progress.ts';
import { home, legsThrough, positionAlong } from '../../src/job/path.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { findWays } from '../../src/ways/find-ways.ts';
import { routeHome } from '../../src/ways/route.ts';
import { stripsOf } from '../../src/ways/strips.ts';
import { freeTurns, type MapStrip, turnMap } from '../../src/ways/turn-map.ts';
import { contains, type TurnRange } from '../../src/ways/turns.ts';
import { widestWay } from '../../src/ways/widest-way.ts';
import { castingOf } from '../support/jobs.ts';
import { jointOf } from '../support/joints.ts';
import { GeosPlane, type Shape } from '../support/oracles/geos-plane.ts';
import { Random } from '../support/random.ts';
import { randomRegion } from '../support/random-outlines.ts';

const asked: TurnRange = { fromRad: -Math.PI / 4, toRad: Math.PI / 4 };
const arcsMm = 1e-3;
const jobs = 200;
const positions = 1000;

/** Two castings of a few sections each, everywhere about the axis, which share depth at some stand-offs. */
function randomWaysJob(random: Random, sizeMm: number): Joint {
  const depths = [
    [0, 12],
    [12, 50],
    [-30, 0],
    [-20, 15],
    [-45, -25],
  ] as const;
  const sections = (name: string, most: number) =>
    Array.from({ length: random.whole(1, most) }, (_, i) => ({
      id: `${name}-${i + 1}`,
      depth: random.pick(depths),
      mayCut: true,
      loops: moveRegion(
        randomRegion(random, sizeMm * random.between(0.3, 1)),
        rigid(random.between(-3, 3), apply(rigid(random.between(-3, 3), vec(0, 0)), vec(random.between(0, 120), 0))),
      ),
    }));
  return jointOf({
    fixed: castingOf({ name: 'block', sections: sections('fixed', 3) }),
    moving: castingOf({ name: 'housing', sections: sections('moving', 3) }),
    clearance: random.between(0.3, 4),
    depthMarginMm: random.pick([0, 1.5]),
    nothingShares: true,
  });
}

/** The least distance at a position, by the static kernel: null where nothing shares depth, 0 where metal meets. */
function distanceAt(joint: Joint, standOffMm: number, turnRad: number, shift = home.shift): number | null {
  const pairs = pairsOn(sidesOf(joint), [standingAt({ standOffMm, turnRad, shift })], pairRule(joint));
  const own = pairs
    .filter(({ view }) => view === 'as-measured')
    .map(({ passage }) => (passage.state === 'clear' ? passage.distanceMm : 0));
  return own.length === 0 ? null : Math.min(...own.map((mm) => mm ?? Number.POSITIVE_INFINITY));
}

const kindAt = ({ free, near, foul }: MapStrip, turnRad: number): 'free' | 'near' | 'foul' | null => {
  const holds = (ranges: readonly TurnRange[]): boolean => ranges.some((range) => contains(range, turnRad));
  return holds(free) ? 'free' : holds(foul) ? 'foul' : holds(near) ? 'near' : null;
};

describe('the map of turns and stand-offs', () => {
  it('says at random positions of 200 jobs what the static kernel says, to its bound', () => {
    const random = new Random(15);
    const seen = { free: 0, near: 0, foul: 0 };
    for (let job = 0; job < jobs; job++) {
      const joint = randomWaysJob(random, 60);
      const { wayInMm } = joint.fit.clearance;
      const map = turnMap(stripsOf(joint), { clearanceMm: wayInMm, arcsMm }, asked);
      for (let k = 0; k < positions; k++) {
        const strip = random.pick(map);
        const standOffMm = random.between(strip.strip.fromMm, strip.strip.toMm);
        const turnRad = random.between(asked.fromRad, asked.toRad);
        const told = kindAt(strip, turnRad);
        const mm = distanceAt(joint, standOffMm, turnRad) ?? Number.POSITIVE_INFINITY;
        const where = `job ${job}: stand-off ${standOffMm}, turn ${turnRad}, ${mm} mm, told ${told}`;
        if (told !== null) seen[told] += 1;
        if (told === 'free') expect(mm, where).toBeGreaterThanOrEqual(wayInMm - 1e-6);
        if (told === 'near') expect(mm, where).toBeLessThanOrEqual(wayInMm + arcsMm + 1e-5);
        if (told === 'near') expect(mm, where).toBeGreaterThanOrEqual(0);
        if (told === 'foul') expect(mm, where).toBeLessThanOrEqual(1e-6);
      }
    }
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(1500);
  }, 600_000);

  it('and with the part carried aside, at random positions of 100 jobs', () => {
    const random = new Random(21);
    const seen = { free: 0, blocked: 0 };
    for (let job = 0; job < 100; job++) {
      const joint = randomWaysJob(random, 60);
      const { wayInMm } = joint.fit.clearance;
      const strips = stripsOf(joint);
      for (let k = 0; k < 5; k++) {
        const shift = vec(random.between(-40, 40), random.between(-40, 40));
        const free = freeTurns(strips, { clearanceMm: wayInMm, arcsMm }, asked, 'untraced-too', shift);
        for (let n = 0; n < 100; n++) {
          const i = random.whole(0, strips.length - 1);
          const { fromMm, toMm } = strips[i] as (typeof strips)[number];
          const standOffMm = random.between(fromMm, toMm);
          const turnRad = random.between(asked.fromRad, asked.toRad);
          const isFree = (free[i] ?? []).some((range) => contains(range, turnRad));
          const mm = distanceAt(joint, standOffMm, turnRad, shift) ?? Number.POSITIVE_INFINITY;
          const where = `job ${job}: stand-off ${standOffMm}, turn ${turnRad}, shift ${shift.x} ${shift.y}, ${mm} mm`;
          seen[isFree ? 'free' : 'blocked'] += 1;
          if (isFree) expect(mm, where).toBeGreaterThanOrEqual(wayInMm - 1e-6);
          else expect(mm, where).toBeLessThanOrEqual(wayInMm + arcsMm + 1e-5);
        }
      }
    }
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(5000);
  }, 600_000);

  it('is never free where GEOS finds metal nearer than asked, nor blocked where it finds more', async () => {
    const geos = await GeosPlane.start();
    const random = new Random(16);
    const chordMm = 2e-3;
    for (let job = 0; job < 60; job++) {
      const joint = randomWaysJob(random, 60);
      const { wayInMm } = joint.fit.clearance;
      const strips = stripsOf(joint);
      const map = turnMap(strips, { clearanceMm: wayInMm, arcsMm }, asked);
      for (let k = 0; k < 40; k++) {
        const strip = random.pick(map);
        const turnRad = random.between(asked.fromRad, asked.toRad);
        const told = kindAt(strip, turnRad);
        const mm = Math.min(
          Number.POSITIVE_INFINITY,
          ...strip.strip.pairs.map(({ fixed, moving }) =>
            geos.distanceMm(shapeOf(geos, fixed.loops, 0, chordMm), shapeOf(geos, moving.loops, turnRad, chordMm)),
          ),
        );
        const where = `job ${job}: turn ${turnRad}, ${mm} mm, told ${told}`;
        if (told === 'free') expect(mm, where).toBeGreaterThanOrEqual(wayInMm - 2 * chordMm);
        else expect(mm, where).toBeLessThanOrEqual(wayInMm + arcsMm + 2 * chordMm);
        geos.free();
      }
    }
  }, 600_000);
});

function shapeOf(geos: GeosPlane, loops: Region, turnRad: number, chordMm: number): Shape {
  const turn = rigid(turnRad, vec(0, 0));
  return geos.shape(
    loops.map((loop) =>
      edgesOf(loop).flatMap((edge) => {
        if (edge.kind === 'line') return [apply(turn, edge.a)];
        const parts = Math.max(1, Math.ceil(Math.abs(edge.sweepRad) / Math.sqrt((8 * chordMm) / edge.radius)));
        return Array.from({ length: parts }, (_, i) => apply(turn, pointOnEdge(edge, i / parts)));
      }),
    ),
  );
}

/** Whether home is reached over a fine grid of positions that are free by the static kernel, each from one beside it. */
function flooded(joint: Joint, clearanceMm: number): boolean {
  const strips = stripsOf(joint);
  const columns = 181;
  const turns = Array.from(
    { length: columns },
    (_, i) => asked.fromRad + ((asked.toRad - asked.fromRad) * i) / (columns - 1),
  );
  const standOffs = strips.map(({ fromMm, toMm }) => (fromMm + toMm) / 2);
  const free = standOffs.map((mm) =>
    turns.map((turnRad) => (distanceAt(joint, mm, turnRad) ?? Number.POSITIVE_INFINITY) >= clearanceMm),
  );
  // between two neighbours of a row it is clear where both are clear by as much as a point moves from one to the other
  const reached = new Set<number>();
  const open = turns.map((_, i) => [standOffs.length - 1, i] as const);
  for (const [row, column] of open) {
    const key = row * columns + column;
    if (reached.has(key) || free[row]?.[column] !== true) continue;
    reached.add(key);
    open.push([row - 1, column], [row + 1, column], [row, column - 1], [row, column + 1]);
  }
  return reached.has(Math.floor(columns / 2));
}

describe('whether a way exists', () => {
  it('is found wherever a fine grid floods home, and nowhere that its widest way does not keep what is said, in 300 jobs', () => {
    const random = new Random(17);
    const seen = { both: 0, neither: 0, onlyFound: 0 };
    for (let job = 0; job < 300; job++) {
      const joint = randomWaysJob(random, 30);
      const strips = stripsOf(joint);
      const { wayInMm } = joint.fit.clearance;
      const found = routeHome(freeTurns(strips, { clearanceMm: wayInMm, arcsMm }, asked, 'untraced-too')) !== null;
      // half a step of the grid at the farthest point, so that the grid invents no way
      const farMm = 180;
      const isFlooded = flooded(joint, wayInMm + arcsMm + (farMm * (asked.toRad - asked.fromRad)) / 360);
      expect(isFlooded && !found, `job ${job}: the grid found a way that is not told`).toBe(false);
      if (found) {
        const widest = drain(widestWay(joint, strips, asked));
        expect(widest?.clearanceMm ?? Number.POSITIVE_INFINITY, `job ${job}`).toBeGreaterThanOrEqual(wayInMm - 1e-3);
      }
      seen[found ? (isFlooded ? 'both' : 'onlyFound') : 'neither'] += 1;
    }
    expect(seen.both).toBeGreaterThan(40);
    expect(seen.neither).toBeGreaterThan(40);
  }, 900_000);
});

describe('a way with the part carried aside at first', () => {
  it('is told of random jobs only where it keeps the clearance all along, by positions measured one by one', () => {
    const random = new Random(22);
    let found = 0;
    for (let job = 0; job < 120; job++) {
      const joint = randomWaysJob(random, 45);
      const { lifts, exists } = drain(findWays(joint, asked, { mostMm: 60, stepMm: 20 }));
      if (exists === true) expect(lifts).toBeNull();
      const way = lifts?.way ?? null;
      if (way === null) continue;
      found += 1;
      for (const leg of legsThrough(way.positions) ?? []) {
        for (let i = 0; i <= 100; i++) {
          const { standOffMm, turnRad, shift } = positionAlong(leg, i / 100);
          const mm = distanceAt(joint, standOffMm, turnRad, shift) ?? Number.POSITIVE_INFINITY;
          const where = `job ${job}: stand-off ${standOffMm}, turn ${turnRad}, shift ${shift.x} ${shift.y}`;
          expect(mm, where).toBeGreaterThanOrEqual(joint.fit.clearance.wayInMm - 1e-3);
        }
      }
    }
    expect(found).toBeGreaterThan(5);
  }, 1_200_000);
});
