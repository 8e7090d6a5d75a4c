import { z } from 'zod';
import { strayed, wander } from './check-answer.ts';

const millimetres = z.number();
const way = z
  .array(z.strictObject({ turn: z.number(), standOff: millimetres }))
  .describe('positions, the first where nothing shares depth, the last home; degrees and mm');
const placed = z
  .array(z.strictObject({ turn: z.number(), standOff: millimetres, shift: z.tuple([millimetres, millimetres]) }))
  .describe('positions, the shift in the joint frame');
const verdict = z.enum(['goes', 'should-go', 'too-close', 'fouls', 'undecided']);
const cutFigures = {
  holds: z.boolean(),
  volumeMm3: z.number().nullable(),
  massG: z.number().nullable(),
  leastWallMm: millimetres.nullable().describe('beside holes and hollows, from the last line'),
  against: z.array(z.string()).describe('what stands against it, in words'),
};
const origin = z.enum(['found', 'the-fit', 'straight-in']);
const turns = z.array(z.tuple([z.number(), z.number()])).describe('ranges of turn, degrees');

/** The answer of `fettle ways --json`: mm, mm³, g and degrees. */
export const waysAnswerSchema = z
  .strictObject({
    format: z.literal('fettle-ways/1'),
    title: z.string(),
    reason: z.string().nullable().describe('why nothing is told'),
    turnFrom: z.number().describe('the turns asked about, degrees'),
    turnTo: z.number(),
    askedMm: millimetres,
    exists: z
      .boolean()
      .nullable()
      .describe('a way about the axis that keeps all that was asked without a cut; null: cannot be said'),
    widest: z
      .strictObject({
        clearanceMm: millimetres.nullable().describe('null where nothing meets'),
        boundMm: millimetres.describe('no way keeps more than this beyond it'),
        worstClearanceMm: millimetres.nullable().describe('with every tracing error against the builder'),
        verdict: verdict.describe('of the check along it'),
        way,
        forgives: wander.nullable().describe('± degrees and mm, each by itself, before metal meets as traced'),
        astray: strayed.nullable().describe('what it keeps on every path within the wander asked'),
      })
      .nullable()
      .describe('null where metal meets metal on every way'),
    corridors: z.array(
      z.strictObject({
        clearanceMm: millimetres.nullable(),
        boundMm: millimetres,
        way,
        windows: z.array(
          z.strictObject({ fromMm: millimetres, toMm: millimetres, turnFrom: z.number(), turnTo: z.number() }),
        ),
      }),
    ),
    cheapest: z.array(
      z.strictObject({
        of: origin,
        also: z.array(origin).describe('what else the way is: each is told once'),
        way,
        ...cutFigures,
      }),
    ),
    aside: z
      .strictObject({
        mostMm: millimetres,
        stepMm: millimetres,
        shifts: z.number().describe('how many places aside were looked at'),
        way: placed.nullable().describe('without cutting; null where none was found, which proves nothing'),
        clearanceMm: millimetres.nullable(),
        worstClearanceMm: millimetres.nullable(),
        verdict: verdict.nullable().describe('of the check'),
        cut: z
          .strictObject({
            way: placed,
            ...cutFigures,
          })
          .nullable()
          .describe('cheaper than any about the axis, of those looked at'),
      })
      .nullable()
      .describe('with the part carried aside at first; null where not asked for, or not needed'),
    lowerBoundMm3: z
      .number()
      .nullable()
      .describe(
        'no way inward with three turns or fewer that spares what is not offered takes off less; null where none spares it',
      ),
    strips: z.array(
      z.strictObject({
        fromMm: millimetres,
        toMm: millimetres,
        onDowels: z.boolean(),
        free: turns,
        near: turns,
        foul: turns,
        unknown: turns,
      }),
    ),
  })
  .meta({
    title: 'Fettle ways answer',
    description: 'Every way in of turning about the crank axis and sliding along it.',
  });

export type WaysAnswer = z.infer<typeof waysAnswerSchema>;
