import { z } from 'zod';
import { length, lengthOrNone, schemaReference, size, text, units } from './file-values.ts';

const read = <T extends z.ZodType>(value: T, what: string) =>
  z
    .strictObject({ length: value, error: lengthOrNone.optional().describe("± limit; default the file's error") })
    .optional()
    .describe(what);

/** A stack file, `*.stack.json`: lengths along the crank between engine and gearbox, each with its ± limit. */
export const stackFile = z
  .strictObject({
    $schema: schemaReference,
    format: z.literal('fettle-stack/1'),
    title: text.optional(),
    units,
    error: lengthOrNone.optional().describe('± limit of every length that states none; default 0.3 mm'),
    lengths: z.strictObject({
      flangeProud: read(
        length,
        "the crank's flange out of the block's face, toward the gearbox; negative where it lies behind",
      ),
      bell: read(size, "from the block's face to the gearbox's: how deep the bell housing is"),
      adapter: read(lengthOrNone, 'plates and spacers between block, bell and gearbox, in all; 0 for none'),
      tip: read(size, "the input shaft's tip from the gearbox's face, toward the engine"),
      splineFrom: read(size, "where the shaft's full splines begin, from the gearbox's face"),
      splineTo: read(size, "where they end toward the tip, from the gearbox's face"),
      pilotMouth: read(
        length,
        "the pilot bearing's mouth from the crank's flange, into the crank; negative where it stands out",
      ),
      pilotLength: read(size, 'how long the pilot bearing bears'),
      crankBottom: read(size, 'the bottom of the hole in the crank from its flange, behind the pilot bearing'),
      flywheel: read(size, "from the crank's flange to the flywheel's friction face"),
      hubFrom: read(
        length,
        "the end of the disc's hub toward the engine, from the friction face, clamped; negative where it reaches into the flywheel",
      ),
      hubTo: read(size, 'its end toward the gearbox, from the friction face'),
      fingers: read(size, "from the friction face to the tips of the diaphragm's fingers, cover bolted down"),
      release: read(size, "the release bearing's face from the gearbox's face, pushed right back"),
      releaseStroke: read(size, 'how far the release gear moves the bearing'),
      fingerTravel: read(size, 'how far the fingers are pushed to release the clutch'),
    }),
    wanted: z
      .strictObject({
        pilot: lengthOrNone.optional().describe('of the tip in the pilot bearing'),
        tipGap: lengthOrNone.optional().describe("between tip and the bottom of the crank's hole"),
        spline: lengthOrNone.optional().describe("of spline within the disc's hub"),
        releaseGap: lengthOrNone.optional().describe('between release bearing and fingers, bearing back'),
        strokeLeft: lengthOrNone.optional().describe('of stroke when the clutch has released'),
      })
      .optional()
      .describe("least values of the builder's own, from no standard; a row without one asks for more than 0"),
  })
  .meta({ title: 'Fettle stack file', description: 'Lengths along the crank from engine to gearbox' });
export type StackFile = z.infer<typeof stackFile>;
