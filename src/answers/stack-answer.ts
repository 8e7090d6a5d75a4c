import { z } from 'zod';
import { stackFile } from '../files/stack-file.ts';

const millimetres = z.number();
const lengthName = stackFile.shape.lengths.keyof();
const rowName = z.enum(['pilot', 'tipGap', 'spline', 'releaseGap', 'strokeLeft']);

/** The answer of `fettle stack --json`: mm, rounded to 1e-6. */
export const stackAnswerSchema = z.strictObject({
  format: z.literal('fettle-stack-answer/1'),
  title: z.string(),
  verdict: z.enum(['goes', 'not', 'undecided']),
  rows: z.array(
    z.discriminatedUnion('state', [
      z.strictObject({
        name: rowName,
        state: z.enum(['holds', 'fails', 'undecided']).describe('no less than wanted at worst, less at best, between'),
        mm: millimetres,
        worstMm: millimetres.describe('± of what limits it, every length at its worst'),
        rssMm: millimetres.describe('± of the same by root of the sum of squares; decides nothing'),
        leastMm: millimetres.describe('at worst, whichever of its lengths limits it then'),
        mostMm: millimetres,
        wantedMm: millimetres.nullable().describe('null: more than 0'),
      }),
      z.strictObject({ name: rowName, state: z.literal('missing'), missing: z.array(lengthName) }),
    ]),
  ),
  errorAssumed: z
    .strictObject({ of: z.array(lengthName), mm: millimetres })
    .nullable()
    .describe('lengths whose limit nobody stated, and the one that was taken'),
});
export type StackAnswer = z.infer<typeof stackAnswerSchema>;
