import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import type { OutlineTree } from '../geometry/motion/outline-tree.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import { cornersAlong, type MeasuredRun, pointAlong } from './marking-out-along.ts';
import type { PlaceKind } from './marking-row.ts';

/** A place to mark on an edge: how far along it, and why there. */
export interface EdgePlace {
  readonly kind: PlaceKind;
  readonly alongMm: number;
}

/** From place to place along an edge, mm; common practice, no source. */
export const stepMm = 10;
/** Places nearer than this are one, mm. */
const togetherMm = 0.5;

/**
 * The places of an edge in order: its ends, its deepest place, where it comes nearest to each of `wallsTo`, its corners,
 * and every 10 mm from its start.
 */
export function placesAlong(
  run: MeasuredRun,
  present: OutlineTree,
  wallsTo: readonly ((at: Vec) => number)[] = [],
): EdgePlace[] {
  const { lengthMm, closed } = run;
  const steps = Array.from({ length: Math.floor(lengthMm / stepMm) + 1 }, (_, i) => i * stepMm);
  const wanted: EdgePlace[] = [
    ...(closed ? [] : [0, lengthMm]).map((alongMm): EdgePlace => ({ kind: 'end', alongMm })),
    { kind: 'deepest', alongMm: mostAlong(run, (at) => nearestOnOutline(present, at).distanceMm) },
    ...wallsTo.map((wall): EdgePlace => ({ kind: 'wall', alongMm: mostAlong(run, (at) => -wall(at)) })),
    ...cornersAlong(run).map((alongMm): EdgePlace => ({ kind: 'corner', alongMm })),
    ...steps.map((alongMm): EdgePlace => ({ kind: 'step', alongMm })),
  ];
  const apart = (a: number, b: number): number => {
    const direct = Math.abs(a - b);
    return closed ? Math.min(direct, lengthMm - direct) : direct;
  };
  const places: EdgePlace[] = [];
  for (const place of wanted)
    if (places.every(({ alongMm }) => apart(alongMm, place.alongMm) > togetherMm)) places.push(place);
  return places.sort((a, b) => a.alongMm - b.alongMm);
}

/** An edge is looked at no farther apart than this, mm, and the best place then closed in on. */
const lookMm = 0.5;

/** Where along an edge a value is largest. */
function mostAlong(run: MeasuredRun, of: (at: Vec) => number): number {
  const valueAt = (s: number): number => of(pointAlong(run, s));
  const looks = Math.max(1, Math.ceil(run.lengthMm / lookMm));
  const at = (i: number): number => (run.lengthMm * i) / looks;
  let best = 0;
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 0; i <= looks; i++) {
    const value = valueAt(at(i));
    if (value > most) [best, most] = [i, value];
  }
  return closedIn(valueAt, at(Math.max(0, best - 1)), at(Math.min(looks, best + 1)));
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
