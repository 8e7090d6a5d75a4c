import { round6 } from '../geometry/rounding.ts';
import type { Alternative, PartCut, Uncured } from '../model/grind-answer.ts';
import { mmPer, type Units } from '../model/lengths.ts';

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

/** What stands against a plan, each in a few words; lengths in the job's units. */
export function hindrances(cuts: readonly PartCut[], uncured: readonly Uncured[], units: Units): string[] {
  const leftText = leftIn(units);
  return [
    ...new Set([
      ...uncured.map(uncuredText),
      ...cuts.flatMap(({ walls, thin, readings, severed, sections, cutter }) => [
        ...walls
          .filter(({ holds }) => holds === false)
          .map(({ hollow, wallMm }) => `${leftText(wallMm)} is left at "${hollow}"`),
        ...thin
          .filter(({ holds }) => !holds)
          .map(({ section, wallMm }) => `${leftText(wallMm)} is left of "${section}" itself`),
        ...readings
          .filter(({ holds }) => holds === false)
          .map(({ wallMm }) => `${leftText(wallMm)} is left of a wall that was read`),
        ...severed.map(({ section }) => `a piece of "${section}" would come off`),
        ...sections
          .filter(({ bands }) => bands.some(({ takeOffMm }) => takeOffMm === null))
          .map(({ id }) => `nothing would be left of "${id}"`),
        ...(cutter?.ends ?? [])
          .filter(({ what }) => what === 'left')
          .map(({ section }) => `a fillet is left in "${section}"`),
      ]),
    ]),
  ];
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
