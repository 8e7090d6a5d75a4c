import { vec } from '../../../src/geometry/plane/vec.ts';
import type { Random } from '../../support/random.ts';
import type { Design } from './design.ts';
import { box, disc } from './outlines.ts';
import { wallBehindMm } from './standing-under.ts';

/** Bosses of the block, drilled, beside the flank of a pump body that comes in along it and then home. */
export function besideBoss(random: Random): Design {
  const flankMm = random.between(60, 90);
  const draftMm = random.between(0.3, 1.2);
  const bodyDraftMm = random.between(0.3, 1.2);
  const reachMm = random.between(30, 50);
  const alongMm = random.pick([-1, 1]) * random.between(8, 20);
  const standOff = random.between(6, 12);
  const bosses = [-1, 1].map((side) => {
    const wallMm = wallBehindMm(random);
    const holeMm = random.between(4, 6);
    const radiusMm = holeMm + wallMm;
    const middle = vec(side * random.between(24, 40), flankMm + random.between(-0.5, 2.5) - radiusMm);
    return { middle, radiusMm, holeMm };
  });
  const body = (draft: number) => [box(-55, flankMm - draft, 55, flankMm + 60)];
  return {
    fixed: [
      { id: 'top', depth: [4, 20], outlines: bosses.map(({ middle, radiusMm }) => disc(middle, radiusMm - draftMm)) },
      { id: 'foot', depth: [20, 60], outlines: bosses.map(({ middle, radiusMm }) => disc(middle, radiusMm)) },
    ],
    hollows: [{ id: 'drilling', depth: [4, 34], outlines: bosses.map(({ middle, holeMm }) => disc(middle, holeMm)) }],
    moving: [
      { id: 'body', depth: [-reachMm, -15], outlines: body(0) },
      { id: 'flange', depth: [-15, 0], outlines: body(bodyDraftMm) },
    ],
    offerUp: [
      { standOff: 80, shift: [alongMm, 0] },
      { standOff, shift: [alongMm, 0] },
      { standOff, shift: [0, 0] },
      { standOff: 0 },
    ],
  };
}
