import { sweptRegion } from '../../../src/geometry/motion/swept-region.ts';
import { areaMm2 } from '../../../src/geometry/polygons.ts';
import { identity, rotationAbout } from '../../../src/geometry/rigid.ts';
import type { Contest } from '../contest.ts';
import { copies, type Pair, pairs, turnOf, turnRad } from '../outlines.ts';
import type { Clipper } from '../peers/clipper.ts';
import type { Geos } from '../peers/geos.ts';
import { ringsOf } from '../peers/rings.ts';

/** Our sweep errs outward by this much, mm. */
const toleranceMm = 0.01;

/** What a flange covers on a turn of 15°: all of it on our side, on the other the union of 200 turned copies. */
export function* sweepContests(geos: Geos, clipper: Clipper): Generator<Contest> {
  for (const pair of pairs([100, 1000, 10_000])) yield againstCopies(pair, geos, clipper);
}

function againstCopies(pair: Pair, geos: Geos, clipper: Clipper): Contest {
  const rings = ringsOf(pair.moving);
  const motion = turnOf(pair);
  const inGeos = (): number => {
    const union = geos.union(placements(pair).map((placement) => geos.polygon(rings, placement)));
    const area = geos.areaMm2(union);
    geos.free(union);
    return area;
  };
  const inClipper = (): number =>
    clipper.areaMm2(clipper.union(placements(pair).map((placement) => clipper.paths(rings, placement))));
  const target = pair.edges === 10_000 && pair.name !== 'with arcs' ? { atLeast: 20 } : {};
  return {
    name: `swept region over 15°, ${pair.name}`,
    edges: pair.edges,
    // copies leave scallops between them: a fair share of the noise, all round
    within: 2 * Math.PI * 180 * (0.05 + toleranceMm),
    rounds: 2,
    ours: () => areaMm2(sweptRegion(pair.moving, identity, motion, toleranceMm).polygons),
    peers: [
      { name: 'union of 200 copies, geos-wasm', run: inGeos, ...target },
      { name: 'union of 200 copies, clipper2-wasm', run: inClipper },
    ],
  };
}

export const placements = ({ pole }: Pair) =>
  Array.from({ length: copies }, (_, i) => rotationAbout(pole, (turnRad * i) / (copies - 1)));
