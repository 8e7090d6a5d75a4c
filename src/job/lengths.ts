import type { LoopFile } from '../files/part-file.ts';
import type { Loop } from '../geometry/plane/loop.ts';
import { circleLoop } from '../geometry/plane/loop.ts';
import { type Vec, vec } from '../geometry/plane/vec.ts';
import type { DepthRange } from './casting.ts';

export type Units = 'mm' | 'in';

/** Millimetres in one of a file's units. */
export const mmPer = (units: Units): number => (units === 'in' ? 25.4 : 1);

/** A bulge below this keeps within 5e-10 of its chord, but its centre lies too far off to calculate with. */
const straightBulge = 1e-9;

export const pointOf = ([x, y]: readonly [number, number], mm: number): Vec => vec(x * mm, y * mm);

/** A loop of a file, in mm. */
export function loopOf(loop: LoopFile, mm: number): Loop {
  if ('circle' in loop) return circleLoop(pointOf(loop.circle, mm), loop.radius * mm);
  return {
    kind: 'path',
    vertices: loop.map(([x, y, bulge = 0]) => ({
      ...vec(x * mm, y * mm),
      bulge: Math.abs(bulge) < straightBulge ? 0 : bulge,
    })),
  };
}

export const depthOf = (depth: readonly [number, number] | undefined, mm: number): DepthRange | null =>
  depth === undefined ? null : { fromMm: depth[0] * mm, toMm: depth[1] * mm };
