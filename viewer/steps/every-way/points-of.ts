import type { JobFile } from '../../../src/files/job-file.ts';
import { mmIn } from '../../../src/job/length-text.ts';
import type { WayPoint } from '../../../src/ways/way-along.ts';

/** The positions of a way in on the map. */
export const pointsOf = ({ offerUp = [], units }: JobFile['fit']): WayPoint[] =>
  offerUp.map(({ turn = 0, standOff = 0 }) => ({
    turnRad: (turn * Math.PI) / 180,
    standOffMm: standOff * mmIn(units),
  }));
