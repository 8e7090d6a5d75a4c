import { z } from 'zod';
import { grindAnswerSchema } from './grind-answer.ts';

const point = z.tuple([z.number(), z.number()]);
const millimetres = z.number();

const stop = z.strictObject({
  leg: z.int(),
  at: z.number(),
  turnDeg: z.number(),
  standOffMm: millimetres,
  fixedSection: z.string(),
  movingSection: z.string(),
  where: point,
  depth: point.nullable(),
  dowels: z.array(z.strictObject({ fixed: z.string(), moving: z.string(), gapMm: millimetres })),
});
export type StopAnswer = z.infer<typeof stop>;

/** The answer of `fettle trial --json`: mm, degrees, mm²; joint frame. */
export const trialAnswerSchema = z
  .strictObject({
    format: z.literal('fettle-trial-answer/1'),
    title: z.string(),
    conclusion: z.enum(['explained', 'partly', 'too-little', 'traced-wrong', 'unexplained']),
    shiftMm: point.describe('where the moving outlines truly lie at home: x ↦ R(turn)·x + shift'),
    turnDeg: z.number(),
    shiftErrorMm: millimetres.describe('± limit of 95 %, whichever way it goes'),
    turnErrorDeg: z.number().describe('± limit of 95 %'),
    sections: z.array(
      z.strictObject({
        part: z.enum(['fixed', 'moving']),
        section: z.string(),
        offsetMm: millimetres.describe('larger all round than traced'),
        errorMm: millimetres,
        wrong: z.number().describe('how likely it was traced wrong, 0–1'),
      }),
    ),
    readings: z.array(
      z.strictObject({
        id: z.string(),
        go: z.int(),
        relation: z.enum(['equal', 'at-least', 'at-most']),
        measuredMm: millimetres,
        expectedMm: millimetres,
        wrong: z.number().describe('how likely this reading is wrong, 0–1'),
      }),
    ),
    disagrees: z.array(z.string()).describe('readings that are likelier wrong than not'),
    measureNext: z
      .strictObject({
        kind: z.literal('clay'),
        position: z.literal('home'),
        place: z.int().nullable().describe('of the marking-out table'),
        section: z.string(),
        at: point,
        depthMm: millimetres,
        expectedMm: millimetres,
        expectedErrorMm: millimetres,
      })
      .nullable(),
    foretold: z
      .strictObject({
        unknown: z.enum(['no-way-in', 'not-judged']).nullable(),
        untraced: z.boolean(),
        stop: stop.nullable(),
        earliest: stop.nullable(),
        latest: stop.nullable(),
      })
      .describe('before anything was cut'),
    nextCut: grindAnswerSchema.nullable(),
    pastLast: z.array(z.strictObject({ part: z.enum(['fixed', 'moving']), section: z.string(), areaMm2: z.number() })),
  })
  .meta({ title: 'Fettle trial answer', description: 'What the readings of trial fits say together' });
export type TrialAnswer = z.infer<typeof trialAnswerSchema>;
