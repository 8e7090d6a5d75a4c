import type { BandAnswer, GrindAnswer } from '../../answers/grind-answer.ts';
import { checkJoint } from '../../clearance/check.ts';
import { verifyCheck } from '../../clearance/verify/verify.ts';
import { type Doubt, differing, doubt, type Verification } from '../../clearance/verify/verify-doubt.ts';
import { OutlineShape } from '../../clearance/verify/verify-shape.ts';
import type { LoopFile } from '../../files/part-file.ts';
import { vec } from '../../geometry/plane/vec.ts';
import type { Progress } from '../../geometry/progress.ts';
import { loopOf } from '../../job/lengths.ts';
import type { Joint } from '../../joint/joint.ts';
import type { CutPlan } from '../cut-plan.ts';
import { cutterDoubts } from './verify-cutter.ts';
import { guardDoubts } from './verify-guards.ts';

/** Loops are given to 1e-6 mm; lines of one band may run on one another. */
const onLineMm = 1e-4;

/**
 * Measures a plan again by other means than it was made by: the metal it leaves is followed on its way by the
 * self-check, the first line must lie in the planned cut and that in the last line, areas and volume are summed anew,
 * nothing that must stay may be cut and no wall be thinner than told, and the cutter must get to what is cut away. It samples, so it can find a plan wrong but never prove it right.
 */
export function* verifyPlan(joint: Joint, plan: CutPlan): Generator<Progress, Verification> {
  const { answer, afterCut } = plan;
  const { home, wayIn } = afterCut;
  const left = yield* checkJoint(plan.judged);
  const { doubts, looks } = yield* verifyCheck(plan.judged, { ...left, home, wayIn });
  const bands = answer.sections.flatMap((section) => section.bands);
  const parts = [
    { side: answer.part, planned: plan.part, cut: answer },
    ...(answer.movingCut === null || plan.movingPart === undefined
      ? []
      : [{ side: 'moving' as const, planned: plan.movingPart, cut: answer.movingCut }]),
  ];
  yield { step: 'verify what must stay', done: 0, of: 1 };
  const onParts = parts.flatMap(({ side, planned, cut }) => [
    ...guardDoubts(joint[side], cut, joint.fit),
    ...cutterDoubts(planned, plan.judged[side], cut, joint.fit.cutter),
  ]);
  return {
    doubts: [
      ...doubts,
      ...onParts,
      ...bands.flatMap(lineDoubts),
      ...bands.flatMap(areaDoubts),
      ...amountDoubts(answer),
    ],
    looks,
  };
}

/** The first line lies within the planned cut, and that within the last. */
function lineDoubts({ loops, firstLoops, lastLoops }: BandAnswer): Doubt[] {
  return [
    ...(reachesOut(firstLoops, loops) ? [doubt('first-line', 'plan', 'The first line leaves the planned cut.')] : []),
    ...(reachesOut(loops, lastLoops) ? [doubt('last-line', 'plan', 'The planned cut goes past the last line.')] : []),
  ];
}

function reachesOut(inner: readonly LoopFile[], outer: readonly LoopFile[]): boolean {
  if (inner.length === 0) return false;
  const shape = new OutlineShape(outer.map((loop) => loopOf(loop, 1)));
  return inner.flatMap(pointsOf).some(([x, y]) => shape.gapMm(vec(x, y), 1) > onLineMm);
}

const areaDoubts = ({ loops, areaMm2 }: BandAnswer): Doubt[] =>
  differing('cut-area', 'plan', 'Area of a band, mm²', areaMm2, areaOf(loops), 1e-3 + 1e-6 * areaMm2);

function amountDoubts({ sections, volumeMm3 }: GrindAnswer): Doubt[] {
  const bands = sections.flatMap((section) => section.bands);
  if (volumeMm3 === null || bands.some(({ depth }) => depth === null)) return [];
  const found = bands.reduce((sum, { depth, loops }) => sum + areaOf(loops) * (depth ? depth[1] - depth[0] : 0), 0);
  return differing('cut-volume', 'plan', 'Volume, mm³', volumeMm3, found, 1e-2 + 1e-6 * volumeMm3);
}

/** Holes wind against what they are in, so signed areas add up whichever way that is. */
const areaOf = (loops: readonly LoopFile[]): number =>
  Math.abs(loops.reduce((sum, loop) => sum + shoelaceMm2(pointsOf(loop)), 0));

/** Relief is given in straight edges only. */
function pointsOf(loop: LoopFile): (readonly [number, number])[] {
  return Array.isArray(loop) ? loop.map(([x, y]) => [x, y] as const) : [];
}

const shoelaceMm2 = (points: readonly (readonly [number, number])[]): number =>
  points.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length] as readonly [number, number];
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);
