import { z } from 'zod';

const point = z.tuple([z.number(), z.number()]);
const millimetres = z.number();
const degrees = z.number().describe("anticlockwise from 3 o'clock, looking at the block's face");

const source = z.strictObject({
  basis: z.enum(['looked up', 'from memory', 'computed', 'common practice']),
  from: z.string(),
});

const round = {
  readings: z.array(
    z.strictObject({
      angleDeg: degrees,
      readMm: millimetres,
      trueMm: millimetres.describe('sag taken off'),
      leftMm: millimetres.describe('what neither offset nor out of round explains'),
    }),
  ),
  tirMm: millimetres,
  errorMm: millimetres.describe('how far a reading may err: as stated, or twice the spread of what is left'),
  noiseMm: millimetres.nullable().describe('twice the spread of what is left; null where nothing is over to tell it'),
  closureMm: millimetres.nullable().describe('the first place read again at the end, less its first reading'),
  closes: z.boolean(),
};

/** The answer of `fettle bore --json`: mm and degrees, rounded to 1e-6. */
export const boreAnswerSchema = z.strictObject({
  format: z.literal('fettle-bore/1'),
  verdict: z.enum(['good', 'not', 'undecided']),
  against: z.array(z.enum(['off-centre', 'face-tilted'])),
  doubts: z.array(
    z.enum([
      'bore-not-closing',
      'face-not-closing',
      'bore-noise',
      'face-noise',
      'bore-too-near',
      'face-too-near',
      'out-of-round',
      'face-not-flat',
    ]),
  ),
  limit: z.strictObject({
    of: z.enum(['gearbox', 'flange', 'stated']),
    flange: z.string().nullable(),
    tirMm: millimetres,
    offsetMm: millimetres,
    source,
  }),
  sagMm: millimetres,
  bore: z.strictObject({
    ...round,
    offsetMm: point.describe("of the bore's centre from the crank: x right, y up, looking at the block's face"),
    offMm: millimetres,
    boundMm: millimetres.describe('how far the offset may be out, every reading at its worst'),
    centre: z
      .enum(['within', 'beyond', 'noise', 'too-near'])
      .describe('the offset against its limit, its bound with it'),
    towardDeg: degrees.nullable().describe('null where the offset is less than its bound'),
    outOfRound: z
      .strictObject({
        mm: millimetres.describe('the widest diameter less the narrowest'),
        boundMm: millimetres,
        widestDeg: degrees,
        inFull: z.boolean().describe('false: four places tell of their own two diameters alone'),
      })
      .nullable(),
    sumsDifferMm: millimetres.nullable().describe('of four quarters: first and third added up, less second and fourth'),
  }),
  dowels: z.strictObject({
    towardDeg: degrees.nullable().describe('where both eccentric ends are turned'),
    sizes: z.array(z.strictObject({ inch: z.number(), mm: millimetres, leftMm: millimetres, within: z.boolean() })),
    bestInch: z.number().nullable(),
    source,
  }),
  face: z
    .strictObject({
      ...round,
      radiusMm: millimetres,
      tiltMmPer100: z.number(),
      boundMmPer100: z.number(),
      standsOutDeg: degrees
        .nullable()
        .describe('where it stands out toward the dial; null where tilt is below its bound'),
    })
    .nullable(),
});
export type BoreAnswer = z.infer<typeof boreAnswerSchema>;
