import type { DepthRange } from '../../job/casting.ts';
import { bareGivenLength as bare, givenLength } from '../../job/length-text.ts';
import type { Units } from '../../job/lengths.ts';

/** A range of depth as a bar's label, its unit said elsewhere: `12–90`, `30–44 proud`. */
export function barDepth(depth: DepthRange | null, units: Units): string {
  return briefDepth(depth, units)
    .replace(` ${units}`, '')
    .replace(/ from face$/, '');
}

/** A range of depth as briefly as a label needs it: `12–90 mm from face`, `30–44 mm proud`. */
export function briefDepth(depth: DepthRange | null, units: Units): string {
  if (depth === null) return 'every depth';
  const { fromMm, toMm } = depth;
  if (fromMm >= 0) return `${bare(fromMm, units)}–${givenLength(toMm, units)} from face`;
  if (toMm <= 0) return `${bare(0 - toMm, units)}–${givenLength(-fromMm, units)} proud`;
  return `${bare(-fromMm, units)} proud to ${givenLength(toMm, units)} from face`;
}
