import type { PositionFile, WanderFile } from '../../src/files/fit-file.ts';
import type { JobFile } from '../../src/files/job-file.ts';

type Figure = 'turn' | 'standOff';

/** A job with another way in; where nothing is left of it there is nothing to stray from either. */
export function withWay(job: JobFile, offerUp: readonly PositionFile[]): JobFile {
  const { wander, ...fit } = job.fit;
  const kept = wander === undefined || offerUp.length < 2 ? {} : { wander };
  return { ...job, fit: { ...fit, offerUp: [...offerUp], ...kept } };
}

/** How far one may stray from the way in, one figure of it changed; none where all are nothing. */
export function withWander(job: JobFile, said: WanderFile): JobFile {
  const { wander: before, ...fit } = job.fit;
  const wander = { ...before, ...said };
  const strays = Object.values(wander).some((amount) => amount !== 0);
  return { ...job, fit: strays ? { ...fit, wander } : fit };
}

/** Which figures of a position are those of home, one slide or turn after the other: home stays, and so do they. */
export const heldByHome = (way: readonly PositionFile[], index: number): Readonly<Record<Figure, boolean>> => ({
  turn: sharing(way, index, 'turn').includes(way.length - 1),
  standOff: sharing(way, index, 'standOff').includes(way.length - 1),
});

/**
 * A way with one position moved. Those beside it that have its turn or its stand-off keep sharing that, so that slides stay
 * slides and turns stay turns. A way on which a leg would come to nothing stays as it is.
 */
export function withPositionMoved(
  way: readonly PositionFile[],
  index: number,
  to: Readonly<Record<Figure, number>>,
): readonly PositionFile[] {
  const held = heldByHome(way, index);
  const moved = (['turn', 'standOff'] as const).reduce((positions, name) => {
    const along = held[name] ? [] : sharing(way, index, name);
    return positions.map((position, i) => (along.includes(i) ? { ...position, [name]: to[name] } : position));
  }, way);
  const isNothing = (i: number, on: readonly PositionFile[]): boolean => i > 0 && isSame(on[i - 1], on[i]);
  return moved.some((_, i) => isNothing(i, moved) && !isNothing(i, way)) ? way : moved;
}

/** The positions that have a figure in common with one of them, one after the other. */
function sharing(way: readonly PositionFile[], index: number, name: Figure): number[] {
  const value = of(way[index], name);
  const isOther = (i: number): boolean => of(way[i], name) !== value;
  let [from, to] = [index, index];
  while (from > 0 && !isOther(from - 1)) from -= 1;
  while (to < way.length - 1 && !isOther(to + 1)) to += 1;
  return Array.from({ length: to - from + 1 }, (_, i) => from + i);
}

const of = (position: PositionFile | undefined, name: Figure): number => position?.[name] ?? 0;

const isSame = (a: PositionFile | undefined, b: PositionFile | undefined): boolean =>
  of(a, 'turn') === of(b, 'turn') &&
  of(a, 'standOff') === of(b, 'standOff') &&
  (a?.shift?.[0] ?? 0) === (b?.shift?.[0] ?? 0) &&
  (a?.shift?.[1] ?? 0) === (b?.shift?.[1] ?? 0);
