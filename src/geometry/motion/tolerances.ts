/**
 * Every tolerance of the motion kernel, with what it leads to.
 *
 * Coordinates carry a rounding of at most half an ulp each; a turn about a pole D mm away adds up to a few ulps of
 * D. Measured against decimal arithmetic the worst error stays under 8 ulps of the reach; 64 leaves room.
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
export const pruningMm = 1e-10;

/** The least tolerance an answer is given with: touching is told from fouling and from clear at this depth. */
export const leastToleranceMm = 1e-6;

/** An answer known no better than this is undecided. */
export const greatestToleranceMm = 1e-3;
