import { regionContains } from '../motion/containment.ts';
import { isWithin, nearestOnOutline } from '../motion/nearest-point.ts';
import type { OutlineTree } from '../motion/outline-tree.ts';
import { distance, lerp, polar, type Vec } from '../plane/vec.ts';
import { arrivesMm, stepMm } from './tolerances.ts';

/** A place for the middle of a cutter, and how far it is from the metal that stays. */
export interface Centre {
  readonly at: Vec;
  readonly roomMm: number;
}

const directions = 32;
const rings = [1, 0.7, 0.4, 0.15] as const;

/**
 * The place within `withinMm` of a point, and in its sight, that is farthest from an outline: rings of places round the
 * point, the best of those it sees, and from there by ever smaller steps. Null where it sees none.
 */
export function roomiest(outline: OutlineTree, point: Vec, withinMm: number): Centre | null {
  let best = firstSeen(outline, point, withinMm);
  if (best === null) return null;
  for (let step = withinMm / 8; step > stepMm; step /= 2) {
    for (let better = stepFrom(outline, point, withinMm, best, step); better; ) {
      best = better;
      better = stepFrom(outline, point, withinMm, best, step);
    }
  }
  return best;
}

function firstSeen(outline: OutlineTree, point: Vec, withinMm: number): Centre | null {
  const places = rings.flatMap((ring) =>
    around(point, withinMm * ring, directions).map((at) => ({ at, roomMm: roomMm(outline, at) })),
  );
  return (
    places
      .sort((a, b) => b.roomMm - a.roomMm)
      .find(({ at }) => !regionContains(outline, at.x, at.y) && sees(outline, point, at)) ?? null
  );
}

function stepFrom(outline: OutlineTree, point: Vec, withinMm: number, from: Centre, step: number): Centre | null {
  const places = around(from.at, step, directions / 2).map((at) => clamped(at, point, withinMm));
  for (const at of places) {
    const leastMm = from.roomMm + step / 16;
    if (isWithin(outline, at, leastMm)) continue;
    const room = roomMm(outline, at);
    if (room > leastMm && sees(outline, from.at, at)) return { at, roomMm: room };
  }
  return null;
}

const roomMm = (outline: OutlineTree, at: Vec): number => nearestOnOutline(outline, at).distanceMm;

const around = (centre: Vec, radius: number, count: number): Vec[] =>
  Array.from({ length: count }, (_, i) => polar(centre, radius, (2 * Math.PI * i) / count));

const clamped = (p: Vec, centre: Vec, withinMm: number): Vec => {
  const mm = distance(p, centre);
  return mm <= withinMm ? p : lerp(centre, p, withinMm / mm);
};

const mostStrides = 200;

/** Whether no outline lies between two places: each stride is as long as there is room for. */
function sees(outline: OutlineTree, point: Vec, from: Vec): boolean {
  const lengthMm = distance(from, point);
  let goneMm = 0;
  for (let i = 0; i < mostStrides && goneMm < lengthMm - arrivesMm; i++) {
    const room = roomMm(outline, lerp(from, point, goneMm / lengthMm));
    if (room < arrivesMm / 16) return false;
    goneMm += room;
  }
  return goneMm >= lengthMm - arrivesMm;
}
