import type { Region } from '../../src/geometry/plane/loop.ts';
import { thinLoop } from '../../src/geometry/plane/thin-loop.ts';
import { remembered } from '../../src/geometry/remembered.ts';

const finenesses = 5;
const known = remembered<Region>(finenesses);

/** Outlines with fewer vertices, nowhere further than `withinMm` from what they are; worked out once as long as they are in use. */
export const thinned = (region: Region, withinMm: number): Region =>
  withinMm === 0 ? region : known(region, String(withinMm), () => region.map((loop) => thinLoop(loop, withinMm)));
