import { polar, vec } from '../../../src/geometry/plane/vec.ts';
import type { Polygon } from '../../../src/geometry/polygons/polygons.ts';
import type { Random } from '../../support/random.ts';
import { type Design, keepWallMm } from './design.ts';
import { disc, ringPiece } from './outlines.ts';
import { sweptReachMm } from './swept-reach.ts';

interface Place {
  readonly fromDeg: number;
  readonly toDeg: number;
}

/** A gallery behind what stands here is no wider than this. */
const galleryMm = 5;

/**
 * Ribs or pads under lips that swing home over them: each reaches past where a lip would just touch it, or falls short of
 * that by a little, and has a gallery behind. Below, where draft makes them stouter, they stand out farther.
 */
export function standingUnder(
  random: Random,
  places: readonly Place[],
  lips: readonly ((draftMm: number) => Polygon)[],
  turnDeg: number,
): Pick<Design, 'fixed' | 'hollows'> {
  const draftMm = random.between(0.3, 1.2);
  const splitMm = random.between(16, 28);
  const ribs = places.map(({ fromDeg, toDeg }) => {
    const reachMm = sweptReachMm(
      lips.map((lip) => lip(0)),
      turnDeg,
      fromDeg,
      toDeg,
    );
    const topMm = (reachMm ?? 140) + random.between(-0.5, 2.5) - draftMm / 2;
    const wallMm = wallBehindMm(random) + draftMm;
    const middle = polar(vec(0, 0), topMm - wallMm - galleryMm, ((fromDeg + toDeg) / 2) * (Math.PI / 180));
    return {
      at: (draft: number): Polygon => ringPiece(topMm - 26, topMm + draft, fromDeg - draft / 4, toDeg + draft / 4),
      gallery: disc(middle, galleryMm),
    };
  });
  return {
    fixed: [
      { id: 'top', depth: [5, splitMm], outlines: ribs.map(({ at }) => at(0)) },
      { id: 'foot', depth: [splitMm, 60], outlines: ribs.map(({ at }) => at(draftMm)) },
    ],
    hollows: [{ id: 'gallery', depth: [12, 60], outlines: ribs.map(({ gallery }) => gallery) }],
  };
}

/** The wall that was cast: what is to be kept, what has to go at most or so, and some more, seldom too little. */
export const wallBehindMm = (random: Random): number => keepWallMm + 5 + random.between(0, 8);
