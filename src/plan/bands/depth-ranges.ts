import type { DepthRange } from '../../job/casting.ts';

/** Something over a range of depth; null reaches through every depth. */
export interface AtDepth {
  readonly depth: DepthRange | null;
}

/** Ranges that overlap; without depth means every depth. */
export const sharesDepth = (a: DepthRange | null, b: DepthRange | null): boolean =>
  a === null || b === null || (a.fromMm < b.toMm && b.fromMm < a.toMm);

/** A range of depth parted where others begin and end within it. */
export function depthsParted(depth: DepthRange | null, others: readonly AtDepth[]): (DepthRange | null)[] {
  if (depth === null) return [null];
  const ends = others.flatMap((other) => (other.depth === null ? [] : [other.depth.fromMm, other.depth.toMm]));
  return rangesBetween([depth.fromMm, ...ends.filter((mm) => mm > depth.fromMm && mm < depth.toMm), depth.toMm]);
}

/** The ranges between depths, each told once, in order. */
export function rangesBetween(depths: readonly number[]): DepthRange[] {
  const stops = [...new Set(depths)].sort((a, b) => a - b);
  return stops.slice(1).map((toMm, i) => ({ fromMm: stops[i] as number, toMm }));
}

export const contains = (outer: DepthRange, inner: DepthRange): boolean =>
  outer.fromMm <= inner.fromMm && inner.toMm <= outer.toMm;

/** What two ranges have in common; null where that is nothing. */
export function commonDepth(a: DepthRange, b: DepthRange): DepthRange | null {
  const [fromMm, toMm] = [Math.max(a.fromMm, b.fromMm), Math.min(a.toMm, b.toMm)];
  return fromMm < toMm ? { fromMm, toMm } : null;
}

/** The gap between two ranges of depth; without depth, every depth. */
export const gapMm = (a: DepthRange | null, b: DepthRange | null): number =>
  a === null || b === null ? 0 : Math.max(0, a.fromMm - b.toMm, b.fromMm - a.toMm);
