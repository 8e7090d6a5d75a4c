import { sweptRegion } from '../../../src/geometry/motion/swept-region.ts';
import { identity } from '../../../src/geometry/plane/rigid.ts';
import { areaMm2 } from '../../../src/geometry/polygons/polygons.ts';
import type { Contest } from '../contest.ts';
import { type Pair, pairsOf, sampledPlacements, turnOf } from '../outlines.ts';
import type { Clipper } from '../peers/clipper.ts';
import type { Geos } from '../peers/geos.ts';
import { ringsOf } from '../peers/rings.ts';

/** By this much our sweep may err outward, mm. */
const toleranceMm = 0.01;
/** Copies leave scallops between them, as deep as this all round at the most. */
const scallopMm = 0.05;

/** What a flange covers on a turn of 15°: all of it on our side, on the other the union of 200 turned copies. */
export function* sweepContests(geos: Geos, clipper: Clipper): Generator<Contest> {
  for (const pair of pairsOf([100, 1000, 10_000])) yield againstCopies(pair, geos, clipper);
}

function againstCopies(pair: Pair, geos: Geos, clipper: Clipper): Contest {
  const rings = ringsOf(pair.moving);
  const motion = turnOf(pair);
  const peers = ['200 copies, geos-wasm', '200 copies, clipper2-wasm'];
  const asked = pair.edges === 10_000 && pair.name !== 'with arcs';
  return {
    edges: pair.edges,
    within: 2 * Math.PI * 180 * (scallopMm + toleranceMm),
    runs: {
      ours: () => areaMm2(sweptRegion(pair.moving, identity, motion, toleranceMm).polygons),
      [peers[0] as string]: () => {
        const union = geos.union(sampledPlacements(pair).map((placement) => geos.polygon(rings, placement)));
        const area = geos.areaMm2(union);
        geos.free(union);
        return area;
      },
      [peers[1] as string]: () => clipper.areaMm2(clipper.unionOfCopies(rings, sampledPlacements(pair))),
    },
    cases: peers.map((peer) => ({
      name: `swept region over 15°, ${pair.name}`,
      ours: 'ours',
      peer,
      ...(asked && peer === peers[0] ? { atLeast: 20 } : {}),
    })),
  };
}
