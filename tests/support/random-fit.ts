import { moveRegion, type Region } from '../../src/geometry/plane/loop.ts';
import { rigid } from '../../src/geometry/plane/rigid.ts';
import { polar, vec } from '../../src/geometry/plane/vec.ts';
import type { Part } from '../../src/job/part.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { castingOf } from './jobs.ts';
import { jointOf } from './joints.ts';
import type { Random } from './random.ts';
import { randomRegion } from './random-outlines.ts';

/** A fit of random outlines that overlap a little at home or on the way in, two sections to a part, all may be cut. */
export function randomFit(random: Random, cut: Part = 'fixed'): Joint {
  const place = (region: Region): Region =>
    moveRegion(
      region,
      rigid(random.between(-4, 4), polar(vec(0, 0), random.between(45, 60), random.between(-0.6, 0.6))),
    );
  const trace = (): number => random.pick([0, 0.2, 0.5]);
  const turn = random.between(-12, 12);
  const shift = [random.between(-4, 4), random.between(-4, 4)] as const;
  return jointOf({
    cut,
    // random ways may set out in shared depth: what is asked of them is the cut
    nothingShares: true,
    clearance: { homeMm: random.pick([0.5, 2]), wayInMm: random.pick([0.3, 1]) },
    depthMarginMm: random.pick([0, 1.5]),
    fixed: castingOf({
      sections: [
        { id: 'flange', depth: [0, 10], mayCut: true, loops: randomRegion(random, 40), traceErrorMm: trace() },
        { id: 'ribs', depth: [10, 40], mayCut: true, loops: randomRegion(random, 40), traceErrorMm: trace() },
      ],
    }),
    moving: castingOf({
      sections: [
        { id: 'skirt', depth: [-20, 0], mayCut: true, loops: place(randomRegion(random, 25)), traceErrorMm: trace() },
        { id: 'lips', depth: [-30, -18], mayCut: true, loops: place(randomRegion(random, 15)), traceErrorMm: trace() },
      ],
    }),
    offerUp: random.pick([
      [{ standOff: 50, turn }, { standOff: 12, turn }, { standOff: 12 }, {}],
      [{ standOff: 25, turn, shift }, { standOff: 6, shift }, {}],
      [{ standOff: 8, turn }, {}],
      [],
    ]),
  });
}
