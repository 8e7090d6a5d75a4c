import { z } from 'zod';

const millimetres = z.number();
const point = z.tuple([millimetres, millimetres]).describe("looking at the face, from the first part's drawing origin");
const depth = z.tuple([millimetres, millimetres]).nullable().describe('from the face; null: every depth');

const standing = z.array(
  z.strictObject({
    section: z.string().describe('of the second part'),
    depth,
    at: point,
    areaMm2: z.number(),
    proudMm: millimetres
      .nullable()
      .describe('at most, from metal of the first; null where that has none at that depth'),
    errorMm: millimetres.describe('the tracing errors of both together'),
    beyondMm: millimetres.nullable().describe('what is left of proudMm'),
    untraced: z.boolean().describe('the first part was not traced there'),
  }),
);

/** The answer of `fettle compare --json`: mm, mm² and degrees. */
export const compareAnswerSchema = z
  .strictObject({
    format: z.literal('fettle-compare/1'),
    first: z.string(),
    second: z.string(),
    reason: z.string().nullable().describe('why nothing is told'),
    dowelUp: z.strictObject({
      turnDeg: z.number(),
      shiftMm: point,
      rmsMm: millimetres.nullable(),
      spacingErrorMm: millimetres.nullable(),
    }),
    settled: z.boolean().describe('false: nothing was found beyond, but not all was traced or has a depth'),
    standing: standing.describe('what the second has beyond the first, and both errors, the proudest first'),
    within: standing.describe('what stands out by no more than both errors'),
    groundBack: z
      .strictObject({
        volumeMm3: z.number().nullable(),
        massG: z.number().nullable(),
        remainsMm: millimetres.describe('what may still stand beyond by the errors of both'),
        notOffered: z.array(z.string()).describe('sections that would be cut, and are not offered'),
        complete: z.boolean().describe('false: metal may stand that nobody traced, or whose depth nobody stated'),
      })
      .nullable()
      .describe('the second ground back to the first as traced; null where nothing stands beyond'),
    agreement: z
      .strictObject({
        within95Mm: millimetres.describe('95 in 100 places along the outlines, both ways, are no farther off'),
        largestMm: millimetres,
        at: point,
        depth,
      })
      .nullable()
      .describe('null where both have metal at no common depth'),
  })
  .meta({
    title: 'Fettle compare answer',
    description: 'What one casting has that another of the same face has not, and how well their outlines agree.',
  });

export type CompareAnswer = z.infer<typeof compareAnswerSchema>;
