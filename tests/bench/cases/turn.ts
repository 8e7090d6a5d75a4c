import { buildOutlineTree } from '../../../src/geometry/motion/outline-tree.ts';
import { passage } from '../../../src/geometry/motion/passage.ts';
import { identity } from '../../../src/geometry/plane/rigid.ts';
import type { Contest } from '../contest.ts';
import { flangeInRing, nearlyConcentric, type Pair, pairsOf, turnOf } from '../outlines.ts';
import type { Geos } from '../peers/geos.ts';
import { inRings, sampledDistanceMm } from '../peers/sampled-distance.ts';

/** Half the way between positions 0.075° apart, at 180 mm: by so much at most can the nearest instant be missed. */
const sampledMm = 0.12;
const peer = '200 positions, geos-wasm prepared';

/** The clearance over a turn of 15°: exact on our side, at 200 positions on the other. */
export function* turnContests(geos: Geos): Generator<Contest> {
  for (const pair of pairsOf([100, 1000, 10_000])) yield againstSampling(pair, geos);
  for (const finish of ['smooth', 'noisy'] as const) yield againstSampling(flangeInRing(finish, 100_000), geos);
  yield nearlyConcentricAgainstOrdinary(10_000);
}

function againstSampling(pair: Pair, geos: Geos): Contest {
  const rings = inRings(pair);
  const [fixed, moving] = [buildOutlineTree(pair.fixed), buildOutlineTree(pair.moving)];
  const motion = turnOf(pair);
  const asked = pair.edges === 10_000;
  return {
    edges: pair.edges,
    within: sampledMm,
    runs: {
      'with build': () => clearanceWithBuildMm(pair),
      'built before': () => passage(fixed, moving, identity, motion).distanceMm ?? 0,
      [peer]: () => sampledDistanceMm(geos, rings, pair),
    },
    cases: [
      { name: `15° clearance with build, ${pair.name}`, ours: 'with build', peer, ...(asked ? { atLeast: 12 } : {}) },
      {
        name: `15° clearance, built before, ${pair.name}`,
        ours: 'built before',
        peer,
        ...(asked ? { atLeast: 50 } : {}),
      },
    ],
  };
}

const clearanceWithBuildMm = (pair: Pair): number =>
  passage(buildOutlineTree(pair.fixed), buildOutlineTree(pair.moving), identity, turnOf(pair)).distanceMm ?? 0;

function nearlyConcentricAgainstOrdinary(edges: number): Contest {
  const circles = nearlyConcentric(edges);
  const flange = flangeInRing('smooth', edges);
  const name = '15° clearance with build, nearly concentric';
  return {
    edges,
    within: Number.POSITIVE_INFINITY,
    runs: { ours: () => clearanceWithBuildMm(circles), 'ours, smooth': () => clearanceWithBuildMm(flange) },
    cases: [{ name, ours: 'ours', peer: 'ours, smooth', atLeast: 1 / 3 }],
  };
}
