import { still } from '../../../src/geometry/motion/motion.ts';
import { buildOutlineTree } from '../../../src/geometry/motion/outline-tree.ts';
import { leastDistance } from '../../../src/geometry/motion/passage.ts';
import { type Rigid, rigid } from '../../../src/geometry/rigid.ts';
import { polar, vec } from '../../../src/geometry/vec.ts';
import type { Contest } from '../contest.ts';
import { flangeInRing, nearlyConcentric, type Pair, pairs } from '../outlines.ts';
import { flattenDistance, flattenPolygon } from '../peers/flatten.ts';
import type { Geos } from '../peers/geos.ts';
import { jstsDistance, jstsPolygon } from '../peers/jsts.ts';
import { chordMm, ringsOf } from '../peers/rings.ts';

/** All round and a little aside, so that no side can lean on its last answer. */
const positions: readonly Rigid[] = [0, 1, 2, 3].map((i) => rigid(i * 1.7, polar(vec(0, 0), 0.5, i)));

/** The least distance of two outlines that stand still. The peers are given the moved outline ready made. */
export function* distanceContests(geos: Geos): Generator<Contest> {
  for (const pair of pairs([100, 1000, 10_000, 100_000])) yield* atPositions(pair, geos);
  yield concentric(10_000);
}

function* atPositions(pair: Pair, geos: Geos): Generator<Contest> {
  const fixed = buildOutlineTree(pair.fixed);
  const moving = buildOutlineTree(pair.moving);
  const [fixedRings, movingRings] = [ringsOf(pair.fixed), ringsOf(pair.moving)];
  const fixedInGeos = geos.polygon(fixedRings, rigid(0, vec(0, 0)));
  const inGeos = positions.map((position) => geos.polygon(movingRings, position));
  const prepared = geos.prepare(fixedInGeos);
  const fixedInJsts = jstsPolygon(fixedRings, rigid(0, vec(0, 0)));
  const inJsts = positions.map((position) => jstsPolygon(movingRings, position));
  const big = pair.edges > 10_000;
  const arcs = pair.name === 'with arcs';
  const target = pair.edges === 10_000 && !arcs ? { atLeast: 8 } : {};
  yield {
    name: `least distance at a position, ${pair.name}`,
    edges: pair.edges,
    questions: positions.length,
    within: positions.length * (arcs ? 2 * chordMm : 1e-6),
    ours: () => sum(positions, (position) => leastDistance(fixed, moving, position, still).distanceMm),
    peers: [
      ...(big ? [] : [{ name: 'geos-wasm, plain', run: () => sum(inGeos, (g) => geos.distance(fixedInGeos, g)) }]),
      { name: 'geos-wasm, indexed', run: () => sum(inGeos, (g) => geos.indexedDistance(fixedInGeos, g)), ...target },
      { name: 'geos-wasm, prepared', run: () => sum(inGeos, (g) => geos.preparedDistance(prepared, g)) },
      { name: 'jsts', run: () => sum(inJsts, (g) => jstsDistance(fixedInJsts, g)) },
      ...(pair.edges > 1000 ? [] : [flatten(pair)]),
    ],
  };
  geos.freePrepared(prepared);
  geos.free(fixedInGeos, ...inGeos);
}

function flatten(pair: Pair): Contest['peers'][number] {
  const fixed = flattenPolygon(pair.fixed, rigid(0, vec(0, 0)));
  const moving = positions.map((position) => flattenPolygon(pair.moving, position));
  return { name: '@flatten-js/core', run: () => sum(moving, (polygon) => flattenDistance(fixed, polygon)) };
}

/** Nearly concentric circles against the ordinary case, both ours. */
function concentric(edges: number): Contest {
  const [circles, flange] = [nearlyConcentric(edges), flangeInRing('smooth', edges)].map(({ fixed, moving }) => {
    const [f, m] = [buildOutlineTree(fixed), buildOutlineTree(moving)];
    return () => sum(positions, (position) => leastDistance(f, m, { ...position, shift: vec(0, 0) }, still).distanceMm);
  }) as [() => number, () => number];
  return {
    name: 'least distance at a position, nearly concentric',
    edges,
    questions: positions.length,
    within: Number.POSITIVE_INFINITY,
    ours: circles,
    peers: [{ name: 'ours, smooth', run: flange }],
  };
}

const sum = <T>(items: readonly T[], figure: (item: T) => number): number =>
  items.reduce((total, item) => total + figure(item), 0);
