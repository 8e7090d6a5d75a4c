import type { LoopFile } from '../files/part-file.ts';
import type { Loop } from '../geometry/plane/loop.ts';
import { circleLoop } from '../geometry/plane/loop.ts';
import { type Vec, vec } from '../geometry/plane/vec.ts';
import { remembered } from '../geometry/remembered.ts';
import type { DepthRange } from './casting.ts';

export type Units = 'mm' | 'in';

/** Millimetres in one of a file's units. */
export const mmPer = (units: Units): number => (units === 'in' ? 25.4 : 1);

/** A bulge below this keeps within 5e-10 of its chord, but its centre lies too far off to calculate with. */
const straightBulge = 1e-9;

export const pointOf = ([x, y]: readonly [number, number], mm: number): Vec => vec(x * mm, y * mm);

const read = remembered<Loop>(1);

/** A loop of a file, in mm; the very same for as long as the file's is in use. */
export const loopOf = (loop: LoopFile, mm: number): Loop => read(loop, `${mm}`, () => loopRead(loop, mm));

function loopRead(loop: LoopFile, mm: number): Loop {
  if ('circle' in loop) return circleLoop(pointOf(loop.circle, mm), loop.radius * mm);
  return {
    kind: 'path',
    // by index: a pattern takes a list apart by an iterator, and a scan has 100,000 vertices
    vertices: loop.map((vertex) => ({ x: vertex[0] * mm, y: vertex[1] * mm, bulge: bulgeOf(vertex[2] ?? 0) })),
  };
}

const bulgeOf = (bulge: number): number => (Math.abs(bulge) < straightBulge ? 0 : bulge);

export const depthOf = (depth: readonly [number, number] | undefined, mm: number): DepthRange | null =>
  depth === undefined ? null : { fromMm: depth[0] * mm, toMm: depth[1] * mm };
