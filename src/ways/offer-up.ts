import type { FitFile } from '../files/fit-file.ts';
import { round6 } from '../geometry/plane/rounding.ts';
import { length } from '../geometry/plane/vec.ts';
import { mmIn } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { WayPlace } from './way-along.ts';

/** A way as a fit file has it, in the units of the file and degrees. */
export const offerUpOf = (way: readonly WayPlace[], units: Units): NonNullable<FitFile['offerUp']> =>
  way.map(({ turnRad, standOffMm, shift }) => ({
    standOff: round6(standOffMm / mmIn(units)),
    turn: round6((turnRad * 180) / Math.PI),
    ...(shift === undefined || length(shift) === 0
      ? {}
      : { shift: [round6(shift.x / mmIn(units)), round6(shift.y / mmIn(units))] as [number, number] }),
  }));
