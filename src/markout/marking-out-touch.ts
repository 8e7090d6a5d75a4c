import type { FirstTouch } from '../clearance/check-result.ts';
import { firstTouch } from '../clearance/first-touch.ts';
import { type Foretold, foretold } from '../clearance/foretold.ts';
import { motionAt } from '../geometry/motion/motion.ts';
import { apply, compose, inverse, rigid } from '../geometry/plane/rigid.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import type { DepthRange } from '../job/casting.ts';
import { otherPart, type Part } from '../job/part.ts';
import type { Leg } from '../job/path.ts';
import type { Joint } from '../joint/joint.ts';

/** Where the castings, as they are, first meet on the way in, on the one that is cut. */
export interface BenchTouch {
  readonly touch: FirstTouch;
  /** On the casting as it lies on the bench, mm from the crank. */
  readonly at: Vec;
  /** From its own face; null through every depth. */
  readonly depth: DepthRange | null;
  /** What tracing errors may make of it. */
  readonly foretold: Foretold;
}

/** The first touch of a job on one of its parts; null where nothing touches on the way in. */
export function benchTouch(joint: Joint, part: Part, seen: (p: Vec) => Vec): BenchTouch | null {
  const touch = firstTouch(joint);
  if (touch === null) return null;
  const at = seen(touchedOn(part, touch, joint.fit.legs));
  return { touch, at, depth: touchedDepth(joint, part, touch), foretold: foretold(joint) };
}

/** The place of a touch on one of the parts, as that part lies at home: the moving one is brought back from where it stands. */
export function touchedOn(part: Part, { where, leg, at }: FirstTouch, legs: readonly Leg[]): Vec {
  const way = legs[leg - 1];
  if (part === 'fixed' || way === undefined) return where;
  const placed = compose(motionAt(way.motion, at), rigid(way.from.turnRad, way.from.shift));
  return apply(inverse(placed), where);
}

/**
 * The depth of a part that the two sections of a touch share. Fixed metal stands at −depth, moving metal at stand-off +
 * depth, so that either part's depth is −(stand-off + the other's).
 */
function touchedDepth(joint: Joint, part: Part, touch: FirstTouch): DepthRange | null {
  const depthOf = (of: Part): DepthRange | null => {
    const id = of === 'fixed' ? touch.fixedSection : touch.movingSection;
    return joint[of].sections.find((section) => section.id === id)?.depth ?? null;
  };
  const [own, other] = [depthOf(part), depthOf(otherPart(part))];
  if (own === null || other === null) return own;
  const fromMm = Math.max(own.fromMm, 0 - touch.standOffMm - other.toMm);
  const toMm = Math.min(own.toMm, 0 - touch.standOffMm - other.fromMm);
  return fromMm < toMm ? { fromMm, toMm } : own;
}
