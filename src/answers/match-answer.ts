import { z } from 'zod';

const point = z.tuple([z.number(), z.number()]);
const millimetres = z.number();

const standard = z.strictObject({
  standard: z.enum(['SAE J617', 'SAE J620']),
  number: z.string(),
  basis: z.enum(['looked up', 'from memory', 'computed', 'common practice']),
  thread: z.string(),
  boltCircleMm: millimetres,
  holes: z.int(),
  found: z.array(z.string()),
  rmsMm: millimetres,
  centreMm: point.describe("in the part's own frame, as seen in the joint"),
  turnDeg: z.number().describe('of the holes, from where the standard has them'),
});

/** The answer of `fettle match --json`: mm and degrees, rounded to 1e-6. */
export const matchAnswerSchema = z.strictObject({
  format: z.literal('fettle-match/1'),
  fixed: z.string(),
  moving: z.string(),
  reachMm: millimetres,
  centred: z.boolean(),
  conclusion: z.enum(['match', 'by-chance', 'none']),
  goes: z.boolean().describe('a match, the hands as drawn, and all bolts that are known go in at once'),
  hand: z.enum(['as-drawn', 'mirrored']),
  otherHand: z.strictObject({ pairs: z.int(), rmsMm: millimetres.nullable(), asGood: z.boolean() }),
  turnDeg: z.number(),
  shiftMm: point.describe('moving to fixed: x ↦ R(turn)·x + shift, x mirrored first where the hand is mirrored'),
  rmsMm: millimetres.nullable(),
  largestMm: millimetres.nullable(),
  pairs: z.array(
    z.strictObject({
      fixed: z.string(),
      moving: z.string(),
      offMm: millimetres,
      allowedMm: millimetres.nullable(),
      fastener: z.enum(['fixed', 'floating']).nullable(),
      linesUp: z.boolean().nullable(),
    }),
  ),
  bolts: z
    .strictObject({
      conclusion: z.enum(['go-in', 'cannot', 'undecided']),
      turnDeg: z.number(),
      shiftMm: point,
      fullest: z.number().nullable().describe('how full the fullest hole is there: 1 where its bolt just goes in'),
    })
    .nullable()
    .describe('whether all bolts that are known can go in at once, and where the part lies then'),
  fixedLeft: z.array(z.string()),
  movingLeft: z.array(z.string()),
  fold: z.int().describe('1: no other turn is as good; 12: every twelfth of a turn is'),
  others: z.array(
    z.strictObject({
      turnDeg: z.number().describe('from the best position on'),
      shiftMm: point,
      pairs: z.int(),
      rmsMm: millimetres,
      asGood: z.boolean(),
    }),
  ),
  byChance: z.number().describe('positions that strewn holes would be expected to have with as many pairs'),
  trials: z.int(),
  allTried: z.boolean(),
  standards: z.strictObject({ fixed: z.array(standard), moving: z.array(standard) }),
});
export type MatchAnswer = z.infer<typeof matchAnswerSchema>;
