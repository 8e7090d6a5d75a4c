import { apply, type Rigid } from '../plane/rigid.ts';
import { type Vec, vec } from '../plane/vec.ts';
import type { LegMeasure } from './leg-measure.ts';
import type { Motion } from './motion.ts';
import { boxOfOutline, type OutlineTree } from './outline-tree.ts';
import { SlideMeasure } from './slide-measure.ts';
import { roundingMm } from './tolerances.ts';
import { TurnMeasure } from './turn-measure.ts';

/** The measure that is exact for a motion, to the least error it can be had with. */
export function measureOf(fixed: OutlineTree, moving: OutlineTree, start: Rigid, motion: Motion): LegMeasure {
  if (motion.kind === 'slide') return new SlideMeasure(fixed, moving, start, motion.by);
  return (
    farTurnAsSlide(fixed, moving, start, motion) ?? new TurnMeasure(fixed, moving, start, motion.pole, motion.angleRad)
  );
}

/**
 * A turn about a pole so far away that rounding in the radius (some ulps of D) would cost more than taking the turn
 * for a slide: the path of a point at distance D departs from its chord by no more than D·α²/8, and the body turns
 * by α about its own middle.
 */
function farTurnAsSlide(
  fixed: OutlineTree,
  moving: OutlineTree,
  start: Rigid,
  motion: Extract<Motion, { kind: 'turn' }>,
): LegMeasure | null {
  const { pole, angleRad } = motion;
  const away = Math.hypot(pole.x, pole.y);
  if (away < 1e6 || Math.abs(angleRad) > 1e-3 || moving.edgeCount === 0) return null;
  const { minX, minY, maxX, maxY } = boxOfOutline(moving);
  const middle = apply(start, vec((minX + maxX) / 2, (minY + maxY) / 2));
  const arm = vec(middle.x - pole.x, middle.y - pole.y);
  const armMm = Math.hypot(arm.x, arm.y);
  const halfSize = Math.hypot(maxX - minX, maxY - minY) / 2;
  const deviationMm = (armMm * angleRad * angleRad) / 8 + Math.abs(angleRad) * halfSize;
  if (deviationMm > roundingMm(armMm)) return null;
  return new SlideMeasure(fixed, moving, start, chordOf(arm, angleRad), deviationMm);
}

/** (R(α) − I)·arm without cancellation. */
function chordOf(arm: Vec, angleRad: number): Vec {
  const sin = Math.sin(angleRad);
  const versine = 2 * Math.sin(angleRad / 2) ** 2;
  return vec(-versine * arm.x - sin * arm.y, sin * arm.x - versine * arm.y);
}
