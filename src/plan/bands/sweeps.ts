import { motionKey } from '../../clearance/passages.ts';
import type { Pass } from '../../clearance/passes.ts';
import { type Sweep, type SweptRegion, sweepOf } from '../../geometry/motion/swept-region.ts';
import type { Side } from '../../geometry/plane/arc-points.ts';
import { offset } from '../../geometry/polygons/offset.ts';
import { outlinesOf } from '../../geometry/polygons/polygons.ts';
import { remembered } from '../../geometry/remembered.ts';

/** What a section covers as it passes, shrunk by `shrunkByMm`. */
export type Sweeps = (pass: Pass, side: Side, shrunkByMm: number) => SweptRegion;

/** Of one outline; a job's legs and stretches of them, both sides, with and without errors. */
const mostSweeps = 64;
const sweeps = remembered<Sweep>(mostSweeps);
const regions = remembered<SweptRegion>(2 * mostSweeps);

/** Sweeps within a tolerance, each worked out once however many bands it passes and whatever clearance is asked. */
export const sweepsWithin =
  (toleranceMm: number): Sweeps =>
  ({ section: { loops }, start, motion }, side, shrunkByMm) => {
    const way = motionKey(start, motion);
    return regions(loops, `${way} ${side} ${shrunkByMm} ${toleranceMm}`, () => {
      const sweep = sweeps(loops, way, () => sweepOf(loops, start, motion));
      return shrunk(sweep(toleranceMm, side), side, shrunkByMm, toleranceMm);
    });
  };

/** Tells apart passes that cover different ground. */
export const passKey = ({ section, start, motion }: Pass): string =>
  JSON.stringify([section.id, section.depth, start.turnRad, start.shift, motion]);

function shrunk(swept: SweptRegion, side: Side, byMm: number, toleranceMm: number): SweptRegion {
  if (byMm === 0) return swept;
  const less = offset(outlinesOf(swept.polygons), -byMm, toleranceMm, side);
  return { polygons: less.polygons, boundMm: swept.boundMm + less.boundMm };
}
