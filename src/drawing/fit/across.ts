import type { Box } from '../../geometry/plane/edge-box.ts';
import type { Region } from '../../geometry/plane/loop.ts';
import { boxOfRegion } from '../../geometry/plane/region-box.ts';
import type { DepthRange } from '../../job/casting.ts';
import type { Part } from '../../job/part.ts';
import { middleOf } from '../scene/frame.ts';
import { type DrawInput, foulsOf } from './draw-input.ts';
import type { SeenFrom } from './side-profile.ts';

/** How depth runs across the side view: from the right the moving part is on the left, as on a third-angle drawing. */
export interface Across {
  readonly from: SeenFrom;
  /** z (out of the fixed face, towards the moving part) to the view's own x. */
  readonly x: (zMm: number) => number;
  /** A section without depth is drawn over this much. */
  readonly every: DepthRange;
}

/** How far a section without depth is drawn past the others, mm. */
const pastOthersMm = 10;

/** How depth runs, seen from the side it was seen from before, else from that of what matters. */
export function acrossOf({ joint, check, seenFrom }: Pick<DrawInput, 'joint' | 'check' | 'seenFrom'>): Across {
  const from = seenFrom ?? sideThatMatters({ joint, check });
  return { from, x: (z) => (from === 'right' ? 0 - z : z), every: everyDepth(joint) };
}

/**
 * The side of what is in the way, else of the closest place: the one place where page, drawing and report have it from.
 * A plan has no say, so that a drawing before it was made and one with it are of one hand.
 */
function sideThatMatters(input: Pick<DrawInput, 'joint' | 'check'>): SeenFrom {
  const { wayIn, home } = input.check;
  const xs = foulsOf(input).map(({ loops }) => middleOf(boxOfRegion(loops)).x);
  const nearest = (wayIn?.nearest ?? home.nearest)?.fixedAt.x ?? 0;
  const x = xs.length > 0 ? xs.reduce((sum, x) => sum + x, 0) : nearest;
  return x < 0 ? 'left' : 'right';
}

function everyDepth({ fixed, moving }: DrawInput['joint']): DepthRange {
  const known = [...fixed.sections, ...moving.sections].flatMap(({ depth }) => (depth === null ? [] : [depth]));
  return {
    fromMm: Math.min(-pastOthersMm, ...known.map(({ fromMm }) => fromMm - pastOthersMm)),
    toMm: Math.max(pastOthersMm, ...known.map(({ toMm }) => toMm + pastOthersMm)),
  };
}

/** The z range of a depth: fixed metal lies behind the face, moving metal in front of it at its stand-off. */
export function zRange(depth: DepthRange | null, part: Part, { every }: Across, standOffMm = 0): DepthRange {
  const { fromMm, toMm } = depth ?? every;
  if (part === 'fixed') return { fromMm: 0 - toMm, toMm: 0 - fromMm };
  return { fromMm: standOffMm + fromMm, toMm: standOffMm + toMm };
}

/** A rectangle of the side view. */
export function blockOf(z: DepthRange, minY: number, maxY: number, { x }: Across): Box {
  const [a, b] = [x(z.fromMm), x(z.toMm)];
  return { minX: Math.min(a, b), maxX: Math.max(a, b), minY, maxY };
}

/** A rectangle for each loop of a band. */
export const bandBlocks = (loops: Region, depth: DepthRange | null, part: Part, across: Across): Box[] =>
  loops.map((loop) => {
    const { minY, maxY } = boxOfRegion([loop]);
    return blockOf(zRange(depth, part, across), minY, maxY, across);
  });
