import { vec } from '../../../src/geometry/plane/vec.ts';
import type { Polygon } from '../../../src/geometry/polygons/polygons.ts';
import type { Random } from '../../support/random.ts';
import type { Design } from './design.ts';
import { ringPiece } from './outlines.ts';
import { standingUnder } from './standing-under.ts';

/** Lips round the rim that are held some 15° off at a small stand-off, turned home, and slid onto the dowels. */
export function swungLips(random: Random): Design {
  const turn = random.pick([-1, 1]) * random.between(13, 17);
  const standOff = random.between(9, 13);
  const innerMm = random.between(140, 165);
  const reachMm = random.between(30, 40);
  const draftMm = random.between(0.3, 1.2);
  const places = [30, 150, 270].slice(random.whole(0, 1)).map((deg) => deg + random.between(-12, 12));
  const lips = places.map((deg) => {
    // bored on a centre of its own, as lips are
    const centre = vec(random.between(-1.2, 1.2), random.between(-1.2, 1.2));
    const halfDeg = random.between(7, 11);
    return (draft: number): Polygon => ringPiece(innerMm - draft, innerMm + 12, deg - halfDeg, deg + halfDeg, centre);
  });
  const pads = places.map((deg) => {
    const middleDeg = deg + random.between(0, 0.7) * turn;
    const halfDeg = random.between(3, 6);
    return { fromDeg: middleDeg - halfDeg, toDeg: middleDeg + halfDeg };
  });
  return {
    ...standingUnder(random, pads, lips, turn),
    moving: [
      { id: 'lip', depth: [-reachMm, -16], outlines: lips.map((lip) => lip(0)) },
      { id: 'lip root', depth: [-16, 0], outlines: lips.map((lip) => lip(draftMm)) },
    ],
    offerUp: [{ standOff: 100, turn }, { standOff, turn }, { standOff, turn: 0 }, { standOff: 0 }],
  };
}
