import type { Joint } from '../../src/joint/joint.ts';
import { box, castingOf, ringPiece } from './jobs.ts';
import { jointOf } from './joints.ts';
import type { Random } from './random.ts';

/** A block with ribs and bosses about its rim, and a housing whose lips must pass between or through them. */
export function rimJob(random: Random): Joint {
  const piece = (inner: number) => {
    const at = random.between(-60, 60);
    return [ringPiece(inner, inner + random.between(6, 14), at, at + random.between(6, 25))];
  };
  const depth = (from: number, to: number): readonly [number, number] => {
    const start = Math.round(random.between(from, to));
    return [start, start + random.whole(8, 20)];
  };
  return jointOf({
    fixed: castingOf({
      name: 'block',
      sections: Array.from({ length: random.whole(1, 3) }, (_, i) => ({
        id: `rib-${i + 1}`,
        depth: depth(0, 25),
        mayCut: true,
        loops: piece(random.between(92, 104)),
      })),
    }),
    moving: castingOf({
      name: 'housing',
      sections: [
        ...Array.from({ length: random.whole(1, 2) }, (_, i) => ({
          id: `lip-${i + 1}`,
          depth: [-Math.round(random.between(20, 40)), -random.whole(0, 12)] as const,
          loops: piece(random.between(96, 106)),
        })),
        { id: 'spigot', depth: [-6, 0], loops: [box(-8, 70, 8, 90)] },
      ],
    }),
    clearance: random.between(0.5, 3),
    depthMarginMm: 1,
    nothingShares: true,
  });
}
