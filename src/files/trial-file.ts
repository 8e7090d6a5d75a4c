import { z } from 'zod';
import { filePath, length, lengthOrNone, point, schemaReference, text } from './file-values.ts';
import { position } from './fit-file.ts';

/** Beyond any job; so that reading ends in bounded time. */
const mostGoes = 100;
const mostReadings = 200;

const error = lengthOrNone.describe('± limit');

const place = {
  id: text,
  section: text.describe('of the fixed part, by its id'),
  at: point.describe("on the fixed part's surface, in the joint frame and the fit's units"),
  depth: length.describe("from the fixed part's mating face"),
  position: z
    .union([z.literal('home'), position])
    .optional()
    .describe('where the moving part stood: "home" (the default), or { "standOff", "turn", "shift" }'),
};

const clay = z.strictObject({
  ...place,
  kind: z.literal('clay'),
  thickness: lengthOrNone.describe('from the place to the nearest metal of the moving part'),
  error: error.optional().describe('± limit; default 0.1 mm'),
});

const mark = z.strictObject({
  ...place,
  kind: z.literal('mark'),
  touched: z.boolean().describe('true: a witness mark; false: looked at, and clear'),
  error: error.optional().describe('± limit of how near is touching; default 0.1 mm'),
});

export const trialReading = z.discriminatedUnion('kind', [clay, mark]);
export type TrialReadingFile = z.infer<typeof trialReading>;

const stoppedAt = z.strictObject({
  ...position.shape,
  error: error.optional().describe('± limit: degrees where it stopped turning, else a length; default 0.5'),
});

const stoppedBy = z.strictObject({
  dowel: text.describe('a dowel pair, by the id of its hole in the fixed part'),
  fromHole: lengthOrNone.describe('from its centre to that of its hole, square to the crank'),
  standOff: lengthOrNone.optional(),
  error: error.optional().describe('± limit; default 0.5 mm'),
});

const stopped = z
  .union([z.literal('home'), stoppedBy, stoppedAt])
  .describe('"home", { "turn", "standOff", "error" } or { "dowel", "fromHole", "error" }');

export const tookOff = z.strictObject({
  place: z.number().int().positive().describe('of the marking-out table'),
  takeOff: lengthOrNone.describe('measured there, square to the old outside'),
});

const go = z.strictObject({
  go: z.number().int().positive(),
  date: z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}$/, 'a date such as 2026-11-30')
    .optional(),
  cut: z
    .union([z.enum(['none', 'first', 'planned']), z.array(tookOff).min(1).max(mostReadings)])
    .optional()
    .describe('what has come off by then: "none" (the default), "first", "planned" or [{ "place", "takeOff" }]'),
  stopped: stopped.optional(),
  readings: z.array(trialReading).max(mostReadings).optional(),
  faces: z
    .array(z.strictObject({ at: point, gap: lengthOrNone }))
    .max(mostReadings)
    .optional()
    .describe('feeler gauge between the mating faces, home'),
  note: z.string().optional(),
});
export type GoFile = z.infer<typeof go>;

/** A trial file, `*.trial.json`: what was read at each trial fit of a job. */
export const trialFile = z
  .strictObject({
    $schema: schemaReference,
    format: z.literal('fettle-trial/1'),
    fit: filePath,
    job: text.optional().describe('a digest of the job when the file was begun, by which a change of it is told'),
    goes: z.array(go).max(mostGoes),
  })
  .meta({
    title: 'Fettle trial file',
    description: 'Trial fits of a job: what had been cut, where it stopped, and what was read',
  });
export type TrialFile = z.infer<typeof trialFile>;
