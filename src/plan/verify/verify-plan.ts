import { checkJoint } from '../../clearance/check.ts';
import { verifyCheck } from '../../clearance/verify/verify.ts';
import { type Doubt, differing, doubt, type Verification } from '../../clearance/verify/verify-doubt.ts';
import { OutlineShape } from '../../clearance/verify/verify-shape.ts';
import { loopsOf, type Polygon, type Polygons } from '../../geometry/polygons/polygons.ts';
import type { Progress } from '../../geometry/progress.ts';
import type { Joint } from '../../joint/joint.ts';
import type { CutBand, PartCut } from '../part-cut.ts';
import type { PlanResult } from '../plan-result.ts';
import { arcDoubts } from './verify-arcs.ts';
import { cutterDoubts } from './verify-cutter.ts';
import { guardDoubts } from './verify-guards.ts';

/** The polygon engine gives lines to 1e-6 mm; lines of one band may run on one another. */
const onLineMm = 1e-4;

/**
 * Measures a plan again by other means than it was made by: the metal it leaves is followed on its way by the
 * self-check, the first line must lie in the planned cut and that in the last line, and each as it is given out in arcs
 * must keep to the safe side of its polygons, areas and volume are summed anew,
 * nothing that must stay may be cut and no wall be thinner than told, and the cutter must get to what is cut away. It samples, so it can find a plan wrong but never prove it right.
 */
export function* verifyPlan(joint: Joint, { cuts, judged, afterCut }: PlanResult): Generator<Progress, Verification> {
  const left = yield* checkJoint(judged);
  const { doubts, looks } = yield* verifyCheck(judged, { ...left, ...afterCut });
  yield { step: 'verify what must stay', done: 0, of: 1 };
  const { cutter } = joint.fit;
  const bands = cuts.flatMap(({ sections }) => sections).flatMap((section) => section.bands);
  return {
    doubts: [
      ...doubts,
      ...cuts.flatMap((cut) => [
        ...guardDoubts(joint[cut.part], cut, joint.fit),
        ...cutterDoubts(judged[cut.part], cut, cutter),
      ]),
      ...bands.flatMap(lineDoubts),
      ...bands.flatMap(arcDoubts),
      ...bands.flatMap(areaDoubts),
      ...cuts.flatMap(amountDoubts),
    ],
    looks,
  };
}

/** The first line lies within the planned cut, and that within the last. */
function lineDoubts({ planned, first, last }: CutBand): Doubt[] {
  return [
    ...(reachesOut(first, planned) ? [doubt('first-line', 'plan', 'The first line leaves the planned cut.')] : []),
    ...(reachesOut(planned, last) ? [doubt('last-line', 'plan', 'The planned cut goes past the last line.')] : []),
  ];
}

function reachesOut(inner: Polygons, outer: Polygons): boolean {
  if (inner.length === 0) return false;
  const shape = new OutlineShape(loopsOf(outer));
  return inner.flat().some((at) => shape.gapMm(at, 1) > onLineMm);
}

const areaDoubts = ({ planned, areaMm2 }: CutBand): Doubt[] =>
  differing('cut-area', 'plan', 'Area of a band, mm²', areaMm2, areaOf(planned), 1e-3 + 1e-6 * areaMm2);

function amountDoubts({ sections, volumeMm3 }: PartCut): Doubt[] {
  const bands = sections.flatMap((section) => section.bands);
  if (volumeMm3 === null || bands.some(({ depth }) => depth === null)) return [];
  const found = bands.reduce(
    (sum, { depth, planned }) => sum + areaOf(planned) * (depth ? depth.toMm - depth.fromMm : 0),
    0,
  );
  return differing('cut-volume', 'plan', 'Volume, mm³', volumeMm3, found, 1e-2 + 1e-6 * volumeMm3);
}

/** Holes wind against what they are in, so signed areas add up whichever way that is. */
const areaOf = (polygons: Polygons): number =>
  Math.abs(polygons.reduce((sum, polygon) => sum + shoelaceMm2(polygon), 0));

const shoelaceMm2 = (polygon: Polygon): number =>
  polygon.reduce((sum, { x, y }, i) => {
    const next = polygon[(i + 1) % polygon.length] ?? { x, y };
    return sum + (x * next.y - next.x * y) / 2;
  }, 0);
