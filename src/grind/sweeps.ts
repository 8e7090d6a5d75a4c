import type { Pass } from '../clearance/passes.ts';
import type { Side } from '../geometry/arc-points.ts';
import { metalOnLeft } from '../geometry/metal-on-left.ts';
import { type SweptRegion, sweptRegion } from '../geometry/motion/swept-region.ts';
import { offset } from '../geometry/offset.ts';
import { loopsOf } from '../geometry/polygons.ts';

/** What a section covers as it passes, its outline first shrunk by `shrunkByMm`. */
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
  if (shrunkByMm === 0) return sweptRegion(section.loops, start, motion, toleranceMm, side);
  const shrunk = offset(metalOnLeft(section.loops), -shrunkByMm, toleranceMm, side);
  const swept = sweptRegion(loopsOf(shrunk.polygons), start, motion, toleranceMm, side);
  return { polygons: swept.polygons, boundMm: swept.boundMm + shrunk.boundMm };
}
