import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import type { OutlineTree } from '../geometry/motion/outline-tree.ts';
import type { MarkingRow } from '../model/marking-row.ts';
import { cornersAlong, type Measured, pointAlong } from './marking-out-along.ts';

/** A place to mark on an edge: how far along it, and why there. */
export interface Place {
  readonly kind: MarkingRow['kind'];
  readonly alongMm: number;
}

/** From place to place along an edge, mm; common practice, no source. */
export const stepMm = 10;
/** Places nearer than this are one, mm. */
const togetherMm = 0.5;

/** The places of an edge in order: its ends, its corners, its deepest place, and every 10 mm from its start. */
export function placesAlong(run: Measured, present: OutlineTree): Place[] {
  const { lengthMm, closed } = run;
  const steps = Array.from({ length: Math.floor(lengthMm / stepMm) + 1 }, (_, i) => i * stepMm);
  const wanted: Place[] = [
    ...(closed ? [] : [0, lengthMm]).map((alongMm): Place => ({ kind: 'end', alongMm })),
    { kind: 'deepest', alongMm: deepestAlong(run, present) },
    ...cornersAlong(run).map((alongMm): Place => ({ kind: 'corner', alongMm })),
    ...steps.map((alongMm): Place => ({ kind: 'step', alongMm })),
  ];
  const apart = (a: number, b: number): number => {
    const direct = Math.abs(a - b);
    return closed ? Math.min(direct, lengthMm - direct) : direct;
  };
  const places: Place[] = [];
  for (const place of wanted)
    if (places.every(({ alongMm }) => apart(alongMm, place.alongMm) > togetherMm)) places.push(place);
  return places.sort((a, b) => a.alongMm - b.alongMm);
}

/** Depths are looked at no farther apart than this, mm, and the deepest then closed in on. */
const lookMm = 0.5;

/** Where along an edge the present outside is farthest. */
function deepestAlong(run: Measured, present: OutlineTree): number {
  const depthAt = (s: number): number => nearestOnOutline(present, pointAlong(run, s)).distanceMm;
  const looks = Math.max(1, Math.ceil(run.lengthMm / lookMm));
  const at = (i: number): number => (run.lengthMm * i) / looks;
  let best = 0;
  let deepest = -1;
  for (let i = 0; i <= looks; i++) {
    const depth = depthAt(at(i));
    if (depth > deepest) [best, deepest] = [i, depth];
  }
  return closedIn(depthAt, at(Math.max(0, best - 1)), at(Math.min(looks, best + 1)));
}

/** The place of the largest value between two, by thirds. */
function closedIn(valueAt: (s: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  while (high - low > 1e-4) {
    const third = (high - low) / 3;
    if (valueAt(low + third) < valueAt(high - third)) low += third;
    else high -= third;
  }
  return (low + high) / 2;
}
