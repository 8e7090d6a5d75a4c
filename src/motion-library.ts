/**
 * How two solids of the plane pass one another on one slide or turn: proved for every instant, with the bound on its
 * own error. Outlines are straight lines and true arcs. Lengths are in millimetres, angles in radians and positive
 * anticlockwise; x runs right and y up. Nothing is kept between calls, and what is wrong with an input is thrown.
 *
 * @module fettle/motion
 */
export { type Motion, type Placement, slide, turn } from './geometry/library/motion.ts';
export type { Outline, Vertex } from './geometry/library/outline.ts';
export { OutlineError, type OutlineFault } from './geometry/library/outline-error.ts';
export { type Passage, passage, type Witness } from './geometry/library/passage.ts';
export type { Point } from './geometry/library/point.ts';
export { type Relief, relief } from './geometry/library/relief.ts';
export { type Solid, solid } from './geometry/library/solid.ts';
export { type Region, type RegionOptions, sweptRegion } from './geometry/library/swept-region.ts';
