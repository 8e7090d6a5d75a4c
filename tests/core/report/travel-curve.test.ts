import { describe, expect, it } from 'vitest';
import { checkJoint } from '../../../src/clearance/check.ts';
import { meetingFractions, stretchOf } from '../../../src/clearance/shared-depth.ts';
import { type TravelPiece, travelCurve } from '../../../src/clearance/travel-curve.ts';
import { motionAt } from '../../../src/geometry/motion/motion.ts';
import { nearestOnOutline } from '../../../src/geometry/motion/nearest-point.ts';
import { buildOutlineTree } from '../../../src/geometry/motion/outline-tree.ts';
import { pointOnEdge } from '../../../src/geometry/plane/edge.ts';
import { edgesOfRegion } from '../../../src/geometry/plane/loop.ts';
import { apply, compose, rigid } from '../../../src/geometry/plane/rigid.ts';
import { drain } from '../../../src/geometry/progress.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import { demoToDraw } from '../../support/demos.ts';
import { castingOf, disc } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';
import { Random } from '../../support/random.ts';
import { randomFit } from '../../support/random-fit.ts';

const least = (pieces: readonly TravelPiece[], of: (piece: TravelPiece) => number | null): number | null =>
  pieces.map(of).reduce((a, b) => (a === null || (b !== null && b < a) ? b : a), null);

const randomJoints = Array.from({ length: 12 }, (_, seed) => randomFit(new Random(900 + seed))).filter(
  ({ fit }) => fit.legs.length > 0,
);
const joints: readonly Joint[] = [demoToDraw('transfer-case').joint, demoToDraw('adapter').joint, ...randomJoints];

describe('the curve of clearance along the way in', () => {
  it.each(joints.map((joint, i) => [i, joint] as const))(
    'of job %i is at its lowest what the check answers',
    (_, joint) => {
      const { wayIn } = drain(checkJoint(joint));
      const { pieces } = drain(travelCurve(joint, 40));
      expect(least(pieces, ({ clearanceMm }) => clearanceMm)).toBe(wayIn?.clearanceMm ?? null);
      const worst = least(pieces, ({ worstClearanceMm }) => worstClearanceMm);
      // a foul is worse by as deep as it goes, which the curve does not tell
      if (wayIn?.state === 'fouls') expect(worst).toBeGreaterThanOrEqual(wayIn.worstClearanceMm ?? -Infinity);
      else expect(worst).toBe(wayIn?.worstClearanceMm ?? null);
    },
  );

  // measured point by point with the static distance, which knows nothing of motions
  it.each(joints.map((joint, i) => [i, joint] as const))('of job %i is nowhere above what is measured', (_, joint) => {
    for (const piece of drain(travelCurve(joint, 40)).pieces) {
      const sampled = [0.1, 0.5, 0.9].map((t) =>
        measuredAt(joint, piece.leg, piece.fromAt + t * (piece.toAt - piece.fromAt)),
      );
      const nearest = Math.min(...sampled);
      if (nearest < Infinity) expect(piece.clearanceMm ?? Infinity).toBeLessThanOrEqual(nearest + 1e-6);
    }
  });

  it('covers every leg from end to end, with 16 pieces at least', () => {
    const { fit } = joints[0] as Joint;
    const { pieces, askedMm } = drain(travelCurve(joints[0] as Joint));
    expect(askedMm).toBe(fit.clearance.wayInMm);
    for (const [i] of fit.legs.entries()) {
      const ofLeg = pieces.filter(({ leg }) => leg === i + 1);
      expect(ofLeg.length).toBeGreaterThanOrEqual(16);
      expect(ofLeg[0]?.fromAt).toBe(0);
      expect(ofLeg.at(-1)?.toAt).toBe(1);
      for (const [k, piece] of ofLeg.slice(1).entries()) expect(piece.fromAt).toBe(ofLeg[k]?.toAt);
    }
  });

  it('is none where no pair shares depth, a distance where one does', () => {
    // a pin of radius 10 comes down beside a post of radius 5, 30 away: 15 between them once they share depth
    const joint = jointOf({
      depthMarginMm: 0,
      fixed: castingOf({ sections: [{ id: 'post', depth: [-20, 0], loops: [disc(0, 0, 5)] }] }),
      moving: castingOf({ sections: [{ id: 'pin', depth: [-20, 0], loops: [disc(30, 0, 10)] }] }),
      offerUp: [{ standOff: 80 }, {}],
    });
    for (const { fromAt, toAt, clearanceMm } of drain(travelCurve(joint, 16)).pieces) {
      // they share depth below a stand-off of 40, the second half of the leg
      if (toAt <= 0.5) expect(clearanceMm).toBeNull();
      if (fromAt >= 0.5) expect(clearanceMm).toBeCloseTo(15, 6);
    }
  });
});

/** The least distance from points of the moving outlines to the fixed ones that share depth at an instant of a leg. */
function measuredAt({ fit, fixed, moving }: Joint, count: number, at: number): number {
  const leg = fit.legs[count - 1];
  if (leg === undefined) return Infinity;
  const standOffMm = leg.from.standOffMm + at * (leg.to.standOffMm - leg.from.standOffMm);
  const still = { from: { ...leg.from, standOffMm }, to: { ...leg.to, standOffMm } };
  const placed = compose(motionAt(leg.motion, at), rigid(leg.from.turnRad, leg.from.shift));
  const rule = { marginMm: fit.depthMarginMm, facesMate: true };
  const distances = fixed.sections.flatMap((f) => {
    const tree = buildOutlineTree(f.loops);
    return moving.sections
      .filter((m) => meetingFractions(stretchOf(f), stretchOf(m), still, rule, 'as-measured') !== null)
      .flatMap((m) =>
        edgesOfRegion(m.loops).map((edge) => nearestOnOutline(tree, apply(placed, pointOnEdge(edge, 0.3))).distanceMm),
      );
  });
  return Math.min(...distances);
}
