import { z } from 'zod';

const millimetres = z.number();

const ranges = z.array(
  z.strictObject({
    depth: z
      .tuple([millimetres.nullable(), millimetres.nullable()])
      .describe("from the fixed part's face as in the file of a rotating part, negative out of it; null: without end"),
    radiusMm: millimetres.nullable().describe('the largest about the axis; null where nothing limits it'),
    diameterMm: millimetres.nullable(),
    limits: z.array(
      z.strictObject({
        part: z.enum(['fixed', 'moving']),
        section: z.string(),
        untraced: z.boolean().describe('nobody has looked whether metal stands there'),
        leg: z.number().nullable().describe('counts from 1; null: at home'),
        at: z.number().describe('the fraction of the leg'),
        where: z.tuple([millimetres, millimetres]).nullable().describe('joint frame, then; null: on the axis'),
      }),
    ),
  }),
);

/** The answer of `fettle room --json`: mm. */
export const roomAnswerSchema = z
  .strictObject({
    format: z.literal('fettle-room/1'),
    title: z.string(),
    reason: z.string().nullable().describe('why nothing is told'),
    rotatingMm: millimetres.describe('the clearance kept, along the crank too'),
    homeOnly: z.boolean().describe('no way in is stated, so that only what stands at home limits'),
    ranges: ranges.describe('for the outlines as traced, the outermost depth first'),
    worstRanges: ranges.describe('with every error of outline, place and depth against the builder'),
  })
  .meta({
    title: 'Fettle room answer',
    description: 'The largest body turning about the crank axis that clears both castings, by depth.',
  });

export type RoomAnswer = z.infer<typeof roomAnswerSchema>;
