import type { Alternative, PartCut, Uncured } from '../../answers/grind-answer.ts';
import type { CheckResult } from '../../clearance/check-result.ts';
import { holdsClearance } from '../../clearance/measure.ts';
import { round6 } from '../../geometry/plane/rounding.ts';
import type { Fit } from '../../job/job.ts';
import { lengthText } from '../../job/length-text.ts';
import { mmPer, type Units } from '../../job/lengths.ts';
import type { Joint } from '../../joint/joint.ts';
import type { Judged } from '../plan-part.ts';

/** What comes off in all: the greatest area over the depth of each section, and the mass. */
export function amounts(cuts: readonly PartCut[]): Pick<Alternative, 'areaMm2' | 'massG'> {
  const areas = cuts.flatMap(({ sections }) =>
    sections.map(({ bands }) => Math.max(...bands.map(({ areaMm2 }) => areaMm2))),
  );
  const masses = cuts.map(({ massG }) => massG);
  return {
    areaMm2: round6(areas.reduce((sum, mm2) => sum + mm2, 0)),
    massG: masses.includes(null) ? null : round6(masses.reduce((sum: number, g) => sum + (g ?? 0), 0)),
  };
}

/** What stands against a plan, each in a few words; lengths in the job's units. Something always does where it does not hold. */
export function hindrances(cuts: readonly PartCut[], { uncured, check, holds }: Judged, { fit }: Joint): string[] {
  const { units } = fit;
  const leftText = leftIn(units);
  const short = shortfalls(check, fit);
  const found = [
    ...uncured.map(uncuredText),
    ...cuts.flatMap(({ walls, thin, readings, severed, sections, cutter }) => [
      ...walls
        .filter((wall) => wall.holds === false)
        .map(({ hollow, wallMm }) => `${leftText(wallMm)} is left at "${hollow}"`),
      ...thin
        .filter((place) => !place.holds)
        .map(({ section, wallMm }) => `${leftText(wallMm)} is left of "${section}" itself`),
      ...readings
        .filter((wall) => wall.holds === false)
        .map(({ leastWallMm }) => `${leftText(leastWallMm)} is left of a wall that was read`),
      ...severed.map(({ section }) => `a piece of "${section}" would come off`),
      ...sections.filter(({ nothingLeft }) => nothingLeft).map(({ id }) => `nothing would be left of "${id}"`),
      ...(short.length === 0 ? [] : (cutter?.ends ?? []))
        .filter(({ what }) => what === 'left' || what === 'against')
        .map(({ section }) => `the cutter leaves a fillet in "${section}"`),
    ]),
  ];
  return holds ? [] : [...new Set(found.length > 0 ? found : short)];
}

/** Where what is left does not keep what was asked, and how near it comes; lengths in the job's units. */
function shortfalls({ home, wayIn }: Pick<CheckResult, 'home' | 'wayIn'>, { clearance, units }: Fit): string[] {
  const places = [
    { where: 'at home', measure: home, askedMm: clearance.homeMm },
    { where: 'on the way in', measure: wayIn, askedMm: clearance.wayInMm },
  ];
  return places.flatMap(({ where, measure, askedMm }) => {
    if (measure === null || holdsClearance(measure.state, measure.clearanceMm, askedMm)) return [];
    if (measure.state === 'undecided') return [`what is left is undecided ${where}`];
    const short =
      measure.state === 'fouls' ? 'still fouls' : `keeps only ${lengthText(measure.clearanceMm ?? 0, units)}`;
    return [`what is left ${short} ${where}`];
  });
}

/** A wall at worst: below nothing it may not be there at all. */
const leftIn =
  (units: Units) =>
  (wallMm: number): string =>
    wallMm > 0 ? `${(wallMm / mmPer(units)).toFixed(units === 'in' ? 2 : 1)} ${units}` : 'perhaps nothing';

function uncuredText({ section, why, doNotCut }: Uncured): string {
  switch (why) {
    case 'not-offered':
      return `"${section}" is in the way and not offered`;
    case 'do-not-cut':
      return `"${doNotCut}" is not to be cut`;
    case 'rotating':
      return `"${section}" runs too near`;
  }
}
