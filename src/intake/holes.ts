import type { CircleLoop, Loop } from '../geometry/plane/loop.ts';
import { distance, scale } from '../geometry/plane/vec.ts';
import type { HoleKind } from '../job/casting.ts';
import type { AskedHole } from './import-options.ts';
import { idPrefixes } from './layers.ts';

/** A circle (mm) that is a hole. */
export interface RoundHole {
  readonly id: string;
  readonly kind: HoleKind;
  readonly circle: CircleLoop;
}

/** Holes no further apart than this across count as in one column when they are numbered. */
const sameColumnMm = 0.01;

/** Names circles D1, D2 … by their kind, from left to right and from low to high; ids in `taken` are passed over. */
export function numbered(
  circles: readonly (Omit<RoundHole, 'id'> & { readonly prefix?: string })[],
  taken: ReadonlySet<string>,
): RoundHole[] {
  const counts = new Map<string, number>();
  const next = (prefix: string): string => {
    const count = (counts.get(prefix) ?? 0) + 1;
    counts.set(prefix, count);
    const id = `${prefix}${count}`;
    return taken.has(id) ? next(prefix) : id;
  };
  return [...circles]
    .sort(leftToRight)
    .map(({ kind, circle, prefix = idPrefixes[kind] }) => ({ id: next(prefix), kind, circle }));
}

type HoleCircle = Pick<RoundHole, 'circle'>;

function leftToRight({ circle: one }: HoleCircle, { circle: other }: HoleCircle): number {
  const column = ({ centre }: CircleLoop): number => Math.round(centre.x / sameColumnMm);
  return column(one) - column(other) || one.centre.y - other.centre.y;
}

export const isCircle = (loop: Loop): loop is CircleLoop => loop.kind === 'circle';

/** The smallest circle round the point where a hole is asked for, in a part whose unit is `partMm`; null for none. */
export function circleRound(loops: readonly Loop[], { at }: AskedHole, partMm: number): CircleLoop | null {
  const point = scale(at, partMm);
  const round = loops.filter(isCircle).filter(({ centre, radius }) => distance(centre, point) < radius);
  return round.sort((one, other) => one.radius - other.radius)[0] ?? null;
}
