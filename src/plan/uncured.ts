import type { Uncured } from '../answers/grind-answer.ts';
import type { RotatingResult } from '../clearance/check-result.ts';
import { holdsClearance } from '../clearance/measure.ts';
import { round6, roundPoint6 } from '../geometry/plane/rounding.ts';
import { union } from '../geometry/polygons/polygon-engine.ts';
import { areaMm2 } from '../geometry/polygons/polygons.ts';
import type { SectionCut } from './bands/layers.ts';

/** What stands too near and is left standing: not offered, not to be cut, or a matter of the rotating parts. */
export const uncuredBy = (
  needs: readonly SectionCut[],
  rotating: readonly RotatingResult[],
  rotatingMm: number,
): Uncured[] => [
  ...needs.flatMap((need) => (need.section.mayCut ? refusedIn(need) : notOffered(need))),
  ...rotating
    .filter(({ state, clearanceMm }) => !holdsClearance(state, clearanceMm, rotatingMm))
    .map(({ part, nearest }) => tooNearToRotating(part, nearest === null ? [0, 0] : roundPoint6(nearest.movingAt))),
];

const tooNearToRotating = (section: string, at: [number, number]): Uncured => ({
  section,
  why: 'rotating',
  doNotCut: null,
  areaMm2: 0,
  at,
});

function notOffered({ section, bands }: SectionCut): Uncured[] {
  const [deepest] = bands.toSorted((a, b) => (b.takeOff?.mm ?? Infinity) - (a.takeOff?.mm ?? Infinity));
  const at = deepest?.takeOff?.at ?? deepest?.planned[0]?.[0];
  if (at === undefined) return [];
  const area = areaMm2(union(bands.flatMap((band) => band.planned)));
  return [{ section: section.id, why: 'not-offered', doNotCut: null, areaMm2: round6(area), at: roundPoint6(at) }];
}

/** For each region that must not be cut, the band it costs most. */
function refusedIn({ section, bands }: SectionCut): Uncured[] {
  const refused = bands.flatMap((band) => band.refused).sort((a, b) => b.areaMm2 - a.areaMm2);
  const worst = refused.filter(({ doNotCut }, i) => refused.findIndex((other) => other.doNotCut === doNotCut) === i);
  return worst.map(({ doNotCut, areaMm2: area, at }) => ({
    section: section.id,
    why: 'do-not-cut',
    doNotCut,
    areaMm2: round6(area),
    at: roundPoint6(at),
  }));
}
