import { metalLeft } from '../../../src/clearance/metal-left.ts';
import { buildOutlineTree } from '../../../src/geometry/motion/outline-tree.ts';
import { passage } from '../../../src/geometry/motion/passage.ts';
import { sweptRegion } from '../../../src/geometry/motion/swept-region.ts';
import { offset } from '../../../src/geometry/offset.ts';
import { intersection, union } from '../../../src/geometry/polygon-engine.ts';
import { polygonise } from '../../../src/geometry/polygonise.ts';
import { areaMm2, loopsOf, outlinesOf } from '../../../src/geometry/polygons.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { identity } from '../../../src/geometry/rigid.ts';
import { toleranceMm } from '../../../src/grind/cut-band.ts';
import { planCut } from '../../../src/grind/plan-cut.ts';
import { castingOf } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';
import type { Contest } from '../contest.ts';
import { flangeInRing, type Pair, sampledPlacements, turnDeg, turnOf } from '../outlines.ts';
import type { Clipper } from '../peers/clipper.ts';
import { ringsOf } from '../peers/rings.ts';

const clearanceMm = 2;
/** The peer may round corners this coarsely: at our own tolerance its offset takes a minute. */
const peerChordMm = 0.01;
/** A hole so small that the flange must be let into it, here and there, to turn with that clearance. */
const holeMm = 183;

/**
 * What must come off a ring for a noisy flange to turn in it: swept, grown by the clearance, taken off, and what is
 * left checked over the whole turn. The whole cut plan, with its first and last line, is timed beside it. The peer
 * unites 200 turned copies, grows them and takes them off, and checks nothing.
 */
export function* reliefContests(clipper: Clipper): Generator<Contest> {
  for (const edges of [1000, 10_000]) yield againstCopies(flangeInRing('noisy', edges, holeMm), clipper);
}

function againstCopies(pair: Pair, clipper: Clipper): Contest {
  const peer = '200 copies, clipper2-wasm';
  const target = pair.edges === 10_000 ? { atLeast: 30 } : {};
  const inClipper = { fixed: ringsOf(pair.fixed), moving: ringsOf(pair.moving) };
  const joint = jointOf({
    fixed: castingOf({ sections: [{ depth: null, mayCut: true, traceErrorMm: 0, loops: pair.fixed }] }),
    moving: castingOf({ sections: [{ depth: null, traceErrorMm: 0, loops: pair.moving }] }),
    offerUp: [{ turn: -turnDeg }, {}],
    clearance: clearanceMm,
  });
  return {
    edges: pair.edges,
    within: 2 * Math.PI * 185 * 0.05,
    runs: {
      relief: () => reliefMm2(pair),
      plan: () =>
        drain(planCut(joint))
          .answer.sections.flatMap(({ bands }) => bands)
          .reduce((sum, band) => sum + band.areaMm2, 0),
      [peer]: () => {
        const copies = clipper.unionOfCopies(inClipper.moving, sampledPlacements(pair));
        const room = clipper.inflate(copies, clearanceMm, peerChordMm);
        return clipper.areaMm2(clipper.intersection(clipper.paths(inClipper.fixed, identity), room));
      },
    },
    cases: [
      { name: 'relief, noisy', ours: 'relief', peer, ...target },
      { name: 'the whole cut plan, noisy', ours: 'plan', peer },
    ],
  };
}

/** The area to take off; throws where what is left does not clear. */
function reliefMm2(pair: Pair): number {
  const motion = turnOf(pair);
  const metal = union(polygonise(pair.fixed, toleranceMm, 'outside'));
  const swept = sweptRegion(pair.moving, identity, motion, toleranceMm);
  const room = offset(outlinesOf(swept.polygons), clearanceMm, toleranceMm, 'outside');
  const relief = intersection(metal, room.polygons);
  const left = buildOutlineTree(loopsOf(metalLeft(metal, relief)));
  const { distanceMm } = passage(left, buildOutlineTree(pair.moving), identity, motion);
  if (distanceMm === null || distanceMm < clearanceMm) throw new Error(`the relief leaves only ${distanceMm} mm`);
  return areaMm2(relief);
}
