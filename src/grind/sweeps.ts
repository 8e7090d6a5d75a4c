import type { Pass } from '../clearance/passes.ts';
import type { Side } from '../geometry/arc-points.ts';
import { type SweptRegion, sweptRegion } from '../geometry/motion/swept-region.ts';
import { offset } from '../geometry/offset.ts';
import { outlinesOf } from '../geometry/polygons.ts';

/** What a section covers as it passes, shrunk by `shrunkByMm`. */
export type Sweeps = (pass: Pass, side: Side, shrunkByMm: number) => SweptRegion;

/** Sweeps within a tolerance, each worked out once however many bands it passes. */
export function sweepsWithin(toleranceMm: number): Sweeps {
  const known = new Map<string, SweptRegion>();
  return (pass, side, shrunkByMm) => {
    const key = `${passKey(pass)} ${side} ${shrunkByMm}`;
    const swept = known.get(key) ?? sweep(pass, side, shrunkByMm, toleranceMm);
    known.set(key, swept);
    return swept;
  };
}

/** Tells apart passes that cover different ground. */
export const passKey = ({ section, start, motion }: Pass): string =>
  JSON.stringify([section.id, start.turnRad, start.shift, motion]);

function sweep({ section, start, motion }: Pass, side: Side, shrunkByMm: number, toleranceMm: number): SweptRegion {
  const swept = sweptRegion(section.loops, start, motion, toleranceMm, side);
  if (shrunkByMm === 0) return swept;
  const shrunk = offset(outlinesOf(swept.polygons), -shrunkByMm, toleranceMm, side);
  return { polygons: shrunk.polygons, boundMm: swept.boundMm + shrunk.boundMm };
}
