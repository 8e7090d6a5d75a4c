import { z } from 'zod';
import { depthRange, loop } from '../files/part-file.ts';
import { checkAnswerSchema, warning } from './check-answer.ts';
import { markingRow } from './marking-row.ts';

const point = z.tuple([z.number(), z.number()]);

const band = z.strictObject({
  /** From–to in mm from the face of the part that is cut; null for a section that reaches through every depth. */
  depth: depthRange.nullable(),
  /** The depth never to go past: the errors of depth at their worst. */
  lastDepth: depthRange.nullable(),
  areaMm2: z.number(),
  /** How deep the cut goes at its deepest; null where the section has nothing left over this depth. */
  takeOffMm: z.number().nullable(),
  loops: z.array(loop),
  firstLoops: z.array(loop),
  lastLoops: z.array(loop),
  /** What the clearance alone would take, and what the cutter takes beyond it. */
  neededAreaMm2: z.number(),
  extraAreaMm2: z.number(),
  /** How it is shaped for the cutter: corners relieved, grown all along, or good as it is; null without a cutter. */
  cutterWay: z.enum(['as-needed', 'corners', 'uniform']).nullable(),
  /** What a straight edge takes beyond both; null where none was asked for. */
  straightExtraAreaMm2: z.number().nullable(),
});
export type BandAnswer = z.infer<typeof band>;

const wall = z.strictObject({
  /** Of the hollow or hole behind the cut. */
  hollow: z.string(),
  kind: z.enum(['hollow', 'hole']),
  /** From the last line, the hand's and the hollow's errors taken off. */
  wallMm: z.number(),
  /** From the planned cut, nothing taken off. */
  nominalMm: z.number(),
  keepMm: z.number().nullable(),
  /** Who set that: the part or the fit, or, for a hole with neither, half its diameter. */
  keepBy: z.enum(['stated', 'half-diameter']).nullable(),
  /** The hole's depth is not stated: it was taken through every depth. */
  depthAssumed: z.boolean(),
  at: point,
  holds: z.boolean().nullable(),
});

const uncured = z.strictObject({
  section: z.string(),
  /** Why this plan leaves the foul: the section is not offered, or a do-not-cut region stands there. */
  why: z.enum(['not-offered', 'do-not-cut', 'rotating']),
  doNotCut: z.string().nullable(),
  areaMm2: z.number(),
  at: point,
});

const cutterEnd = z.strictObject({
  section: z.string(),
  /** Depth of the end from the face of the part that is cut, and which way the cut would go on from there. */
  atMm: z.number(),
  towards: z.enum(['face', 'back']),
  /**
   * `cut-past`: the plan is lengthened by `mm`. `run-past`: the section ends here as traced; the cutter runs on by `mm`
   * into open air. `left`: the cutter stops here as the fit has it, and `against`: it is kept out by what must stay;
   * either leaves a fillet `mm` high standing where metal ought to go.
   */
  what: z.enum(['cut-past', 'run-past', 'left', 'against']),
  mm: z.number(),
  /** How far along the depth the fillet reaches. */
  reachMm: z.number(),
  against: z.string().nullable(),
  at: point,
});

const cutter = z.strictObject({
  radiusMm: z.number(),
  nose: z.enum(['ball', 'flat']),
  /** Height of the ridges a ball leaves at the fit's stepover; null without one. */
  scallopMm: z.number().nullable(),
  /** What the clearance alone would take, and what the cutter takes beyond it. */
  neededVolumeMm3: z.number().nullable(),
  extraVolumeMm3: z.number().nullable(),
  extraMassG: z.number().nullable(),
  ends: z.array(cutterEnd),
  /** Where it cannot get in from the side: the gap between metal that stays. */
  narrow: z.array(z.strictObject({ section: z.string(), at: point, gapMm: z.number() })),
  /** Sections nearer the face that stand over a cut. */
  covered: z.array(z.strictObject({ section: z.string(), by: z.string(), areaMm2: z.number(), at: point })),
});

const straight = z.strictObject({
  /** No flat of the edge is shorter but where the casting's outline ends it, and no arc in an internal corner tighter. */
  leastFlatMm: z.number(),
  leastArcRadiusMm: z.number(),
  /** What the straight edges take beyond what clearance and cutter need; null without depth, or without material. */
  extraVolumeMm3: z.number().nullable(),
  extraMassG: z.number().nullable(),
  /**
   * Stretches of the edge left as they were: an `opening` lies wholly within the metal; `no-room` is where no such edge
   * keeps within the casting; at a `do-not-cut` one would bite what must not be cut.
   */
  asItWas: z.array(
    z.strictObject({
      section: z.string(),
      depth: depthRange.nullable(),
      at: point,
      why: z.enum(['opening', 'no-room', 'do-not-cut']),
    }),
  ),
});

