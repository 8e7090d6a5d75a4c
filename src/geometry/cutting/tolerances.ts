import { engineErrorMm } from '../polygons/polygon-engine.ts';

/** Millimetres by which arcs are taken on the side of more metal off: larger, more is ground than asked; smaller costs points. */
export const arcToleranceMm = 1e-4;

/** The same for arcs of a cutter’s radius: from 10 mm on they grow with it, so that a large one takes no more chords than a small one. */
export const arcToleranceOf = (radiusMm: number): number => arcToleranceMm * Math.max(1, radiusMm / 10);

/** Millimetres a bite is set deeper than its farthest place asks: larger, more metal goes; smaller, each takes in little more than a point. */
export const biteMm = 2e-3;

/** Millimetres taken off around what is removed: smaller than the engine’s error, a film of metal stays; larger, metal that is left is not told. */
export const filmMm = 2 * engineErrorMm;

/** Millimetres of rounding of a length: smaller than that, a block is wrongly passed over; larger, more are looked into. */
export const roundingMm = 1e-9;

/** Millimetres of the search’s last steps: larger, it misses the roomiest place by as much; smaller, it takes longer. */
export const stepMm = 1e-3;

/** Millimetres from its end at which a line of sight arrives: smaller, a corner of metal right on it hides it; larger, a thin wall is seen through. */
export const arrivesMm = 2e-3;

/** Radians; lines that turn less are one: larger, a corner is left out; smaller, where they cross is noise. */
export const leastTurnRad = 1e-4;

/** Millimetres a round cutter may leave a corner short: larger, metal stands where the line is; smaller, more corners are rounded. */
export const shortMm = 1.5e-3;

/** Millimetres by which what is added is grown: smaller, a film stays between it and the cut; larger, more metal goes. */
export const joinMm = 2e-5;

/** Square millimetres; straight edges that share less do not cross: smaller, a touch joins them; larger, a crossing stays. */
export const sharedMm2 = 1e-6;

/** Millimetres a line lies clear of the edge it is laid on: smaller, it may run on it; larger, more metal goes. */
export const hairMm = 1e-3;

/** Millimetres from an end of the edge at which a line laid there meets the outline: smaller, the meeting is missed; larger, another one is taken for it. */
export const endMm = 0.02;

/** Millimetres by which the edge leaves the chords of its points: larger, a better direction is missed; smaller, more are tried. */
export const chordMm = 0.005;

/** Millimetres; an edge this near to the outline as it was is none of the cut: smaller, the error of a plan’s lines makes runs; larger, a shallow cut is lost. */
export const runOnOutlineMm = 2e-3;

/** Millimetres; a shorter stretch is a speck: smaller, specks are made straight; larger, a short cut stays as it was. */
export const leastRunMm = 0.05;

/** Millimetres; an edge with its middle this near lies on the outline as it was: smaller, old edges count as cut; larger, a shallow cut counts as old. */
export const outlineMiddleMm = 2.5e-3;

/** Millimetres; a track no longer is a circle: smaller, its direction is noise; larger, it covers too little. */
export const standingMm = 1e-6;
