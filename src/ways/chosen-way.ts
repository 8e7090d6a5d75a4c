import type { WaysResult } from './find-ways.ts';
import type { WayPoint } from './way-along.ts';

/** The way one would go: without a cut where that can be, else the first of the cheapest that a cut makes; null where none does. */
export function chosenWay({ exists, widest, cheapest }: WaysResult): readonly WayPoint[] | null {
  if (exists === true) return widest?.way ?? null;
  return cheapest?.ways.find(({ against }) => against.every(({ code }) => code !== 'uncured'))?.way ?? null;
}
