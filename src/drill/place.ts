import { mirrorPoint } from '../geometry/plane/loop.ts';
import { apply, inverse, rigid } from '../geometry/plane/rigid.ts';
import { add, distance, type Vec } from '../geometry/plane/vec.ts';
import type { Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';
import { dividerHoles } from '../markout/marking-out-dividers.ts';

/** Where a hole is set out on the part it is drilled in. */
export interface SetOut {
  /** Its place in that part's own drawing, mm. */
  readonly inDrawing: Vec;
  /** From the axis, mm and radians anticlockwise from 3 o'clock, as the joint is looked at. */
  readonly radiusMm: number;
  readonly angleRad: number;
  /** Distances in plan from two holes of the part, mm; none where it has no two. */
  readonly dividers: readonly { readonly from: string; readonly mm: number }[];
}

/** How a place of the joint frame is found on a part. */
export function setOut(joint: Joint, part: Part, at: Vec): SetOut {
  const from = dividerHoles(joint, part, [at]) ?? [];
  return {
    inDrawing: inDrawingOf(joint, part, at),
    radiusMm: Math.hypot(at.x, at.y),
    angleRad: Math.atan2(at.y, at.x),
    dividers: from.map(({ id, at: middle }) => ({ from: id, mm: distance(middle, at) })),
  };
}

/** A part is mirrored where it was seen from the other side, laid on its dowels, and the axis is at the joint's origin. */
function inDrawingOf({ dowelUp, fit, ...parts }: Joint, part: Part, at: Vec): Vec {
  const placed = part === 'fixed' ? add(at, fit.axis) : apply(inverse(rigid(dowelUp.turnRad, dowelUp.shift)), at);
  return parts[part].mirrored ? mirrorPoint(placed) : placed;
}
