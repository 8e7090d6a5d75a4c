import type { LoopFile } from '../../src/files/part-file.ts';
import type { Points, VertexFile } from './arc.ts';

/** A coordinate without digits that only arithmetic brings: to a millionth of a unit, far below any tracing. */
const tidy = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;

export const tidiedPoints = (points: readonly VertexFile[]): Points =>
  points.map(([x, y, bulge]) => (bulge === undefined ? [tidy(x), tidy(y)] : [tidy(x), tidy(y), bulge]));

export const tidied = (loop: LoopFile): LoopFile =>
  'circle' in loop
    ? { circle: [tidy(loop.circle[0]), tidy(loop.circle[1])], radius: tidy(loop.radius) }
    : tidiedPoints(loop);
