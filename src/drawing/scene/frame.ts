import { type Box, boxAround } from '../../geometry/plane/edge-box.ts';
import { type Vec, vec } from '../../geometry/plane/vec.ts';

export const isEmpty = (box: Box): boolean => box.minX > box.maxX;

export const widthOf = (box: Box): number => Math.max(0, box.maxX - box.minX);
export const heightOf = (box: Box): number => Math.max(0, box.maxY - box.minY);
export const middleOf = (box: Box): Vec => vec((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2);

export const grown = (box: Box, by: number): Box => ({
  minX: box.minX - by,
  minY: box.minY - by,
  maxX: box.maxX + by,
  maxY: box.maxY + by,
});

export const overlap = (a: Box, b: Box): boolean =>
  a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;

export const boxOfPoint = ({ x, y }: Vec): Box => ({ minX: x, minY: y, maxX: x, maxY: y });

export const boxOfPoints = (points: readonly Vec[]): Box => boxAround(points.map(boxOfPoint));

export const rectangle = (box: Box): readonly Vec[] => [
  vec(box.minX, box.minY),
  vec(box.maxX, box.minY),
  vec(box.maxX, box.maxY),
  vec(box.minX, box.maxY),
];
