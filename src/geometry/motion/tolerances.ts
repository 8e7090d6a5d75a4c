/**
 * Every tolerance of the motion kernel, with what it leads to.
 *
 * The bound on rounding, with u = 2⁻⁵³ the unit roundoff and D the reach: the sum of the largest coordinates and radii
 * of both outlines and of the distances to the pole (after Higham, Accuracy and Stability of Numerical Algorithms,
 * chapter 3; from memory).
 *
 * - A point carried by a placement: sine, cosine and shift are each known to 2u, two products and two sums follow:
 *   each coordinate is off by no more than 6uD, the point by 9uD.
 * - An arc's centre and radius, formed from a bulge, are known to 6u of their own size, which is part of D.
 * - A foot, a point on a circle or a crossing is formed from such points by a division that loses no digits across
 *   the edge (it stays on the edge to 4uD); along the edge it may be ill placed, which changes a least distance only
 *   in the second order.
 * - So each witness is off by at most 19uD, the distance between two by 38uD, and a radius difference at an alignment
 *   by less: 2u for each root and 9uD for each point.
 *
 * 64 ulps (128u) of D leave a factor of three. A candidate contact is off in angle by the root of that where it is a
 * tangency, but in distance only by its square again, so the same bound holds for what is measured there.
 */
const ulp = 2 ** -52;
const ulpsAllowed = 64;

/** A bound on the rounding of any distance the kernel measures, for coordinates and radii up to `reachMm`. */
export const roundingMm = (reachMm: number): number => ulpsAllowed * ulp * reachMm;

/**
 * Two edges this near at a candidate contact do touch. Larger than the rounding of the candidate, smaller than any
 * gap that is told from touching.
 */
export const contactSlackMm = (reachMm: number): number => 1e-9 + roundingMm(reachMm);

/** A pair whose bound is within this of the best found is not looked into: the answer may be that much too large. */
export const pruningMm = 1e-9;

/** The least tolerance an answer is given with: touching is told from fouling and from clear at this depth. */
export const leastToleranceMm = 1e-6;

/** An answer known no better than this is undecided. */
export const greatestToleranceMm = 1e-3;

/** Two edges that leave their chord by less share a leaf of a tree. Decides on speed alone: less than most clearances are. */
export const allButStraightMm = 0.5;

/** A bulge; flatter arcs are stored as their chord: larger, the chord would err by more than rounding; smaller, its far centre would. */
export const flatBulge = 1e-7;

/** Radians beside an angle range of a polar frame: smaller than rounding, a bound would be too high; larger, more is looked into. */
export const angleSlackRad = 1e-12;

/** Radius by length, mm per mm, below which a vertex counts as level: smaller, an extreme is missed; larger, more is measured. */
export const levelSlope = 1e-7;

/** Millimetres of rise taken as level: either way moves a swept region by no more, so larger would make it that much wrong. */
export const levelMm = 1e-9;

/** Millimetres beside a ray at which a box is looked into: smaller than rounding, a crossing is missed; larger, more is looked into. */
export const lookMm = 1e-9;

/** Fractions of a motion nearer together than this are one instant: smaller, rounding parts one contact in two; larger, a brief overlap is lost. */
export const instant = 1e-12;

/** Radians by which a contact may lie before a turn or past it: smaller than rounding, one at an end is lost; larger, more are confirmed. */
export const turnSlackRad = 1e-9;

/** Of its own size: nearer to an edge the pole is on it, which is then seen all round; smaller, its range may be wrong; larger, it only prunes less. */
export const poleShare = 1e-9;

/** Of an arc’s radius: with its centre nearer to the pole it is level all along; larger, a nearest point is missed; smaller, its direction is noise. */
export const centreShare = 1e-14;

/** Millimetres past an arc’s end at which a tangent ray still touches it: smaller than rounding, its range is too narrow; larger, it prunes less. */
export const tangentMm = 1e-9;
