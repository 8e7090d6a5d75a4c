/** Millimetres past a bolt’s limit that are rounding: smaller, one exactly at its limit is parted from it; larger, one beyond it lines up. */
export const boltHairMm = 1e-9;

/** Millimetres; two dowels nearer are one entered twice: smaller, a slip of a file’s digits hides it; larger, two real ones are refused. */
export const coincidentMm = 1e-3;

/** Millimetres past a limit that do not refuse: smaller, rounding refuses a hole exactly at it; larger, one beyond it registers. */
export const registrationHairMm = 1e-6;

/** Millimetres past a limit of spacing that do not warn: smaller, rounding warns of one exactly at it; larger, one beyond it goes unsaid. */
export const spacingHairMm = 5e-7;

/** Radians from −180° that are +180°: smaller, rounding tells the same half turn with either sign; larger, turns are told a full turn off. */
export const halfTurnSlackRad = 1e-8;
