import type { Vec } from '../../geometry/plane/vec.ts';
import { fewestPairs, type MatchOptions } from './pattern.ts';

/**
 * How many of so many trial positions would bring `further` holes together, beside those the position was made from, if
 * the moving holes were strewn evenly over the fixed pattern: each moving hole then meets one of the fixed with the share
 * of the area that lies within reach of them, so that their number goes by Poisson's law.
 */
export function expectedByChance(
  fixed: readonly Vec[],
  movingCount: number,
  further: number,
  trials: number,
  options: MatchOptions,
): number {
  if (further <= 0) return trials;
  const { reachMm } = options;
  const used = fewestPairs(options);
  const chances = (movingCount - used) * (fixed.length - used);
  const mean = (chances * Math.PI * reachMm ** 2) / boxAreaMm2(fixed, reachMm);
  return trials * poissonTail(mean, further);
}

function boxAreaMm2(points: readonly Vec[], marginMm: number): number {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const span = (values: readonly number[]): number => Math.max(...values) - Math.min(...values) + 2 * marginMm;
  return span(xs) * span(ys);
}

/** The chance of `least` or more where `mean` are expected. */
function poissonTail(mean: number, least: number): number {
  // summed from the first term on: one minus the head would lose all its digits where the tail is small
  let logTerm = least * Math.log(mean) - mean;
  for (let k = 2; k <= least; k++) logTerm -= Math.log(k);
  let term = Math.exp(logTerm);
  let sum = 0;
  for (let k = least; term > 0 && k < least + 1000; k++) {
    sum += term;
    term *= mean / (k + 1);
    if (term < sum * 1e-12) break;
  }
  return Math.min(1, sum);
}
