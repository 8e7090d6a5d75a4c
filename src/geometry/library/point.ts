/** A point of the plane, `[x, y]`, in mm. */
export type Point = readonly [x: number, y: number];

/** Callers are not bound to have a compiler. */
export const isPoint = (point: unknown): point is Point =>
  Array.isArray(point) && point.length === 2 && point.every(Number.isFinite);
