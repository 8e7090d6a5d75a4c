import { z } from 'zod';
import { filePath, lengthOrNone, point, schemaReference, size, text, units } from './file-values.ts';

/** Beyond any bolt pattern and any way in; so that reading ends in bounded time. */
export const mostPairs = 1000;
export const mostPositions = 1000;
export const mostRotating = 100;
/** A plan is worked out for each. */
export const mostCutters = 12;

const pair = z.tuple([text, text]).describe('[id in the fixed part, id in the moving part]');
const pairs = z.array(pair).max(mostPairs);

/** A hundred turns are more than any way in needs; beyond that the figure is a slip of the pen. */
const turn = z.number().min(-36000).max(36000);

export const position = z.strictObject({
  standOff: lengthOrNone.optional().describe('between the faces; default 0'),
  turn: turn.optional().describe('degrees, anticlockwise looking at the fixed face; default 0'),
  shift: point.optional().describe('sideways; default [0, 0]'),
});
export type PositionFile = z.infer<typeof position>;

const clearance = z
  .union([
    lengthOrNone,
    z.strictObject({
      home: lengthOrNone,
      wayIn: lengthOrNone.optional().describe('default the home clearance'),
      rotating: lengthOrNone.optional().describe('default 4 mm'),
    }),
  ])
  .describe('a number for home and way in, or { "home", "wayIn", "rotating" }');

const cutter = z.strictObject({
  radius: size,
  nose: z.enum(['ball', 'flat']).optional().describe('default ball'),
  handError: lengthOrNone.optional().describe('how far the hand strays from the line; default 0.5 mm'),
  runOut: z.enum(['cut-past', 'leave']).optional().describe('at the ends of a band; default cut-past'),
  stepover: size.optional(),
});

const wander = z.strictObject({
  turn: z.number().min(0).max(10).optional().describe('degrees, either way'),
  standOff: lengthOrNone.optional().describe('nearer or farther'),
  shift: lengthOrNone.optional().describe('aside, in any direction'),
  tilt: z.number().min(0).max(5).optional().describe('degrees, about any line of the mating face through the axis'),
});
export type WanderFile = z.infer<typeof wander>;

/** A fit file, `*.fit.json`: two parts, how they dowel up, the way in and what is asked. */
export const fitFile = z
  .strictObject({
    $schema: schemaReference,
    format: z.literal('fettle-fit/1'),
    title: text.optional(),
    units,
    fixed: filePath,
    moving: filePath,
    rotating: z
      .array(filePath)
      .max(mostRotating)
      .optional()
      .describe('parts that turn with the crank, drawn about its axis'),
    axis: z
      .union([point, text])
      .describe("the crank axis: [x, y] in the fixed part's drawing and units, or the id of one of its holes"),
    dowels: pairs.optional(),
    bolts: pairs.optional(),
    offerUp: z
      .array(position)
      .min(1)
      .max(mostPositions)
      .optional()
      .describe('positions in order, the last one home; absent: home only'),
    inputShaft: z.strictObject({ engagesAt: lengthOrNone.describe('stand-off at which the shaft enters') }).optional(),
    wander: wander
      .optional()
      .describe('how far one may stray from the way in while steering: the answer then holds for every path within it'),
    clearance,
    depthMargin: lengthOrNone.optional().describe('default the home clearance'),
    cut: z.enum(['fixed', 'moving', 'both']).optional().describe('default fixed'),
    share: z
      .number()
      .min(0)
      .max(1)
      .optional()
      .describe('of the cut, for the fixed part where both are cut; default 0.5'),
    cutter: cutter.optional(),
    cutters: z
      .array(size)
      .min(1)
      .max(mostCutters)
      .optional()
      .describe('radii of cutters to choose among; default 3, 4, 5, 6, 8, 10 and 12.5 mm'),
    straight: z.boolean().optional().describe('edges of the cut that a grinder can follow, of flats and arcs'),
    minWall: lengthOrNone.optional().describe('least metal left anywhere behind a cut'),
    registration: lengthOrNone
      .optional()
      .describe(
        'how far paired holes may miss one another before nothing is judged; default the larger of 5 mm and ten times what a bolt is allowed, and 2 mm for the spacing of dowels',
      ),
    nothingShares: z
      .boolean()
      .optional()
      .describe('true: it is meant that the parts share no depth, never come near, or set out where they share it'),
  })
  .meta({
    title: 'Fettle fit file',
    description: 'Two castings offered up to one another: dowels, the way in, clearances asked, what may be cut',
  });
export type FitFile = z.infer<typeof fitFile>;
