import { z } from 'zod';

const millimetres = z.number();

const choice = {
  holds: z.boolean(),
  cutsNothing: z.boolean(),
  volumeMm3: z.number().nullable().describe('null where a section that is cut has no depth'),
  massG: z.number().nullable().describe('null without a material too'),
  leastWall: z
    .strictObject({
      of: z.enum(['hole', 'hollow', 'section', 'reading']),
      id: z.string().describe('of the hole, the hollow or the section'),
      wallMm: millimetres.describe('every error against the builder; 0 or less: it may be gone'),
    })
    .nullable()
    .describe('null where no wall is near that was drawn, read or asked for'),
  against: z.array(z.string()).describe('what stands against it, in words'),
};

/** The answer of `fettle grind --choices --json`: mm, mm³ and g. */
export const choicesAnswerSchema = z
  .strictObject({
    format: z.literal('fettle-choices/1'),
    title: z.string(),
    reason: z.string().nullable().describe('why nothing is planned'),
    parts: z
      .array(z.strictObject({ cut: z.enum(['fixed', 'moving', 'both']), ...choice }))
      .describe('each part cut alone, and both, with the cutter of the fit'),
    cut: z.enum(['fixed', 'moving', 'both']).describe('what the cutters are compared in: the cut the fit asks for'),
    nose: z.enum(['ball', 'flat']),
    cuttersListed: z.boolean().describe('by the fit; else they are those in common use'),
    cutters: z
      .array(
        z.strictObject({
          radiusMm: millimetres,
          ...choice,
          moreThanLeast: z
            .number()
            .nullable()
            .describe('metal beyond the least of those that hold, or of all where none does, as a share of it'),
          leastFilletMm: millimetres
            .nullable()
            .describe('the least radius of an inward corner of its edge; null where it has none'),
          leaves: z
            .array(
              z.strictObject({
                section: z.string(),
                atMm: millimetres.describe('from the face of the part that is cut'),
                heightMm: millimetres,
                against: z.string().nullable(),
              }),
            )
            .describe('fillets left standing where metal ought to go'),
          narrow: z
            .array(z.strictObject({ section: z.string(), gapMm: millimetres }))
            .describe('where it does not get in from the side'),
          stressRatio: z
            .number()
            .nullable()
            .describe(
              'stress of such a fillet beside one of the smallest radius, in the reference bar; no strength claim',
            ),
        }),
      )
      .describe('the smallest first; none where nothing is cut'),
    kindestRadiusMm: millimetres
      .nullable()
      .describe('the largest that holds and takes at most 5 % more metal than the least that holds'),
    reference: z
      .strictObject({
        wideMm: millimetres,
        narrowMm: millimetres,
        leastRadiusMm: millimetres,
        mostRadiusMm: millimetres,
        source: z.string(),
      })
      .describe('the bar in tension that the ratios of stress are of, and the radii for which its formula holds'),
  })
  .meta({
    title: 'Fettle choices answer',
    description: 'What it takes to cut either part or both, and with each of some cutters.',
  });

export type ChoicesAnswer = z.infer<typeof choicesAnswerSchema>;
