import { leastDistance } from '../../../src/geometry/motion/least-distance.ts';
import { still } from '../../../src/geometry/motion/motion.ts';
import { buildOutlineTree } from '../../../src/geometry/motion/outline-tree.ts';
import { identity, type Rigid, rigid } from '../../../src/geometry/plane/rigid.ts';
import { polar, vec } from '../../../src/geometry/plane/vec.ts';
import type { Contest } from '../contest.ts';
import { flangeInRing, nearlyConcentric, type Pair, pairsOf } from '../outlines.ts';
import { flattenDistance, flattenPolygon } from '../peers/flatten.ts';
import type { Geos } from '../peers/geos.ts';
import { jstsDistance, jstsPolygon } from '../peers/jsts.ts';
import { chordMm, ringsOf } from '../peers/rings.ts';

/** All round and a little aside, so that no side can lean on its last answer. */
const positions: readonly Rigid[] = [0, 1, 2, 3].map((i) => rigid(i * 1.7, polar(vec(0, 0), 0.5, i)));

/** The least distance of two outlines that stand still. The peers are handed the moved outline ready made. */
export function* distanceContests(geos: Geos): Generator<Contest> {
  for (const pair of pairsOf([100, 1000, 10_000])) yield* atPositions(pair, geos);
  for (const pair of [flangeInRing('smooth', 100_000), flangeInRing('noisy', 100_000)]) yield* atPositions(pair, geos);
  yield* nearlyConcentricContests(10_000, geos);
}

function* atPositions(pair: Pair, geos: Geos): Generator<Contest> {
  const inGeos = geosRuns(pair, geos);
  const runs = { ours: ourDistances(pair, positions), ...inGeos.runs, jsts: jstsRun(pair), ...flattenRuns(pair) };
  const peers = Object.keys(runs).slice(1);
  const asked = pair.edges === 10_000 && pair.name !== 'with arcs';
  yield {
    edges: pair.edges,
    questions: positions.length,
    within: positions.length * (pair.name === 'with arcs' ? 2 * chordMm : 1e-6),
    runs,
    cases: peers.map((peer) => ({
      name: `least distance at a position, ${pair.name}`,
      ours: 'ours',
      peer,
      ...(asked && peer === 'geos-wasm, plain' ? { atLeast: 8 } : {}),
    })),
  };
  inGeos.free();
}

function ourDistances({ fixed, moving }: Pair, at: readonly Rigid[]): () => number {
  const [f, m] = [buildOutlineTree(fixed), buildOutlineTree(moving)];
  return () => sum(at, (position) => leastDistance(f, m, position, still).distanceMm);
}

/** The plain distance takes every edge against every other: left out where that would be all one waits for. */
function geosRuns(pair: Pair, geos: Geos, at = positions) {
  const fixed = geos.polygon(ringsOf(pair.fixed), identity);
  const moving = at.map((position) => geos.polygon(ringsOf(pair.moving), position));
  const prepared = geos.prepare(fixed);
  const bearable = pair.edges <= 1000 || (pair.edges === 10_000 && pair.name === 'smooth');
  return {
    runs: {
      ...(bearable ? { 'geos-wasm, plain': () => sum(moving, (m) => geos.distance(fixed, m)) } : {}),
      'geos-wasm, indexed': () => sum(moving, (m) => geos.indexedDistance(fixed, m)),
      'geos-wasm, prepared': () => sum(moving, (m) => geos.preparedDistance(prepared, m)),
    },
    free: () => {
      geos.freePrepared(prepared);
      geos.free(fixed, ...moving);
    },
  };
}

function jstsRun(pair: Pair): () => number {
  const fixed = jstsPolygon(ringsOf(pair.fixed), identity);
  const moving = positions.map((position) => jstsPolygon(ringsOf(pair.moving), position));
  return () => sum(moving, (m) => jstsDistance(fixed, m));
}

function flattenRuns(pair: Pair): Record<string, () => number> {
  if (pair.edges > 1000) return {};
  const fixed = flattenPolygon(pair.fixed, identity);
  const moving = positions.map((position) => flattenPolygon(pair.moving, position));
  return { '@flatten-js/core': () => sum(moving, (m) => flattenDistance(fixed, m)) };
}

/** Where every edge is nearly as near as the nearest: against the peer, and against what is ordinary. */
function* nearlyConcentricContests(edges: number, geos: Geos): Generator<Contest> {
  // turned about the centre only, so that they stay nearly concentric
  const turned = positions.map(({ turnRad }) => rigid(turnRad, vec(0, 0)));
  const pair = nearlyConcentric(edges);
  const ours = ourDistances(pair, turned);
  const name = 'least distance at a position, nearly concentric';
  const peer = 'geos-wasm, prepared';
  const inGeos = geosRuns({ ...pair, name: 'nearly concentric' }, geos, turned);
  const runs = { ours, [peer]: inGeos.runs[peer] };
  yield {
    edges,
    questions: positions.length,
    within: positions.length * 1e-6,
    runs,
    cases: [{ name, ours: 'ours', peer }],
  };
  inGeos.free();
  yield {
    edges,
    questions: positions.length,
    within: Number.POSITIVE_INFINITY,
    runs: { ours, 'ours, smooth': ourDistances(flangeInRing('smooth', edges), positions) },
    cases: [{ name, ours: 'ours', peer: 'ours, smooth' }],
  };
}

const sum = <T>(items: readonly T[], figure: (item: T) => number): number =>
  items.reduce((total, item) => total + figure(item), 0);
