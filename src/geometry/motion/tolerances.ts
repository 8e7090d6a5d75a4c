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
