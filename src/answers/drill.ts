import type { DrillResult } from '../drill/drill-result.ts';
import type { JudgedHole } from '../drill/planned-holes.ts';
import { round6, roundPoint6 } from '../geometry/plane/rounding.ts';
import type { DepthRange } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import type { DrillAnswer } from './drill-answer.ts';
import { roundDegrees, roundOrNull } from './rounded.ts';

/** Holes to be drilled as JSON, the answer of `fettle drill --json`: mm and degrees, rounded to 1e-6. */
export function drillAnswer(
  joint: Joint,
  { refusal, rules, handIsShown, isCut, planned, transfer, bolts }: DrillResult,
): DrillAnswer {
  return {
    format: 'fettle-drill/1',
    title: joint.fit.title,
    refusal,
    rules,
    handIsShown,
    isCut,
    planned: planned.map(holeAnswer),
    marked: transfer.marked.map(({ largestMm, moveMm, ...judged }) => ({
      ...holeAnswer(judged),
      largestMm: roundOrNull(largestMm),
      moveMm: roundOrNull(moveMm),
    })),
    met: transfer.met.map((one) => ({ ...one, offMm: round6(one.offMm) })),
    bolts: {
      paired: bolts.paired,
      met: bolts.met,
      marked: bolts.marked,
      longest: bolts.longest && {
        from: bolts.longest.from,
        to: bolts.longest.to,
        mm: round6(bolts.longest.mm),
        deg: roundDegrees(bolts.longest.rad),
      },
    },
  };
}

const depthAnswer = (depth: DepthRange | null): [number, number] | null =>
  depth && [round6(depth.fromMm), round6(depth.toMm)];

const holeAnswer = ({ part, hole, verdict, diameterMm, metal, spotFace, headRoom, ...place }: JudgedHole) => ({
  part,
  hole: hole.id,
  verdict,
  diameterMm: roundOrNull(diameterMm),
  at: roundPoint6(hole.at),
  inDrawing: roundPoint6(place.inDrawing),
  radiusMm: round6(place.radiusMm),
  angleDeg: roundDegrees(place.angleRad),
  dividers: place.dividers.map(({ from, mm }) => ({ from, mm: round6(mm) })),
  stands: metal?.stands ?? null,
  run: depthAnswer(metal?.run ?? null),
  without: (metal?.without ?? []).map(depthAnswer),
  unsized: [...(metal?.unsized ?? [])],
  walls: (metal?.walls ?? []).map((wall) => ({
    beside: wall.beside,
    name: wall.name,
    isCut: wall.isCut,
    wallMm: round6(wall.wallMm),
    wantedMm: round6(wall.wantedMm),
    errorMm: round6(wall.errorMm),
    at: roundPoint6(wall.at),
    depth: depthAnswer(wall.depth),
  })),
  spotFace: spotFace && { ...spotFace, depthMm: round6(spotFace.depthMm), spareMm: round6(spotFace.spareMm) },
  headRoom: headRoom && { ...headRoom, fromMm: round6(headRoom.fromMm), gapMm: round6(headRoom.gapMm) },
});
