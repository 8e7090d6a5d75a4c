import { buildOutlineTree, type OutlineTree } from '../motion/outline-tree.ts';
import type { Region } from '../plane/loop.ts';
import { regionAreaMm2 } from '../polygons/region-measures.ts';
import { type Outline, soundLoops } from './outline.ts';

/** A piece of metal as seen in the plane, made by {@link solid} and good for any number of questions. */
export interface Solid {
  /** Its area by even-odd nesting, mm², arcs as arcs. */
  readonly areaMm2: number;
}

/**
 * A solid from its outlines, in mm. An outline inside another is a hole, one inside that is metal again. Outlines keep
 * within 1e5 mm of the origin. What makes questions about the solid quick is built here, once.
 *
 * @param outlines - one or more, which neither touch nor cross themselves or one another
 * @throws {@link OutlineError} with everything that keeps the outlines from being a solid
 *
 * @example A flange of 40 mm radius with a bore of 25 mm, and a square lug with one end round.
 * ```ts
 * import { solid } from 'fettle/motion';
 *
 * const flange = solid({ circle: [0, 0], radius: 40 }, { circle: [0, 0], radius: 25 });
 * console.log(flange.areaMm2.toFixed(3)); // 3063.053
 *
 * const lug = solid([[0, 0], [20, 0, 1], [20, 20], [0, 20]]);
 * console.log(lug.areaMm2.toFixed(3)); // 557.080
 * ```
 */
export function solid(...outlines: readonly Outline[]): Solid {
  const region = soundLoops(outlines);
  const made = Object.freeze({ areaMm2: regionAreaMm2(region) });
  insides.set(made, { region, tree: buildOutlineTree(region) });
  return made;
}

/** What a solid is to the kernel. */
interface Inside {
  readonly region: Region;
  readonly tree: OutlineTree;
}

const insides = new WeakMap<Solid, Inside>();

/** What a solid is to the kernel; a `TypeError` for anything that `solid` did not make. */
export function insideOf(made: Solid): Inside {
  const inside = insides.get(made);
  if (inside === undefined) throw new TypeError('expected a solid made by solid(…)');
  return inside;
}
