/**
 * How far (mm) a clearance hole may be off the bolt that stands fixed in the other part: (hole − fastener)/2.
 * Looked up: fixed and floating fasteners in ASME Y14.5, appendix B. Negative where the bolt does not pass.
 */
export const floatMm = (holeMm: number, fastenerMm: number): number => (holeMm - fastenerMm) / 2;

/** The diameter (mm) of the position zone a hole fills that is off by dx, dy: 2√(dx² + dy²). */
export const positionZoneMm = (dxMm: number, dyMm: number): number => 2 * Math.hypot(dxMm, dyMm);
