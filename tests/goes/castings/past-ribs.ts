import type { Polygon } from '../../../src/geometry/polygons/polygons.ts';
import type { Random } from '../../support/random.ts';
import type { Design } from './design.ts';
import { box } from './outlines.ts';
import { standingUnder } from './standing-under.ts';

/** Ribs along a side of the block, which straight lips of the housing pass when it swings home. */
export function pastRibs(random: Random): Design {
  const turn = random.pick([-1, 1]) * random.between(8, 15);
  const standOff = random.between(10, 14);
  const sideMm = random.between(148, 160);
  const draftMm = random.between(0.4, 1.5);
  const reachMm = random.between(34, 44);
  const lips = [-1, 1].map((side) => {
    const [middle, half] = [side * random.between(34, 48), random.between(10, 16)];
    const inMm = sideMm + random.between(-1, 1);
    return (draft: number): Polygon => box(inMm - draft, middle - half, inMm + 11, middle + half);
  });
  const ribs = Array.from({ length: 3 }, (_, i) => {
    const middleDeg = 24 * (i - 1) + random.between(-3, 3);
    return { fromDeg: middleDeg - random.between(3, 4.5), toDeg: middleDeg + random.between(3, 4.5) };
  });
  return {
    ...standingUnder(random, ribs, lips, turn),
    moving: [
      { id: 'lip', depth: [-reachMm, -18], outlines: lips.map((lip) => lip(0)) },
      { id: 'lip root', depth: [-18, 0], outlines: lips.map((lip) => lip(draftMm)) },
    ],
    offerUp: [{ standOff: 110, turn }, { standOff, turn }, { standOff, turn: 0 }, { standOff: 0 }],
  };
}
