import type { PartDraft } from '../../../src/files/job-file.ts';
import type { LoopFile } from '../../../src/files/part-file.ts';
import { mmIn } from '../../../src/job/length-text.ts';
import type { XY } from '../../job/arc.ts';
import { extremesOf, xyOf } from '../../job/arc.ts';
import type { Extent } from '../../stage/view.ts';

/** About as much as a bell housing takes up, where nothing is drawn yet. */
const emptyMm = 220;

/** The room a part's drawing takes up, in mm. */
export function extentOf({ units, sections, hollows = [], doNotCut = [], holes = [] }: PartDraft): Extent {
  const loops = [...sections, ...hollows, ...doNotCut].flatMap((holder) => holder.loops.flatMap(reachOf));
  const points = [...loops, ...holes.map((hole): XY => hole.at)].map(([x, y]) => [x * mmIn(units), y * mmIn(units)]);
  if (points.length < 2) return { minX: -emptyMm, maxX: emptyMm, minY: -emptyMm, maxY: emptyMm };
  const extent = { minX: Infinity, maxX: -Infinity, minY: Infinity, maxY: -Infinity };
  for (const [x = 0, y = 0] of points) {
    extent.minX = Math.min(extent.minX, x);
    extent.maxX = Math.max(extent.maxX, x);
    extent.minY = Math.min(extent.minY, y);
    extent.maxY = Math.max(extent.maxY, y);
  }
  return extent;
}

function reachOf(loop: LoopFile): XY[] {
  if (!('circle' in loop)) {
    return loop.flatMap((point, i) => {
      const next = loop[(i + 1) % loop.length] ?? point;
      return [xyOf(point), ...extremesOf(xyOf(point), xyOf(next), point[2] ?? 0)];
    });
  }
  const [[x, y], r] = [loop.circle, loop.radius];
  return [
    [x - r, y - r],
    [x + r, y + r],
  ];
}
