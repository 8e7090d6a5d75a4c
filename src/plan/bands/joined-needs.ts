import { isWithin } from '../../geometry/motion/nearest-point.ts';
import { buildOutlineTree } from '../../geometry/motion/outline-tree.ts';
import { intersection, union } from '../../geometry/polygons/polygon-engine.ts';
import { loopsOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import type { BandNeed } from './band-need.ts';

/** Lines nearer to one another than this are cut alike, mm: no hand and no machine here tells them apart. */
const alikeMm = 0.02;

/**
 * Needs of a section in order of depth, where neighbours that are cut alike are one: what either needs goes, what either
 * must lose at the least goes no farther, and neither is cut past its last line but for what the other needs.
 */
export function joinedNeeds(needs: readonly BandNeed[]): BandNeed[] {
  // against the first of those joined, so that a taper does not go on as one for ever
  const groups: BandNeed[][] = [];
  for (const need of needs) {
    const group = groups.at(-1);
    const [first, last] = [group?.[0], group?.at(-1)];
    if (first && last && adjoin(last, need) && cutAlike(first, need)) group?.push(need);
    else groups.push([need]);
  }
  return groups.map((group) => group.reduce(joined));
}

const adjoin = (a: BandNeed, b: BandNeed): boolean =>
  a.depth !== null && b.depth !== null && a.depth.toMm === b.depth.fromMm;

const lines = ['planned', 'first', 'last'] as const;

const cutAlike = (a: BandNeed, b: BandNeed): boolean =>
  a.way === b.way && lines.every((line) => isAlong(a[line], b[line]) && isAlong(b[line], a[line]));

/** Whether every corner of some polygons lies beside others. */
function isAlong(polygons: Polygons, others: Polygons): boolean {
  if (isSame(polygons, others)) return true;
  const tree = buildOutlineTree(loopsOf(others));
  return polygons.every((polygon) => polygon.every((p) => isWithin(tree, p, alikeMm)));
}

const isSame = (a: Polygons, b: Polygons): boolean =>
  a.length === b.length &&
  a.every((polygon, i) => {
    const other = b[i];
    return polygon.length === other?.length && polygon.every(({ x, y }, k) => x === other[k]?.x && y === other[k]?.y);
  });

function joined(a: BandNeed, b: BandNeed): BandNeed {
  const both = {
    ...a,
    depth: a.depth && b.depth && { fromMm: a.depth.fromMm, toMm: b.depth.toMm },
    depthErrorMm: Math.max(a.depthErrorMm, b.depthErrorMm),
    reachErrorMm: Math.max(a.reachErrorMm, b.reachErrorMm),
    errorMm: Math.max(a.errorMm, b.errorMm),
    discMm: Math.min(a.discMm, b.discMm),
    boundMm: Math.max(a.boundMm, b.boundMm),
  };
  if ((['needed', ...lines] as const).every((line) => isSame(a[line], b[line]))) return both;
  const planned = union([...a.planned, ...b.planned]);
  return {
    ...both,
    needed: union([...a.needed, ...b.needed]),
    planned,
    first: intersection(a.first, b.first),
    last: union([...intersection(a.last, b.last), ...planned]),
    narrow: [...a.narrow, ...b.narrow],
    boundMm: both.boundMm + alikeMm,
  };
}
