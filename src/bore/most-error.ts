import { add, cross, dot, length, scale, type Vec, vec } from '../geometry/plane/vec.ts';

/**
 * The farthest that Σ wᵢ·δᵢ can come from nothing while no δᵢ is beyond ±1: a farthest place is a corner of that figure,
 * and the sign of each δᵢ there is the side of some line along a weight on which wᵢ lies.
 */
export function mostError(weights: readonly Vec[]): number {
  const some = weights.filter((weight) => length(weight) > 0);
  return Math.max(0, ...some.map((along) => length(cornerBeside(along, some))));
}

const cornerBeside = (along: Vec, weights: readonly Vec[]): Vec =>
  weights.reduce((sum, weight) => add(sum, scale(weight, sideOf(along, weight))), vec(0, 0));

function sideOf(along: Vec, weight: Vec): 1 | -1 {
  const side = cross(along, weight);
  const hair = 1e-12 * length(along) * length(weight);
  return (Math.abs(side) > hair ? side : dot(along, weight)) >= 0 ? 1 : -1;
}
