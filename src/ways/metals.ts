import { type Solid, solidsOf, solidsSweptRound } from '../clearance/solids.ts';
import { buildOutlineTree, type OutlineTree } from '../geometry/motion/outline-tree.ts';
import type { Region } from '../geometry/plane/loop.ts';
import { metalOnLeft } from '../geometry/polygons/metal-on-left.ts';
import { offset } from '../geometry/polygons/offset.ts';
import { loopsOf } from '../geometry/polygons/polygons.ts';
import { remembered } from '../geometry/remembered.ts';
import type { Casting } from '../job/casting.ts';

/** A solid with its outlines, which what nobody has traced has none of. */
export interface Metal {
  readonly solid: Solid;
  readonly loops: Region;
}

/** All that stands for a part. */
export const metalsOf = (casting: Casting): Metal[] =>
  solidsOf(casting).map((solid) => ({
    solid,
    loops: casting.sections.find(({ id }) => !solid.untraced && id === solid.name)?.loops ?? [],
  }));

/** What stands for a part that runs round the axis, whose outlines nobody grows. */
export const turningRings = (casting: Casting): Metal[] =>
  solidsSweptRound(casting).map((solid) => ({ solid, loops: [] }));

const grown = remembered<OutlineTree>(8);

/** Metal with everything within so many mm of it, and no more than `arcsMm` beyond that. */
export function grownTree({ solid, loops }: Metal, byMm: number, arcsMm: number): OutlineTree {
  if (byMm === 0) return solid.tree;
  return grown(solid.tree, `${byMm} ${arcsMm}`, () =>
    buildOutlineTree(loopsOf(offset(metalOnLeft(loops), byMm, arcsMm, 'outside').polygons)),
  );
}
