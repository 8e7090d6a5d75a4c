import { byMetal } from './cheapest/cheapest-ways.ts';
import type { WaysResult } from './find-ways.ts';
import type { WayPlace } from './way-along.ts';

/** The way one would go: without a cut where that can be, else the cheapest that a cut makes; null where none does. */
export function chosenWay({ exists, widest, cheapest, lifts }: WaysResult): readonly WayPlace[] | null {
  if (exists === true) return widest?.way ?? null;
  if (lifts?.way != null) return lifts.way.positions;
  const onAxis = (cheapest?.ways ?? []).map((cut) => ({ ...cut, places: cut.way as readonly WayPlace[] }));
  const lifted = lifts?.cut == null ? [] : [{ ...lifts.cut, places: lifts.cut.positions as readonly WayPlace[] }];
  const all = [...lifted, ...onAxis].toSorted(byMetal);
  return all.find(({ against }) => against.every(({ code }) => code !== 'uncured'))?.places ?? null;
}
