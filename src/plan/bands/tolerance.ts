/** Every approximation of a cut, arcs and round corners alike, keeps within this on the side of more clearance, mm. */
export const toleranceMm = 1e-4;
