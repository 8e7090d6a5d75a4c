import { buildOutlineTree } from '../../src/geometry/motion/outline-tree.ts';
import { type Passage, passage } from '../../src/geometry/motion/passage.ts';
import { distance, type Vec } from '../../src/geometry/plane/vec.ts';
import { leastSampled } from './oracles/dense-sampling.ts';
import { leastDistanceBounds, placedAt } from './oracles/lipschitz.ts';
import {
  boundaryDistance,
  contains,
  nested,
  outlineGap,
  type Solid,
  sharedDepth,
  solidDistance,
  solidOf,
} from './oracles/solid.ts';
import type { Setting } from './random-settings.ts';

/** Rounding of both sides, coordinates to some 500 mm; farther poles add theirs through `toleranceMm`. */
const roundingMm = 1e-9;
/** An overlap shallower than this may be told either way. */
const tellableMm = 3e-6;

export const passageOf = ({ fixed, moving, start, motion }: Setting): Passage =>
  passage(buildOutlineTree(fixed), buildOutlineTree(moving), start, motion);

/**
 * What is wrong with an answer, measured by brute force alone; nothing when it is right. The lower bound is sought to
 * within `unprovedMm`: the less, the longer it takes. The upper one is as sharp as rounding.
 */
export function distanceFaults(setting: Setting, answer: Passage, unprovedMm: number): string[] {
  const fixed = solidOf(setting.fixed);
  const moving = solidOf(setting.moving);
  const { start, motion } = setting;
  const { low, high } = leastDistanceBounds(fixed, moving, start, motion, unprovedMm);
  const given = answer.distanceMm ?? Number.NaN;
  const slack = roundingMm + (answer.state === 'clear' ? 0 : answer.toleranceMm);
  const sampled = leastSampled(fixed, moving, start, motion, 24);
  return [
    ...(given <= high + slack ? [] : [`says ${given}, but ${high} was measured`]),
    ...(given >= low - slack ? [] : [`says ${given}, but it is never under ${low}`]),
    ...(given <= sampled + roundingMm ? [] : [`says ${given}, but ${sampled} was sampled`]),
    ...(answer.state !== 'clear' || given > 0 ? [] : ['clear at no distance']),
    ...witnessFaults(setting, answer, fixed, moving),
  ];
}

/** The witness points lie on the two outlines at that instant and are as far apart as the answer says. */
export function witnessFaults({ start, motion }: Setting, answer: Passage, fixed: Solid, moving: Solid): string[] {
  const { nearest } = answer;
  if (!nearest) return ['no witness'];
  const placed = placedAt(moving, start, motion, nearest.at);
  // an overlap without a first contact is witnessed by a point inside both
  const off = (solid: Solid, p: Vec): number =>
    answer.state === 'fouls' && nearest.at === 0 && contains(solid, p) ? 0 : boundaryDistance(solid, p);
  const slack = answer.state === 'clear' ? roundingMm + answer.toleranceMm / 1000 : answer.toleranceMm;
  const apart = distance(nearest.fixedAt, nearest.movingAt);
  return [
    ...(off(fixed, nearest.fixedAt) <= slack ? [] : [`fixed witness ${off(fixed, nearest.fixedAt)} off its outline`]),
    ...(off(placed, nearest.movingAt) <= slack
      ? []
      : [`moving witness ${off(placed, nearest.movingAt)} off its outline`]),
    ...(Math.abs(apart - (answer.distanceMm ?? 0)) <= slack ? [] : [`witnesses ${apart} apart`]),
    ...(nearest.at >= 0 && nearest.at <= 1 ? [] : [`witness at ${nearest.at}`]),
    ...(answer.state === 'clear' && Math.abs(solidDistance(fixed, placed) - apart) > slack
      ? [`nearer at the witness's instant: ${solidDistance(fixed, placed)}`]
      : []),
  ];
}

/** Compares the overlapping parts of a motion with the solids at many instants: evenly spread, and round every end. */
export function intervalFaults({ fixed, moving, start, motion }: Setting, answer: Passage, count: number): string[] {
  const still = solidOf(fixed);
  const mover = solidOf(moving);
  const ends = answer.overlaps.flatMap(({ from, to }) => [from, to]);
  const around = ends.flatMap((t) => [-1e-2, -1e-4, -1e-6, 1e-6, 1e-4, 1e-2].map((by) => t + by));
  const between = [0, ...ends, 1].map((t, i, all) => (t + (all[i + 1] ?? 1)) / 2);
  const even = Array.from({ length: count + 1 }, (_, i) => i / count);
  const instants = [...around, ...between, ...even].filter((t) => t >= 0 && t <= 1);
  const faults = instants.flatMap((t) => {
    const inside = answer.overlaps.some(({ from, to }) => t > from && t < to);
    const edge = ends.some((end) => Math.abs(end - t) < 1e-9);
    const truth = relationOf(still, placedAt(mover, start, motion, t));
    if (truth === 'overlap' && !inside && !edge) return [`overlaps at ${t}, told clear of it`];
    return truth === 'apart' && inside && !edge ? [`apart at ${t}, told to overlap`] : [];
  });
  return [
    ...faults,
    ...(answer.overlaps.length > 0 === (answer.state === 'fouls') ? [] : [`${answer.state} with overlaps`]),
  ];
}

function relationOf(fixed: Solid, moving: Solid): 'apart' | 'overlap' | 'touching' {
  const { mm } = outlineGap(fixed, moving);
  if (mm > 1e-7) return nested(fixed, moving) ? 'overlap' : 'apart';
  return sharedDepth(fixed, moving) > tellableMm ? 'overlap' : 'touching';
}
