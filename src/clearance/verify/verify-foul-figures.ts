import type { Clearance } from '../check-result.ts';
import { isUntraced } from './verify-claim.ts';
import { type Doubt, differing, doubt } from './verify-doubt.ts';
import type { Extrusion, Meeting } from './verify-extrusions.ts';
import { measureFoul } from './verify-foul.ts';
import { roundingMm } from './verify-limits.ts';
import type { Looks } from './verify-look.ts';

/** Area that outlines of any length may be off by for their rounding alone, mm². */
const hairMm2 = 1e-3;

/** What the area and the depth of a foul say that is not so; both are 0 where nothing fouls. */
export function foulFigureDoubts(
  where: 'home' | 'install',
  { state, foul: { areaMm2, deepestMm } }: Pick<Clearance, 'state' | 'foul'>,
  fixed: readonly Extrusion[],
  meetings: readonly Meeting[],
  looks: Looks,
  mostLooks: number,
): Doubt[] {
  if (state !== 'fouls') {
    return [
      ...differing('foul-area', where, 'Area of the foul, mm²', areaMm2, 0, 0),
      ...differing('foul-depth', where, 'Depth of the foul', deepestMm, 0, 0),
    ];
  }
  const sections = fixed.map((section) => ({
    section,
    past: meetings.filter((meeting) => meeting.fixedExtrusion === section && !isUntraced(meeting)),
  }));
  const met = sections.filter(({ section, past }) => !section.untraced && past.length > 0);
  const found = met
    .map(({ section, past }) => measureFoul(section, past, looks, mostLooks / met.length))
    .filter(({ mostAreaMm2 }) => mostAreaMm2 > 0);
  const low = found.reduce((sum, { leastAreaMm2 }) => sum + leastAreaMm2, 0) - hairMm2;
  const high = found.reduce((sum, { mostAreaMm2 }) => sum + mostAreaMm2, 0) + hairMm2;
  const text = `The area of the foul is given as ${areaMm2} mm²; found: between ${low} and ${high} mm².`;
  return [
    ...(areaMm2 >= low && areaMm2 <= high ? [] : [doubt('foul-area', where, text)]),
    ...depthDoubts(where, deepestMm, found),
  ];
}

function depthDoubts(
  where: 'home' | 'install',
  claimedMm: number | null,
  found: readonly ReturnType<typeof measureFoul>[],
): Doubt[] {
  const depths = found.map(({ deepestMm }) => deepestMm);
  const deepestMm = depths.includes(null) ? null : Math.max(0, ...depths.map((mm) => mm ?? 0));
  const withinMm = Math.max(roundingMm, ...found.map(({ withinMm }) => withinMm));
  return differing('foul-depth', where, 'Depth of the foul', claimedMm, deepestMm, withinMm);
}
