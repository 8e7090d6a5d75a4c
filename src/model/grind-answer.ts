import { z } from 'zod';
import { checkAnswer, warning } from './check-answer.ts';
import { depthRange, loop } from './part-file.ts';

const point = z.tuple([z.number(), z.number()]);

const band = z.strictObject({
  /** From–to in mm from the face of the part that is cut; null for a section that reaches through every depth. */
  depth: depthRange.nullable(),
  areaMm2: z.number(),
  /** How deep the cut goes at its deepest; null where the section has nothing left. */
  takeOffMm: z.number().nullable(),
  loops: z.array(loop),
  firstLoops: z.array(loop),
  lastLoops: z.array(loop),
});
export type BandAnswer = z.infer<typeof band>;

const wall = z.strictObject({
  hollow: z.string(),
  /** From the last line, the hand's and the hollow's errors taken off. */
  wallMm: z.number(),
  /** From the planned cut, nothing taken off. */
  nominalMm: z.number(),
  keepMm: z.number().nullable(),
  at: point,
  holds: z.boolean().nullable(),
});
export type WallAnswer = z.infer<typeof wall>;

const uncured = z.strictObject({
  section: z.string(),
  /** Why this plan leaves the foul: the section is not offered, or a do-not-cut region stands there. */
  why: z.enum(['not-offered', 'do-not-cut', 'rotating']),
  doNotCut: z.string().nullable(),
  areaMm2: z.number(),
  at: point,
});
export type Uncured = z.infer<typeof uncured>;

/** The answer of `fettle grind --json`: loops in the joint frame at home, in part-file notation, mm. */
export const grindAnswer = z.strictObject({
  format: z.literal('fettle-grind/1'),
  title: z.string(),
  part: z.enum(['fixed', 'moving']),
  holds: z.boolean(),
  boundMm: z.number(),
  volumeMm3: z.number().nullable(),
  massG: z.number().nullable(),
  sections: z.array(z.strictObject({ id: z.string(), bands: z.array(band) })),
  walls: z.array(wall),
  smallestFilletMm: z.number().nullable(),
  severed: z.array(z.strictObject({ section: z.string(), areaMm2: z.number(), at: point })),
  uncured: z.array(uncured),
  table: z.array(z.unknown()),
  afterCut: z.strictObject({ home: checkAnswer.shape.home, install: checkAnswer.shape.install }),
  warnings: z.array(warning),
});
export type GrindAnswer = z.infer<typeof grindAnswer>;
