import { z } from 'zod';

const point = z.tuple([z.number(), z.number()]);
const millimetres = z.number();

const state = z.enum(['fouls', 'undecided', 'touches', 'clear']);

const verdict = z.enum(['goes', 'should-go', 'too-close', 'fouls', 'undecided']);

const hand = z.enum(['agrees', 'mirrored', 'cannot-tell']);

export const warning = z.strictObject({ code: z.string(), text: z.string(), at: point.optional() });
/** Something the reader must know that does not stop the answer; `at` in the joint frame, mm. */
export type Warning = z.infer<typeof warning>;

const witness = z.strictObject({
  fixedAt: point,
  movingAt: point,
  fixedSection: z.string(),
  movingSection: z.string(),
});

/** A place on the way in: `leg` counts from 1, `at` runs 0–1 along it. */
const moment = z.strictObject({ leg: z.int(), at: z.number(), turnDeg: z.number(), standOffMm: millimetres });

const firstTouch = z.strictObject({
  ...moment.shape,
  fixedSection: z.string(),
  movingSection: z.string(),
  where: point,
});
export type FirstTouchAnswer = z.infer<typeof firstTouch>;

const foulingInterval = z.strictObject({
  leg: z.int(),
  fromAt: z.number(),
  toAt: z.number(),
  fromTurnDeg: z.number(),
  toTurnDeg: z.number(),
  fromStandOffMm: millimetres,
  toStandOffMm: millimetres,
  fixedSection: z.string(),
  movingSection: z.string(),
});
export type FoulingAnswer = z.infer<typeof foulingInterval>;

const measure = {
  state,
  clearanceMm: millimetres.nullable(),
  toleranceMm: millimetres,
  errorMm: millimetres.nullable(),
  errorRssMm: millimetres.nullable(),
  /** Of a foul: minus its depth and the error; null where it goes right through. */
  worstClearanceMm: millimetres.nullable(),
  foulAreaMm2: z.number(),
  deepestMm: millimetres.nullable(),
  endGapMm: millimetres.nullable(),
  /**
   * Where something fouls, how near it comes along the crank: 0 where it goes into the other; more where it only passes
   * end to end, nearer than the depth margin.
   */
  alongCrankMm: millimetres.nullable(),
};

const homeAnswer = z.strictObject({ ...measure, nearest: witness.nullable() });
export type HomeAnswer = z.infer<typeof homeAnswer>;

/** Degrees and mm, each way of each. */
export const wander = z.strictObject({
  turn: z.number(),
  standOff: millimetres,
  shift: millimetres,
  tilt: z.number(),
});
export type WanderAnswer = z.infer<typeof wander>;

const kept = {
  state: z.enum(['clear', 'undecided']),
  /** Less than 0: it may come to touch; null where nothing can meet. */
  clearanceMm: millimetres.nullable(),
  worstClearanceMm: millimetres.nullable(),
  nearest: z.strictObject({ fixedSection: z.string(), movingSection: z.string(), leg: z.int() }).nullable(),
};

/** What is kept on every path within the wander of the fit. */
export const strayed = z.strictObject({
  wander,
  ...kept,
  rotating: z.array(z.strictObject({ part: z.string(), ...kept })),
});
export type StrayedAnswer = z.infer<typeof strayed>;

const installAnswer = z.strictObject({
  ...measure,
  nearest: z.strictObject({ ...witness.shape, ...moment.shape }).nullable(),
  firstTouch: firstTouch.nullable(),
  fouling: z.array(foulingInterval),
});
export type InstallAnswer = z.infer<typeof installAnswer>;

const rotatingAnswer = z.strictObject({
  part: z.string(),
  against: z.enum(['moving', 'fixed']),
  state,
  clearanceMm: millimetres.nullable(),
  toleranceMm: millimetres,
  leg: z.int().nullable(),
  nearest: z.union([z.strictObject({ ...witness.shape, ...moment.shape }), witness]).nullable(),
});
export type RotatingAnswer = z.infer<typeof rotatingAnswer>;

const dowelUp = z.strictObject({
  turnDeg: z.number(),
  shiftMm: point,
  rmsMm: millimetres.nullable(),
  spacingErrorMm: millimetres.nullable(),
  hand,
  pairs: z.array(z.strictObject({ fixed: z.string(), moving: z.string(), offsetMm: millimetres })),
});
export type DowelUpAnswer = z.infer<typeof dowelUp>;

const boltAnswer = z.strictObject({
  fixed: z.string(),
  moving: z.string(),
  offsetMm: millimetres,
  allowedMm: millimetres.nullable(),
  linesUp: z.boolean().nullable(),
});
export type BoltAnswer = z.infer<typeof boltAnswer>;

/** The answer of `fettle check --json`: joint frame, millimetres and degrees, rounded to 1e-6. */
export const checkAnswerSchema = z.strictObject({
  format: z.literal('fettle-check/1'),
  title: z.string(),
  verdict,
  /** Why nothing is judged: the code of the warning that tells it; null where the verdict stands by itself. */
  reason: z.string().nullable(),
  meetsClearance: z.boolean(),
  dowelUp,
  bolts: z.array(boltAnswer),
  home: homeAnswer,
  install: installAnswer.nullable(),
  /** Left out where the fit has no wander. */
  astray: strayed.optional(),
  rotating: z.array(rotatingAnswer),
  warnings: z.array(warning),
});
export type CheckAnswer = z.infer<typeof checkAnswerSchema>;
