import { isWithin } from '../../geometry/motion/nearest-point.ts';
import { buildOutlineTree } from '../../geometry/motion/outline-tree.ts';
import { intersection, union } from '../../geometry/polygons/polygon-engine.ts';
import { loopsOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import type { BandNeed } from './band-need.ts';

/** Lines nearer to one another than this are cut alike, mm: no hand and no machine here tells them apart. */
export const alikeMm = 0.02;

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
  return groups.map(joined);
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

function joined(group: readonly BandNeed[]): BandNeed {
  const [first, ...others] = group as readonly [BandNeed, ...BandNeed[]];
  const last = group.at(-1) as BandNeed;
  if (others.length === 0) return first;
  const most = (of: (need: BandNeed) => number): number => Math.max(...group.map(of));
  const all = {
    ...first,
    depth: first.depth && last.depth && { fromMm: first.depth.fromMm, toMm: last.depth.toMm },
    depthErrorMm: most((need) => need.depthErrorMm),
    reachErrorMm: most((need) => need.reachErrorMm),
    errorMm: most((need) => need.errorMm),
    discMm: Math.min(...group.map(({ discMm }) => discMm)),
    boundMm: most((need) => need.boundMm),
  };
  const isOneLine = (['needed', ...lines] as const).every((line) =>
    others.every((other) => isSame(first[line], other[line])),
  );
  if (isOneLine) return all;
  const planned = union(group.flatMap((need) => need.planned));
  const inAll = (line: 'first' | 'last'): Polygons =>
    others.reduce((common, need) => intersection(common, need[line]), first[line]);
  return {
    ...all,
    needed: union(group.flatMap((need) => need.needed)),
    planned,
    first: inAll('first'),
    last: union([...inAll('last'), ...planned]),
    narrow: group.flatMap((need) => need.narrow),
    // each lies that near to the first, and so within twice that of one another
    boundMm: all.boundMm + Math.min(2, others.length) * alikeMm,
  };
}
