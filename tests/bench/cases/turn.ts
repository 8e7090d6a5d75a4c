import { buildOutlineTree } from '../../../src/geometry/motion/outline-tree.ts';
import { passage } from '../../../src/geometry/motion/passage.ts';
import { identity, rotationAbout } from '../../../src/geometry/rigid.ts';
import type { Contest } from '../contest.ts';
import { copies, flangeInRing, nearlyConcentric, type Pair, pairs, turnOf, turnRad } from '../outlines.ts';
import type { Geos } from '../peers/geos.ts';
import { type Ring, ringsOf } from '../peers/rings.ts';

/** Copies 0.075° apart can miss the nearest instant, at 180 mm, by this much at most. */
const sampledMm = 0.12;

/** The clearance over a turn of 15°, exact on our side, at 200 positions on the other. */
export function* turnContests(geos: Geos): Generator<Contest> {
  for (const pair of pairs([100, 1000, 10_000, 100_000])) yield* overTurn(pair, geos);
  yield nearlyConcentricAgainstOrdinary(10_000);
}

function* overTurn(pair: Pair, geos: Geos): Generator<Contest> {
  const [fixedRings, movingRings] = [ringsOf(pair.fixed), ringsOf(pair.moving)];
  const sampled = { name: '200 positions, geos-wasm prepared', run: () => sampledDistance(geos, fixedRings, movingRings, pair) };
  const contest = { edges: pair.edges, within: sampledMm, rounds: pair.edges > 10_000 ? 1 : 5 };
  const asked = pair.edges === 10_000;
  yield {
    ...contest,
    name: `exact 15° clearance with build, ${pair.name}`,
    ours: () => clearanceMm(pair),
    peers: [asked ? { ...sampled, atLeast: 12 } : sampled],
  };
  const [fixed, moving] = [buildOutlineTree(pair.fixed), buildOutlineTree(pair.moving)];
  const motion = turnOf(pair);
  yield {
    ...contest,
    name: `exact 15° clearance, built before, ${pair.name}`,
    ours: () => passage(fixed, moving, identity, motion).distanceMm ?? 0,
    peers: [asked ? { ...sampled, atLeast: 50 } : sampled],
  };
}

const clearanceMm = (pair: Pair): number =>
  passage(buildOutlineTree(pair.fixed), buildOutlineTree(pair.moving), identity, turnOf(pair)).distanceMm ?? 0;

function sampledDistance(geos: Geos, fixedRings: readonly Ring[], movingRings: readonly Ring[], pair: Pair): number {
  const fixed = geos.polygon(fixedRings, identity);
  const prepared = geos.prepare(fixed);
  let leastMm = Number.POSITIVE_INFINITY;
  for (let i = 0; i < copies; i++) {
    const moving = geos.polygon(movingRings, rotationAbout(pair.pole, (turnRad * i) / (copies - 1)));
    leastMm = Math.min(leastMm, geos.preparedDistance(prepared, moving));
    geos.free(moving);
  }
  geos.freePrepared(prepared);
  geos.free(fixed);
  return leastMm;
}

function nearlyConcentricAgainstOrdinary(edges: number): Contest {
  const circles = nearlyConcentric(edges);
  const flange = flangeInRing('smooth', edges);
  return {
    name: 'exact 15° clearance with build, nearly concentric',
    edges,
    within: Number.POSITIVE_INFINITY,
    ours: () => clearanceMm(circles),
    peers: [{ name: 'ours, smooth', run: () => clearanceMm(flange), atLeast: 1 / 3 }],
  };
}
