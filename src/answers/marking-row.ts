import { z } from 'zod';
import { depthRange } from '../files/part-file.ts';

const divider = z.strictObject({
  from: z.string().describe('a dowel of the part that is cut, or a hole where it has none'),
  mm: z.number().describe('from its centre, in plan'),
  setMm: z
    .number()
    .nullable()
    .describe(
      "what dividers are set to: through space, from the centre of the dowel's end or of the hole where it opens, to the place at the end of the band nearer the face; null where nobody said how proud the dowel stands",
    ),
});

const wallLeft = z.strictObject({
  hollow: z.string(),
  nominalMm: z.number().describe('from the planned line, nothing taken off'),
  wallMm: z.number().describe("from the last line, the hollow's own error and the hand's taken off"),
});

/** A row of the marking-out table: one place on the edge a cut leaves, and how to find it on the casting. */
export const markingRow = z.strictObject({
  place: z.number().int().positive().describe('counts through the whole table; the templates carry the same numbers'),
  section: z.string(),
  depth: depthRange.nullable().describe('from–to in mm from the face of the part that is cut; null: every depth'),
  edge: z.number().int().positive().describe('counts the edges the cut leaves in this band'),
  kind: z
    .enum(['end', 'corner', 'deepest', 'wall', 'step'])
    .describe('why there: wall is where the edge comes nearest to a hollow, step is every 10 mm'),
  wholeTip: z.boolean().describe('the edge takes off a whole tip: take off is then its length, square to the edge'),
  alongMm: z.number().describe('along the edge from its first place'),
  at: z.tuple([z.number(), z.number()]).describe('on the planned line, joint frame, mm'),
  angleDeg: z
    .number()
    .describe("from the crank, anticlockwise from 3 o'clock, looking at the mating face of the part that is cut"),
  radiusMm: z.number().describe('from the crank'),
  dividers: z
    .tuple([divider, divider])
    .nullable()
    .describe('two distances that find the place; null without two holes'),
  firstMm: z.number().describe('take off to the first line, square to the present outside nearest to this place'),
  plannedMm: z.number().describe('take off as planned'),
  lastMm: z.number().describe('take off to the last line: never past it'),
  wall: wallLeft.nullable().describe('to the nearest hollow; null where none is in reach'),
});
export type MarkingRowAnswer = z.infer<typeof markingRow>;
