import type { Pass } from '../../clearance/passes.ts';
import { type Sweep, type SweptRegion, sweepOf } from '../../geometry/motion/swept-region.ts';
import type { Side } from '../../geometry/plane/arc-points.ts';
import { offset } from '../../geometry/polygons/offset.ts';
import { outlinesOf } from '../../geometry/polygons/polygons.ts';

/** What a section covers as it passes, shrunk by `shrunkByMm`. */
export type Sweeps = (pass: Pass, side: Side, shrunkByMm: number) => SweptRegion;

/** Sweeps within a tolerance, each worked out once however many bands it passes. */
export function sweepsWithin(toleranceMm: number): Sweeps {
  const known = new Map<string, SweptRegion>();
  const sweeps = new Map<string, Sweep>();
  return (pass, side, shrunkByMm) => {
    const ground = passKey(pass);
    const key = `${ground} ${side} ${shrunkByMm}`;
    const sweep = sweeps.get(ground) ?? sweepOf(pass.section.loops, pass.start, pass.motion);
    const swept = known.get(key) ?? shrunk(sweep(toleranceMm, side), side, shrunkByMm, toleranceMm);
    sweeps.set(ground, sweep);
    known.set(key, swept);
    return swept;
  };
}

/** Tells apart passes that cover different ground. */
export const passKey = ({ section, start, motion }: Pass): string =>
  JSON.stringify([section.id, section.depth, start.turnRad, start.shift, motion]);

function shrunk(swept: SweptRegion, side: Side, byMm: number, toleranceMm: number): SweptRegion {
  if (byMm === 0) return swept;
  const less = offset(outlinesOf(swept.polygons), -byMm, toleranceMm, side);
  return { polygons: less.polygons, boundMm: swept.boundMm + less.boundMm };
}
