import { engineErrorMm } from '../geometry/polygons/polygon-engine.ts';

/** Millimetres of shared depth that are only meeting end to end: smaller, rounding makes flush ends foul; larger, a real overlap is missed. */
export const flushMm = 1e-9;

/** Millimetres; thinner bands of depth are none: smaller, rounding makes bands of its own; larger, a step in what passes is overlooked. */
export const leastBandMm = 1e-6;

/** Of an area: a section that shares so much lies wholly in the other; nearer 1, arcs taken a little within hide it; smaller, an ordinary foul is told as lying inside. */
export const whollyShare = 1 - 1e-4;

/** Millimetres by which a depth of foul may be told short: larger, it is shorter; smaller, the search takes longer. */
export const deepestWithinMm = 5e-5;

/** Millimetres by which arcs are taken within the metal to find a foul: larger, its area is too small; on the outside, outlines that touch would share some. */
export const foulArcMm = 5e-5;

/** Millimetres; thinner holes are where tracks err to different sides: larger, metal that is missed counts as fouled; smaller, slivers stay. */
export const foulSliverMm = 4 * foulArcMm;

/** Millimetres; an overlap no deeper is a touch: smaller than the engine’s own error, a touch fouls; larger, a foul is not told. */
export const shallowMm = 2 * engineErrorMm;

/** Millimetres by which a drawn room is too large, so that what is drawn clear is clear: larger shows in a drawing; smaller costs points. */
export const drawnRoomMm = 0.01;

/** Millimetres to which an asked clearance is held: larger, too little passes; smaller, a plan that is met but for its lines’ error fails. */
export const heldToMm = 1e-3;
