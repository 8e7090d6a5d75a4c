import type { RotatingResult } from '../clearance/check-result.ts';
import { holdsClearance } from '../clearance/measure.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import { union } from '../geometry/polygons/polygon-engine.ts';
import { areaMm2 } from '../geometry/polygons/polygons.ts';
import type { SectionCut } from './bands/layers.ts';

/** A foul that a plan leaves. */
export interface UncuredFoul {
  /** Of a rotating part, its name. */
  readonly section: string;
  /** Why it is left: the section is not offered, or a do-not-cut region stands there. */
  readonly why: 'not-offered' | 'do-not-cut' | 'rotating';
  /** The region; null where none is why. */
  readonly doNotCut: string | null;
  /** What ought to go; null where that is a matter of the rotating parts. */
  readonly areaMm2: number | null;
  /** In the joint frame, mm; null where no place is known. */
  readonly at: Vec | null;
}

/** What stands too near and is left standing: not offered, not to be cut, or a matter of the rotating parts. */
export const uncuredBy = (
  needs: readonly SectionCut[],
  rotating: readonly RotatingResult[],
  rotatingMm: number,
): UncuredFoul[] => [
  ...needs.flatMap((need) => (need.section.mayCut ? refusedIn(need) : notOffered(need))),
  ...rotating
    .filter(({ state, clearanceMm }) => !holdsClearance(state, clearanceMm, rotatingMm))
    .map(
      ({ part, nearest }): UncuredFoul => ({
        section: part,
        why: 'rotating',
        doNotCut: null,
        areaMm2: null,
        at: nearest?.movingAt ?? null,
      }),
    ),
];

function notOffered({ section, bands }: SectionCut): UncuredFoul[] {
  const [deepest] = bands.toSorted((a, b) => (b.takeOff?.mm ?? Infinity) - (a.takeOff?.mm ?? Infinity));
  const at = deepest?.takeOff?.at ?? deepest?.planned[0]?.[0];
  if (at === undefined) return [];
  const area = areaMm2(union(bands.flatMap((band) => band.planned)));
  return [{ section: section.id, why: 'not-offered', doNotCut: null, areaMm2: area, at }];
}

/** For each region that must not be cut, the band it costs most. */
function refusedIn({ section, bands }: SectionCut): UncuredFoul[] {
  const refused = bands.flatMap((band) => band.refused).sort((a, b) => b.areaMm2 - a.areaMm2);
  const worst = refused.filter(({ doNotCut }, i) => refused.findIndex((other) => other.doNotCut === doNotCut) === i);
  return worst.map((one) => ({ section: section.id, why: 'do-not-cut', ...one }));
}
