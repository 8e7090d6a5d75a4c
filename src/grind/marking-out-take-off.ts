import { edgeCrossings } from '../geometry/motion/edge-crossings.ts';
import type { EdgeSlot } from '../geometry/motion/edge-slot.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import type { OutlineTree } from '../geometry/motion/outline-tree.ts';
import { add, distance, dot, scale, sub, type Vec, vec } from '../geometry/vec.ts';
