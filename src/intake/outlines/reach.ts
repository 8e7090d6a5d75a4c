import { farthestMm } from '../../files/far-lengths.ts';
import type { Vec } from '../../geometry/plane/vec.ts';

/** Whether a point (mm) is finite and no farther out than any drawing of a casting. */
export const inReach = ({ x, y }: Vec): boolean => Math.abs(x) <= farthestMm && Math.abs(y) <= farthestMm;
