import { z } from 'zod';

const millimetres = z.number();
const point = z.tuple([millimetres, millimetres]);
const depth = z.tuple([millimetres, millimetres]).nullable().describe('[from, to] from the own face; null: no depth');
const part = z.enum(['fixed', 'moving']);

const wall = z.strictObject({
  beside: z.enum(['outline', 'floor', 'hollow', 'hole', 'do-not-cut']),
  name: z.string(),
  isCut: z.boolean().describe('an edge that the planned cut makes'),
  wallMm: millimetres.describe('less than 0: the hole breaks through'),
  wantedMm: millimetres,
  errorMm: millimetres,
  at: point,
  depth,
});

const hole = {
  part: part.describe('the part it is drilled in'),
  hole: z.string(),
  verdict: z.enum(['does', 'as-traced', 'does-not', 'undecided']),
  diameterMm: millimetres.nullable(),
  at: point.describe('joint frame'),
  inDrawing: point.describe("mm, in the part's own drawing"),
  radiusMm: millimetres,
  angleDeg: z.number(),
  dividers: z.array(z.strictObject({ from: z.string(), mm: millimetres })).describe('in plan'),
  stands: z.enum(['in-metal', 'over-the-edge', 'in-the-air', 'not-traced', 'no-depth']).nullable(),
  run: depth.describe('over which it stands in metal without a break'),
  without: z.array(depth).describe('stated depths at which no metal is traced'),
  unsized: z.array(z.string()).describe('holes near it of no known size'),
  walls: z.array(wall).describe('the worst first'),
  spotFace: z
    .strictObject({ part, acrossMm: millimetres, depthMm: millimetres, spareMm: millimetres, errorMm: millimetres })
    .nullable(),
  headRoom: z
    .strictObject({
      acrossMm: millimetres,
      fromMm: millimetres,
      part,
      section: z.string(),
      gapMm: millimetres,
      errorMm: millimetres,
    })
    .nullable(),
};

/** The answer of `fettle drill --json`: joint frame, mm and degrees. */
export const drillAnswerSchema = z
  .strictObject({
    format: z.literal('fettle-drill/1'),
    title: z.string(),
    refusal: z.string().nullable().describe('why nothing is carried from one part to the other'),
    rules: z.strictObject({
      edgeFactor: z.number(),
      drillErrorMm: millimetres,
      spotFaceMm: millimetres.nullable(),
      socketMm: millimetres.nullable(),
    }),
    handIsShown: z.boolean().describe('the paired holes show that neither drawing is mirrored'),
    isCut: z.boolean().describe('judged in the metal that the planned cut leaves'),
    planned: z.array(z.strictObject(hole)),
    marked: z.array(
      z.strictObject({
        ...hole,
        largestMm: millimetres.nullable().describe('the largest hole that would do there'),
        moveMm: millimetres.nullable().describe('how far aside it would do'),
      }),
    ),
    met: z.array(z.strictObject({ of: part, hole: z.string(), met: z.string(), offMm: millimetres })),
    bolts: z.strictObject({
      paired: z.int(),
      met: z.int(),
      marked: z.int(),
      longest: z.strictObject({ from: z.string(), to: z.string(), mm: millimetres, deg: z.number() }).nullable(),
    }),
  })
  .describe('Is there metal for the holes to be drilled, and where do those of the other part come');
export type DrillAnswer = z.infer<typeof drillAnswerSchema>;
