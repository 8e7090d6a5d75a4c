import { round6 } from '../geometry/plane/rounding.ts';
import type { DepthRange } from '../job/casting.ts';

export const roundOrNull = (x: number | null): number | null => (x === null ? null : round6(x));

/** An angle as an answer gives it: degrees. */
export const roundDegrees = (rad: number): number => round6((rad * 180) / Math.PI);

/** A range of depth as an answer gives it: from–to, mm. */
export const roundDepth = (depth: DepthRange | null): [number, number] | null =>
  depth && [round6(depth.fromMm), round6(depth.toMm)];
