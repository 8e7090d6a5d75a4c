import { distance } from '../geometry/plane/vec.ts';
import type { HolePair } from '../job/job.ts';

/**
 * How many times farther apart paired holes stand in the moving part than in the fixed one, over all of them together,
 * so that holes paired crosswise tell nothing else; null where they have no spread.
 */
export function spacingRatio(pairs: readonly HolePair[]): number | null {
  const fixedMm = spreadMm(pairs.map(({ fixed }) => fixed.at));
  const movingMm = spreadMm(pairs.map(({ moving }) => moving.at));
  return fixedMm > 0 && movingMm > 0 ? movingMm / fixedMm : null;
}

const spreadMm = (places: readonly HolePair['fixed']['at'][]): number =>
  places.reduce((sum, a, i) => places.slice(i + 1).reduce((more, b) => more + distance(a, b), sum), 0);
