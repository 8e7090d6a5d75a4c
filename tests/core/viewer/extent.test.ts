import { expect, it } from 'vitest';
import type { PartDraft } from '../../../src/files/job-file.ts';
import { vertexAt, type XY } from '../../../viewer/job/arc.ts';
import { extentOf } from '../../../viewer/steps/outlines/extent.ts';

const [centre, radius] = [[30, -12] as XY, 50] as const;

/** A circle as three arcs of unequal sweep, from a direction on, in either sense. */
function circleOfArcs(fromDeg: number, sense: 1 | -1): XY[] {
  const sweepsDeg = [170, 120, 70];
  let deg = fromDeg;
  return sweepsDeg.map((sweepDeg) => {
    const rad = (deg * Math.PI) / 180;
    deg += sense * sweepDeg;
    const at: XY = [centre[0] + radius * Math.cos(rad), centre[1] + radius * Math.sin(rad)];
    return vertexAt(at, sense * Math.tan((sweepDeg * Math.PI) / 720)) as unknown as XY;
  });
}

it.each(Array.from({ length: 24 }, (_, i) => [15 * i, i % 2 === 0 ? 1 : -1] as const))(
  'the room of a circle drawn as arcs from %i° on is that of the circle',
  (fromDeg, sense) => {
    const part = { units: 'mm', sections: [{ id: 'rim', loops: [circleOfArcs(fromDeg, sense)] }] };
    const { minX, maxX, minY, maxY } = extentOf(part as unknown as PartDraft);
    for (const [found, mm] of [
      [minX, centre[0] - radius],
      [maxX, centre[0] + radius],
      [minY, centre[1] - radius],
      [maxY, centre[1] + radius],
    ] as const)
      expect(found).toBeCloseTo(mm, 6);
  },
);
