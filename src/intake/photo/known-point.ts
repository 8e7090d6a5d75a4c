import { cross, distance, sub, type Vec } from '../../geometry/plane/vec.ts';
import type { PhotoFault, PhotoSide } from './photo-fault.ts';

/** A point touched in a picture, and where it is known to be. */
export interface KnownPoint {
  /** Pixels of the upright picture, y down. */
  readonly px: Vec;
  /** In the plane, mm, y up. */
  readonly at: Vec;
}

/**
 * Points nearer to one another, or to one line, than this share of all the points' extent count as one or as in line:
 * 0.4 mm in 400, finer than anyone places them to fix a tilt by.
 */
const thinShare = 1e-3;

/** What keeps points from fixing how the plane lies in the picture; `needed` of them at the least. */
export function pointFaults(points: readonly KnownPoint[], needed: number): readonly PhotoFault[] {
  const unread = points.flatMap(({ px, at }, point): PhotoFault[] =>
    [px.x, px.y, at.x, at.y].every(Number.isFinite) ? [] : [{ code: 'not-a-number', point }],
  );
  if (unread.length > 0) return unread;
  if (points.length < needed) return [{ code: 'too-few-points', found: points.length, needed }];
  const sides: [PhotoSide, Vec[]][] = [
    ['plane', points.map(({ at }) => at)],
    ['picture', points.map(({ px }) => px)],
  ];
  return sides.flatMap(([where, places]) => {
    const doubles = coincidentPairs(places).map((pair): PhotoFault => ({ code: 'coincident', where, points: pair }));
    if (doubles.length > 0 || needed < 4) return doubles;
    const inLine = pointsInLine(places);
    return inLine === null ? [] : [{ code: 'in-a-line', where, points: inLine }];
  });
}

function coincidentPairs(places: readonly Vec[]): (readonly [number, number])[] {
  const within = thinShare * extent(places);
  return places.flatMap((a, i) =>
    places.slice(i + 1).flatMap((b, k) => (distance(a, b) <= within ? [[i, i + 1 + k] as const] : [])),
  );
}

/**
 * The points in line, where all lie in it but one at most; else null, and then four of them lie with no three in line,
 * which is what it takes to fix a homography.
 */
function pointsInLine(places: readonly Vec[]): number[] | null {
  const within = thinShare * extent(places);
  for (const [i, a] of places.entries()) {
    for (const b of places.slice(i + 1)) {
      const along = sub(b, a);
      const reach = within * distance(a, b);
      const inLine = places.flatMap((p, k) => (Math.abs(cross(along, sub(p, a))) <= reach ? [k] : []));
      if (inLine.length >= places.length - 1) return inLine;
    }
  }
  return null;
}

function extent(places: readonly Vec[]): number {
  const [x, y] = [places.map((p) => p.x), places.map((p) => p.y)];
  return Math.hypot(Math.max(...x) - Math.min(...x), Math.max(...y) - Math.min(...y));
}
