import { z } from 'zod';
import { filePath, lengthOrNone, point, schemaReference, size, text } from './file-values.ts';
import { fitFile } from './fit-file.ts';
import { loop, mostItems, partFile, vertex } from './part-file.ts';

/** Beyond any job; so that reading ends in bounded time. */
const mostPictures = 200;
const mostTouches = 200;

/** A part on its way to a part file: nothing traced yet, or the side it was seen from not yet said. */
export const partDraft = partFile.partial({ viewedFrom: true }).extend({
  sections: z
    .array(partFile.shape.sections.element.extend({ loops: z.array(loop) }))
    .max(mostItems)
    .describe('as in a part file, and may still be empty'),
});
export type PartDraft = z.infer<typeof partDraft>;

const touch = z.strictObject({
  px: point.describe('where it was touched, in pixels of the upright picture, x right, y down'),
  at: point.describe("where that is, in the part's drawing and units"),
  hole: text.optional().describe("the part's hole that it is, by its id: then that hole's own place counts"),
});
export type TouchFile = z.infer<typeof touch>;

const picture = z.strictObject({
  id: text,
  part: filePath.describe('the part it is a picture of'),
  name: text.describe('of the file it came from'),
  mediaType: z.enum(['image/jpeg', 'image/png', 'image/webp']),
  data: z.base64().describe('the bytes of that file'),
  touches: z.array(touch).max(mostTouches).describe('points touched to set it straight'),
  squareOn: z.boolean().optional().describe('taken square on: two points are enough'),
  cameraAway: size.optional().describe('from the camera to the plane of the touched points'),
  planeDepth: z.number().optional().describe("depth of that plane from the part's mating face; default 0"),
  touchErrorPx: size.optional().describe('± limit of a touch in each direction, in pixels; default 2'),
  knownError: lengthOrNone.optional().describe('± limit of the known places; default 0.15 mm'),
  tracedDepths: z
    .record(text, z.number())
    .optional()
    .describe(
      "by section, a hollow as hollows/ID, a place not to cut as doNotCut/ID: the depth, from the part's mating face, of what is traced of it; default where it begins",
    ),
});
export type PictureFile = z.infer<typeof picture>;

const openRun = z.strictObject({
  part: filePath,
  section: text.describe('the section it will belong to'),
  points: z.array(vertex).min(1).describe('as in a loop, not closed'),
  metal: z.enum(['left', 'right']).describe('the side the metal is on, going along it'),
  behind: lengthOrNone.optional().describe('how far the metal goes on behind it, once closed'),
});
export type OpenRunFile = z.infer<typeof openRun>;

/** A job in one file, `*.job.json`: the fit, its parts as far as they have come, pictures and records. */
export const jobFile = z
  .strictObject({
    $schema: schemaReference,
    format: z.literal('fettle-job/1'),
    fit: fitFile,
    parts: z.record(filePath, partDraft).describe('by the name the fit calls them'),
    openRuns: z.array(openRun).max(mostItems).optional(),
    pictures: z.array(picture).max(mostPictures).optional(),
    records: z
      .array(z.looseObject({ format: text }))
      .max(mostItems)
      .optional()
      .describe('of what was done and measured, each in its own format'),
  })
  .meta({
    title: 'Fettle job file',
    description: 'A job in one file: the fit, its parts as far as they have come, pictures and records',
  });
export type JobFile = z.infer<typeof jobFile>;
