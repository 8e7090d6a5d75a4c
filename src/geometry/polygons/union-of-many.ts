import { union } from './polygon-engine.ts';
import type { Polygons } from './polygons.ts';

/** More solids are united in groups first: the engine follows all outlines at one level at once. */
const mostAtOnce = 16;

/** Of neighbours so many in a group: along a way they cover much the same, and what is united is hardly longer. */
const inGroup = 8;

/** Everything that lies in one of several solids, neighbours best listed side by side; one alone is what it is. */
export function unionOfMany(solids: readonly Polygons[]): Polygons {
  if (solids.length === 1) return solids[0] as Polygons;
  return solids.length <= mostAtOnce ? union(solids.flat()) : unionOfMany(grouped(solids));
}

function grouped(solids: readonly Polygons[]): Polygons[] {
  const groups: Polygons[] = [];
  for (let i = 0; i < solids.length; i += inGroup) groups.push(union(solids.slice(i, i + inGroup).flat()));
  return groups;
}

/** How many times over an outline goes through the engine in that: each may move it by its error. */
export const stepsOfUnion = (count: number): number =>
  count <= mostAtOnce ? 1 : 1 + stepsOfUnion(Math.ceil(count / inGroup));
