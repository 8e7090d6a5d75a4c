import { apply, rigid } from '../../geometry/plane/rigid.ts';
import { add, scale, sub, type Vec, vec } from '../../geometry/plane/vec.ts';
import { isAsGood, type Position } from './position.ts';

/** Another position of the moving pattern, told from the best one. */
export interface OtherPosition {
  /** In (−π, π], from the best one on. */
  readonly turnRad: number;
  /** How far the middle of the moving pattern comes to lie from where the best one puts it, mm. */
  readonly shift: Vec;
  readonly pairs: number;
  readonly rmsMm: number;
  /** As many holes come together and as closely; else nearly as many. */
  readonly asGood: boolean;
}

/** Turns that differ by less are one: half a degree. */
const sameTurnRad = Math.PI / 360;

/** The positions after the best, those that are as good first, least turned first. */
export function otherPositions(positions: readonly Position[], moving: readonly Vec[]): OtherPosition[] {
  const [best, ...rest] = positions;
  if (best === undefined) return [];
  const middle = scale(moving.reduce(add, vec(0, 0)), 1 / moving.length);
  return rest
    .map((position) => ({
      turnRad: halfOpen(position.motion.turnRad - best.motion.turnRad),
      shift: sub(apply(position.motion, middle), apply(best.motion, middle)),
      pairs: position.pairs.length,
      rmsMm: position.rmsMm,
      asGood: isAsGood(position, best),
    }))
    .sort(
      (a, b) => Number(b.asGood) - Number(a.asGood) || b.pairs - a.pairs || Math.abs(a.turnRad) - Math.abs(b.turnRad),
    );
}

function halfOpen(rad: number): number {
  const { cos, sin } = rigid(rad, vec(0, 0));
  const turnRad = Math.atan2(sin, cos);
  return turnRad <= sameTurnRad - Math.PI ? turnRad + 2 * Math.PI : turnRad;
}

/** n where the best position and those as good as it stand a whole turn round at every n-th part of it; else 1. */
export function foldOf(others: readonly OtherPosition[]): number {
  const turns = [
    0,
    ...others.filter(({ asGood }) => asGood).map(({ turnRad }) => (turnRad + 2 * Math.PI) % (2 * Math.PI)),
  ];
  const partRad = (2 * Math.PI) / turns.length;
  const isEven = turns.sort((a, b) => a - b).every((turnRad, i) => Math.abs(turnRad - i * partRad) < sameTurnRad);
  return isEven ? turns.length : 1;
}
