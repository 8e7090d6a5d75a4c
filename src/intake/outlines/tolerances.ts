/**
 * Ends no further apart than this (mm) are one point: coordinates written to four decimals, and the rounding of an
 * arc's ends reckoned from its centre, stay within it. An outline moves by no more than this when they are made one.
 */
export const sameEndMm = 1e-4;

/** Curves that are no arcs are followed by arcs within this (mm). */
export const curveToleranceMm = 0.005;
