import { z } from 'zod';

const millimetres = z.number();

/** Where a figure comes from: looked up, from memory, computed or common practice; and the text, standard or formula. */
const source = z.strictObject({
  basis: z.enum(['looked up', 'from memory', 'computed', 'common practice']),
  from: z.string(),
});

const drill = z.strictObject({ name: z.string(), diameterMm: millimetres });

const drilled = {
  drill,
  basicShare: z.number().nullable().describe('(D − drill) / 1.0825 P: 1 is the basic thread of ISO 724'),
  handbookShare: z.number().nullable().describe('(D − drill) / 1.299 P: as inch handbooks count it'),
  limits: z.enum(['below', 'within', 'above']).nullable(),
};

const blind = z.strictObject({ shoulderMm: millimetres, tipMm: millimetres });

const old = {
  grooveMm: millimetres.describe("how deep the old thread's grooves still stand in the new hole"),
  goneShare: z.number().describe('of the old thread, 0–1'),
  ofNewShare: z.number().describe('of the height of the new thread that the old grooves have taken, 0–1'),
  samePitch: z.boolean(),
};

const stray = z.strictObject({ offMm: millimetres, leanDeg: z.number().nullable() });

/** The answer of `fettle hole --json`: mm, mm² and degrees, rounded to 1e-6; shares of 1. */
export const holeAnswerSchema = z.strictObject({
  format: z.literal('fettle-hole/1'),
  thread: z.strictObject({
    name: z.string(),
    system: z.enum(['metric', 'unified', 'pipe', 'taper-pipe']),
    majorMm: millimetres,
    pitchMm: millimetres,
    pitchDiameterMm: millimetres,
    minorMm: millimetres,
    largestMinorMm: millimetres.nullable(),
    limitsOf: z.string(),
    stressAreaMm2: z.number().nullable(),
    sources: z.strictObject({ geometry: source, limits: source, drill: source }),
  }),
  material: z.string().nullable(),
  ...drilled,
  clearance: z
    .strictObject({ fineMm: millimetres, mediumMm: millimetres, coarseMm: millimetres, source })
    .nullable()
    .describe('holes that the bolt passes through, ISO 273'),
  atHand: z.strictObject({ ...drilled, verdict: z.enum(['does', 'loose', 'tight']) }).nullable(),
  engagement: z
    .strictObject({
      wantedMm: millimetres,
      advisedMm: millimetres.nullable(),
      advisedTimesMajor: z.number().nullable(),
      advisedSource: source.nullable(),
      fullThreadMm: millimetres,
      secondTap: blind,
      bottomingTap: blind,
    })
    .nullable(),
  depthMm: millimetres.nullable(),
  engagementWithinMm: millimetres.nullable(),
  wall: z
    .strictObject({
      beforeMm: millimetres.nullable(),
      afterMm: millimetres,
      keepMm: millimetres,
      keepStated: z.boolean(),
    })
    .nullable(),
  stray: z
    .strictObject({ depthMm: millimetres.nullable(), untilKeep: stray, untilGone: stray })
    .nullable()
    .describe('how far the drill may be off its centre, or out of square, each by itself'),
  enlarging: z
    .strictObject({
      was: z.string(),
      ...old,
      sizes: z
        .array(z.strictObject({ thread: z.string(), wallMm: millimetres, drillMm: millimetres, ...old }))
        .nullable(),
      insert: z
        .strictObject({
          carries: z.string(),
          majorMm: millimetres,
          drillMm: millimetres,
          source,
          wallMm: millimetres.nullable(),
          leavesWall: z.boolean().nullable(),
          betterFor: z.array(z.enum(['less-metal', 'wall', 'soft-metal'])),
        })
        .nullable(),
    })
    .nullable(),
  against: z.array(z.enum(['wall-too-thin', 'too-shallow', 'no-drill-at-hand'])),
});
export type HoleAnswer = z.infer<typeof holeAnswerSchema>;
