import { boxOfRegion } from '../geometry/plane/region-box.ts';
import type { Casting } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import { drawingOf } from '../joint/notices.ts';
import { spacingRatio } from '../joint/spacing-ratio.ts';
import type { ReasonNotice } from './notices.ts';

/** Two castings that are bolted together are not so unlike; an inch read as a millimetre makes them 25.4 times so. */
const mostUnlike = 20;

// dowels as far apart in both drawings confirm their scale
const confirmedWithin = 1.25;

/** Parts so unlike in size that one of them is likely drawn in another unit; none where two dowels confirm the scale. */
export function sizeReason({ fit, fixed, moving }: Joint): ReasonNotice[] {
  const [a, b] = [sizeMm(fixed), sizeMm(moving)];
  const factor = Math.max(a / b, b / a);
  if (!(factor >= mostUnlike)) return [];
  const ratio = spacingRatio(fit.dowels);
  if (ratio !== null && Math.max(ratio, 1 / ratio) <= confirmedWithin) return [];
  const [large, small] = a > b ? [fixed.file, moving.file] : [moving.file, fixed.file];
  return [{ code: 'sizes-differ', factor, large, small, fixed: drawingOf(fixed), moving: drawingOf(moving) }];
}

/** The diagonal of the box round all sections, mm. */
function sizeMm({ sections }: Casting): number {
  const { minX, minY, maxX, maxY } = boxOfRegion(sections.flatMap(({ loops }) => loops));
  return Math.hypot(maxX - minX, maxY - minY);
}
