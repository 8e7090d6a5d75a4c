import { z } from 'zod';
import { length, lengthOrNone, point, schemaReference, size, text, units } from './file-values.ts';

export const depthRange = z
  .tuple([length, length])
  .refine(([from, to]) => from < to, '[from, to] with from less than to')
  .describe("[from, to] from the part's own mating face into the part; negative stands proud of the face");

const depth = depthRange
  .optional()
  .describe("[from, to] from the part's own mating face; negative stands proud of it; absent: every depth");

export const vertex = z
  .tuple([length, length, z.number().optional()])
  .describe('[x, y] or [x, y, bulge]; bulge = tan(a quarter of the arc) of the edge that starts here, anticlockwise +');

const circle = z.strictObject({ circle: point, radius: size });

/** One closed outline as written in files and answers: its vertices in order, or a circle. */
export const loop = z
  .union([z.array(vertex).min(2), circle])
  .describe('a list of [x, y] or [x, y, bulge], closed of itself, or { "circle": [x, y], "radius": r }');
export type LoopFile = z.infer<typeof loop>;

const loops = z.array(loop).min(1).describe('outlines that neither touch nor cross; solid by even-odd nesting');

/** Beyond any casting; so that reading ends in bounded time. */
export const mostItems = 2000;

const id = text.describe('a name used once in its list');

const hole = z.strictObject({
  id,
  kind: z.enum(['dowel', 'bolt', 'tapped', 'stud', 'bore', 'planned']).describe('dowel is the pin or its hole'),
  at: point,
  diameter: size.optional(),
  proud: lengthOrNone.optional().describe('how far a dowel stands out of its own face; default 0'),
  thread: text.optional().describe('such as M12x1.75'),
  depth: depthRange.optional().describe("[from, to] from the part's own mating face; absent: through every depth"),
  keepWall: lengthOrNone
    .optional()
    .describe("least wall to leave between a cut and this hole; default the fit's minWall, else half its diameter"),
  mayBreak: z.boolean().optional().describe('true: a cut may break into it; default false'),
});
export type HoleFile = z.infer<typeof hole>;

const section = z.strictObject({
  id,
  depth,
  mayCut: z.boolean().optional().describe('default false: only what is offered is ever cut'),
  gotBy: text.optional().describe('how the outline was got: rubbing, card, gasket, caliper, photo from 3 m, scan …'),
  traceError: lengthOrNone.optional().describe("± limit of the outline; default the part's"),
  depthError: lengthOrNone.optional().describe("± limit of the depths; default the part's"),
  note: z.string().optional(),
  loops,
});
export type SectionFile = z.infer<typeof section>;

const hollow = z.strictObject({
  id,
  depth,
  loops,
  keepWall: lengthOrNone.optional().describe('least wall to leave between a cut and this hollow'),
  traceError: lengthOrNone.optional().describe("± limit of the outline; default the part's"),
});
export type HollowFile = z.infer<typeof hollow>;

const doNotCut = z.strictObject({ id, depth, loops });
export type DoNotCutFile = z.infer<typeof doNotCut>;

const wallReading = z.strictObject({
  at: point,
  depth: length,
  wall: size.describe('thickness measured here'),
  error: lengthOrNone.optional().describe('± of the reading; default 0.5 mm'),
});
export type WallReadingFile = z.infer<typeof wallReading>;

const material = z
  .union([text, z.strictObject({ density: size.describe('g/cm³') })])
  .describe('grey-iron, ductile-iron, aluminium, steel, or { "density": g/cm³ }');
export type MaterialFile = z.infer<typeof material>;

/** A part file, `*.part.json`: a casting as its tracer saw it. */
export const partFile = z
  .strictObject({
    $schema: schemaReference,
    format: z.literal('fettle-part/1'),
    name: text,
    units,
    viewedFrom: z.enum(['face', 'back']).describe('face: looking at its own mating face; back: through it from behind'),
    material: material.optional(),
    castingNumber: text.optional(),
    traceError: lengthOrNone.optional().describe('± limit of the outlines; default by gotBy, else 1 mm'),
    depthError: lengthOrNone.optional().describe('± limit of the depths; default by gotBy, else 1 mm'),
    sections: z.array(section).min(1).max(mostItems),
    holes: z.array(hole).max(mostItems).optional(),
    hollows: z.array(hollow).max(mostItems).optional(),
    doNotCut: z.array(doNotCut).max(mostItems).optional(),
    wallReadings: z.array(wallReading).max(mostItems).optional(),
    traced: z.strictObject({ depth, loops }).optional().describe('where the tracing is complete; absent: everywhere'),
  })
  .meta({
    title: 'Fettle part file',
    description: 'A casting as traced: outlines over ranges of depth, holes, and what must stay',
  });
export type PartFile = z.infer<typeof partFile>;
