/** Every approximation of a cut, arcs and round corners alike, keeps within this on the side of more clearance, mm. */
export const toleranceMm = 1e-4;

/**
 * Lines are told by true arcs that keep within this of the polygons they are of, on the side they err to, mm. The polygon
 * of an arc lies within `toleranceMm` of it, one grown from another's within twice that, so thrice finds them again; more
 * makes lines no shorter.
 */
export const arcsWithinMm = 3 * toleranceMm;
