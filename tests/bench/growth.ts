import { leastDistance } from '../../src/geometry/motion/least-distance.ts';
import { type Motion, still } from '../../src/geometry/motion/motion.ts';
import { buildOutlineTree } from '../../src/geometry/motion/outline-tree.ts';
import { identity } from '../../src/geometry/plane/rigid.ts';
import { interleaved } from './interleaved.ts';
import { flangeInRing, nearlyConcentric, type Pair, turnOf } from './outlines.ts';
import { pairEvaluations } from './pair-evaluations.ts';

/** What one question costs at a size, and how much more than at half that size. */
export interface GrowthRow {
  readonly name: string;
  readonly edges: number;
  readonly pairEvaluations: number;
  readonly evaluationsPerDoubling: number | null;
  readonly ms: number;
  readonly msPerDoubling: number | null;
}

/** 1k, 2k, 4k, … 256k. */
export const doublings: readonly number[] = Array.from({ length: 9 }, (_, i) => 1000 * 2 ** i);

type Maker = (edges: number) => Pair;

/** Outlines that a search may find easy, rough, and all alike. */
export const growthPairs: readonly Maker[] = [
  (edges) => flangeInRing('smooth', edges),
  (edges) => flangeInRing('noisy', edges),
  nearlyConcentric,
];

export function growth(): GrowthRow[] {
  return growthPairs.flatMap((make) => [
    ...rowsOf('15° clearance', make, turnOf),
    ...rowsOf('least distance at a position', make, () => still),
  ]);
}

/** Trees are built and a first answer had before the clock starts: what grows with the search alone. */
function rowsOf(question: string, make: Maker, motionOf: (pair: Pair) => Motion): GrowthRow[] {
  const rows: GrowthRow[] = [];
  for (const edges of doublings) {
    const pair = make(edges);
    const [fixed, moving, motion] = [buildOutlineTree(pair.fixed), buildOutlineTree(pair.moving), motionOf(pair)];
    const evaluations = pairEvaluations(fixed, moving, motion);
    const [timed] = interleaved([() => leastDistance(fixed, moving, identity, motion).distanceMm], 3);
    const ms = timed?.medianMs ?? 0;
    const half = rows.at(-1);
    rows.push({
      name: `${question}, ${pair.name}`,
      edges,
      pairEvaluations: evaluations,
      evaluationsPerDoubling: half ? evaluations / half.pairEvaluations : null,
      ms,
      msPerDoubling: half ? ms / half.ms : null,
    });
  }
  return rows;
}