const thinPlace = z.strictObject({
  section: z.string(),
  depth: depthRange.nullable(),
  /** From the last line to the outline across the metal, the section's trace error and the hand's taken off. */
  wallMm: z.number(),
  nominalMm: z.number(),
  keepMm: z.number(),
  /** Through what it is measured: across the section in the plane, or along the crank, from the end of a cut. */
  along: z.enum(['plane', 'crank']),
  at: point,
  across: point,
  holds: z.boolean(),
});

const readWall = z.strictObject({
  section: z.string(),
  depth: depthRange.nullable(),
  /** Where it was read, and what. */
  at: point,
  readAtDepthMm: z.number(),
  readMm: z.number(),
  /** What the last line takes there, square to the surface; what is then left, the reading's error and the hand's off. */
  takeOffMm: z.number(),
  wallMm: z.number(),
  /** The same where most is taken of all the places it speaks for: within the wall read, or 10 mm. */
  mostTakeOffMm: z.number(),
  mostAt: point,
  leastWallMm: z.number(),
  keepMm: z.number().nullable(),
  holds: z.boolean().nullable(),
});

const alternative = z.strictObject({
  what: z.enum(['clearance', 'cutter', 'other-part', 'both', 'turn', 'stand-off']),
  /** What would be asked instead. */
  homeMm: z.number().nullable(),
  wayInMm: z.number().nullable(),
  part: z.enum(['fixed', 'moving', 'both']),
  /** Change of the turn of the positions that are turned, and of the stand-off of those that turn. */
  turnDeg: z.number().nullable(),
  standOffMm: z.number().nullable(),
  holds: z.boolean(),
  areaMm2: z.number().nullable(),
  massG: z.number().nullable(),
  /** What stands against it. */
  against: z.array(z.string()),
});
export type AlternativeAnswer = z.infer<typeof alternative>;

const cutSection = z.strictObject({
  id: z.string(),
  /** Whether nothing of it is left at any depth. */
  nothingLeft: z.boolean(),
  bands: z.array(band),
});

/** What the plan says of a part it cuts. */
const cutOfPart = {
  boundMm: z.number(),
  volumeMm3: z.number().nullable(),
  massG: z.number().nullable(),
  sections: z.array(cutSection),
  walls: z.array(wall),
  /** Least thickness of the part's own metal at the cut, where the fit sets a least wall. */
  thin: z.array(thinPlace),
  readings: z.array(readWall),
  /** Cuts with places for which neither a hollow nor a wall reading speaks: walls to measure first, and where. */
  unmeasured: z.array(
    z.strictObject({
      section: z.string(),
      depth: depthRange.nullable(),
      at: point,
      atDepthMm: z.number().nullable(),
    }),
  ),
  cutter: cutter.nullable(),
  /** What edges a grinder can follow cost; null where they were not asked for. */
  straight: straight.nullable(),
  severed: z.array(z.strictObject({ section: z.string(), areaMm2: z.number(), at: point })),
};
const partCut = z.strictObject(cutOfPart);
export type CutAnswer = z.infer<typeof partCut>;

const movingCut = partCut.extend({ table: z.array(markingRow) });

/** The answer of `fettle grind --json`: loops in the joint frame at home, in part-file notation, mm. */
export const grindAnswerSchema = z.strictObject({
  format: z.literal('fettle-grind/1'),
  title: z.string(),
  part: z.enum(['fixed', 'moving']),
  holds: z.boolean(),
  /** Why nothing is planned: the code of the warning that tells it; else null. */
  reason: z.string().nullable(),
  ...cutOfPart,
  /** What the moving part loses where both parts are cut, and its own marking-out table; else null. */
  movingCut: movingCut.nullable(),
  /** Least radius of an inward corner the cut leaves; null without a cutter, which alone sets one. */
  smallestFilletMm: z.number().nullable(),
  uncured: z.array(uncured),
  table: z.array(markingRow),
  afterCut: z.strictObject({
    home: checkAnswerSchema.shape.home,
    install: checkAnswerSchema.shape.install,
    astray: checkAnswerSchema.shape.astray,
  }),
  /** What else would give where the plan does not hold, none of it chosen; null where it was not worked out. */
  alternatives: z.array(alternative).nullable(),
  warnings: z.array(warning),
});
export type GrindAnswer = z.infer<typeof grindAnswerSchema>;
