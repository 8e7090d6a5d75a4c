import type { FitFile } from '../files/fit-file.ts';
import { round6 } from '../geometry/plane/rounding.ts';
import { mmIn } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { WayPoint } from './way-along.ts';

/** A way as a fit file has it, in the units of the file and degrees. */
export const offerUpOf = (way: readonly WayPoint[], units: Units): NonNullable<FitFile['offerUp']> =>
  way.map(({ turnRad, standOffMm }) => ({
    standOff: round6(standOffMm / mmIn(units)),
    turn: round6((turnRad * 180) / Math.PI),
  }));
