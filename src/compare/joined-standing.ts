import { flushMm } from '../clearance/tolerances.ts';
import { distance } from '../geometry/plane/vec.ts';
import type { Standing } from './standing-beyond.ts';

/** Of places and distances: what differs by less is one, mm. */
const samePlaceMm = 1e-3;

/** What stands in one slab after another of a section, at one place and as far, told once over all their depths. */
export function joinedStanding(all: readonly Standing[]): Standing[] {
  const told: Standing[] = [];
  for (const one of all) {
    const before = told.findIndex((other) => goesOn(other, one));
    const last = told[before];
    if (last === undefined) told.push(one);
    else told[before] = both(last, one);
  }
  return told;
}

/** In the order of depth, so that what goes on begins where the other ended. */
function goesOn(before: Standing, after: Standing): boolean {
  if (before.depth === null || after.depth === null || before.section !== after.section) return false;
  const meets = Math.abs(before.depth.toMm - after.depth.fromMm) <= flushMm;
  return meets && distance(before.at, after.at) <= samePlaceMm && isAsProud(before, after);
}

const isAsProud = (a: Standing, b: Standing): boolean =>
  a.untraced === b.untraced &&
  (a.proudMm === null || b.proudMm === null
    ? a.proudMm === b.proudMm
    : Math.abs(a.proudMm - b.proudMm) <= samePlaceMm && a.errorMm === b.errorMm);

const both = (before: Standing, after: Standing): Standing => ({
  ...before,
  depth: before.depth && after.depth && { fromMm: before.depth.fromMm, toMm: after.depth.toMm },
  areaMm2: Math.max(before.areaMm2, after.areaMm2),
});
