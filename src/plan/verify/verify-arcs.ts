import { type Doubt, doubt } from '../../clearance/verify/verify-doubt.ts';
import { OutlineShape } from '../../clearance/verify/verify-shape.ts';
import type { Region } from '../../geometry/plane/loop.ts';
import { loopsOf } from '../../geometry/polygons/polygons.ts';
import type { CutBand } from '../part-cut.ts';

/** Places of arcs are known no better, mm. */
const hairMm = 1e-6;

/** Lines as given out hold the polygons that were proved, the first lies in its own, and none is farther off than told. */
export const arcDoubts = ({ planned, first, last, lines }: CutBand): Doubt[] => [
  ...given('planned', lines.planned, loopsOf(planned), lines.boundMm),
  ...given('first', loopsOf(first), lines.first, lines.boundMm),
  ...given('last', lines.last, loopsOf(last), lines.boundMm),
];

function given(name: string, outer: Region, inner: Region, boundMm: number): Doubt[] {
  const holds = !reachesOver(inner, outer, hairMm) && !reachesOver(outer, inner, boundMm + hairMm);
  return holds ? [] : [doubt('line-arcs', 'plan', `The ${name} line as given out is not that which was proved.`)];
}

/** Whether an outline goes out of a region by more than so much, at any place that is looked at. */
function reachesOver(outline: Region, region: Region, byMm: number): boolean {
  const [along, shape] = [new OutlineShape(outline), new OutlineShape(region)];
  return along.stations.some((runs, i) => runs.some((run) => shape.gapMm(along.pointAt(run, i), 1) > byMm));
}
