import type { BandAnswer } from '../../../src/answers/grind-answer.ts';
import { metalLeft } from '../../../src/geometry/cutting/metal-left.ts';
import { buildOutlineTree } from '../../../src/geometry/motion/outline-tree.ts';
import { passage } from '../../../src/geometry/motion/passage.ts';
import { sweptRegion } from '../../../src/geometry/motion/swept-region.ts';
import { circleLoop } from '../../../src/geometry/plane/loop.ts';
import { identity } from '../../../src/geometry/plane/rigid.ts';
import { polar, vec } from '../../../src/geometry/plane/vec.ts';
import { offset } from '../../../src/geometry/polygons/offset.ts';
import { intersection, union } from '../../../src/geometry/polygons/polygon-engine.ts';
import { polygonise } from '../../../src/geometry/polygons/polygonise.ts';
import { areaMm2, loopsOf, outlinesOf } from '../../../src/geometry/polygons/polygons.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import { toleranceMm } from '../../../src/plan/bands/tolerance.ts';
import { castingOf } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';
import { answerTo } from '../../support/plan-answer.ts';
import type { Contest } from '../contest.ts';
import { flangeInRing, type Pair, sampledPlacements, turnDeg, turnOf } from '../outlines.ts';
import type { Clipper } from '../peers/clipper.ts';
import { ringsOf } from '../peers/rings.ts';

const clearanceMm = 2;
/** The peer may round corners this coarsely: at our own tolerance its offset takes a minute. */
const peerChordMm = 0.01;
/** A plan with everything asked of it may take so many times as long as the relief alone. */
const mostTimesRelief = 8;
/** A hole so small that the flange must be let into it, here and there, to turn with that clearance. */
const holeMm = 183;

/**
 * What must come off a ring for a noisy flange to turn in it: swept, grown by the clearance, taken off, and what is
 * left checked over the whole turn. The whole cut plan, with its first and last line, is timed beside it, as are
 * plans with all that can be asked. The peer
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
    nothingShares: true,
    clearance: clearanceMm,
  });
  const full = everythingAsked(pair);
  return {
    edges: pair.edges,
    within: 2 * Math.PI * 185 * 0.05,
    runs: {
      relief: () => reliefMm2(pair),
      plan: () => plannedMm2(joint),
      'with everything': () => neededMm2(full),
      'straight edges': () => neededMm2(full, true),
      [peer]: () => {
        const copies = clipper.unionOfCopies(inClipper.moving, sampledPlacements(pair));
        const room = clipper.inflate(copies, clearanceMm, peerChordMm);
        return clipper.areaMm2(clipper.intersection(clipper.paths(inClipper.fixed, identity), room));
      },
    },
    cases: [
      { name: 'relief, noisy', ours: 'relief', peer, ...target },
      { name: 'the whole cut plan, noisy', ours: 'plan', peer },
      {
        name: 'the same with cutter, walls and both lines',
        ours: 'with everything',
        peer: 'relief',
        ...(pair.edges === 10_000 ? { atLeast: 1 / mostTimesRelief } : {}),
      },
      { name: 'the same with straight edges', ours: 'straight edges', peer: 'relief' },
    ],
  };
}

/** The job with all that a plan can be asked: a ball, tracing errors and so three lines, hollows with walls to keep. */
const everythingAsked = (pair: Pair): Joint =>
  jointOf({
    fixed: castingOf({
      sections: [{ depth: [0, 60], mayCut: true, loops: pair.fixed }],
      hollows: [0.3, 1.2, 2.4, 4].map((rad) => ({ keepWallMm: 5, loops: [circleLoop(polar(vec(0, 0), 205, rad), 6)] })),
    }),
    moving: castingOf({ sections: [{ depth: [-20, 0], loops: pair.moving }] }),
    offerUp: [{ turn: -turnDeg }, {}],
    nothingShares: true,
    clearance: clearanceMm,
    cutter: { radiusMm: 6, nose: 'ball', handErrorMm: 0.5, runOut: 'cut-past', stepoverMm: null },
    minWallMm: 4,
  });

const bandsOf = (joint: Joint, straight = false): BandAnswer[] =>
  answerTo({ ...joint, fit: { ...joint.fit, straight } }).sections.flatMap(({ bands }) => bands);

const plannedMm2 = (joint: Joint): number => bandsOf(joint).reduce((sum, { areaMm2: mm2 }) => sum + mm2, 0);

const neededMm2 = (joint: Joint, straight = false): number =>
  bandsOf(joint, straight).reduce((sum, { neededAreaMm2: mm2 }) => sum + mm2, 0);

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
