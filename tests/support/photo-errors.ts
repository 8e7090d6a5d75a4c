import { distance, type Vec } from '../../src/geometry/plane/vec.ts';
import { carried } from '../../src/intake/photo/homography.ts';
import { setPicture } from '../../src/intake/photo/set-picture.ts';
import { type ErrorThere, errorAt } from '../../src/intake/photo/setting-error.ts';
import { randomCamera, seenInPlane } from './camera.ts';
import { otherHoles, settled, shaken, touchedRoughly } from './plate.ts';
import { Random } from './random.ts';

/** How stated errors did beside true ones, over places and views. */
export interface Coverage {
  /** The share of true errors within the stated one. */
  readonly covered: number;
  /** Mean stated error over the root mean square of the true ones. */
  readonly meanOverRms: number;
}

export interface ErrorTrial {
  readonly holes: readonly Vec[];
  readonly views: number;
  readonly firstSeed: number;
  readonly sigmaPx: number;
}

/**
 * Views of the plate from all over, the holes touched with normal noise whose 95 % limit is what is stated. The true
 * error is that at the holes the setting is not told of, each by itself: `settingMm` against where their exact images
 * are put, `traceMm` against where images touched with the same noise are put.
 */
export function errorCoverage({ holes, views, firstSeed, sigmaPx }: ErrorTrial): Record<keyof ErrorThere, Coverage> {
  const setting: Pair[] = [];
  const trace: Pair[] = [];
  for (let seed = firstSeed; seed < firstSeed + views; seed += 1) {
    const random = new Random(seed);
    const camera = randomCamera(random);
    const points = touchedRoughly(camera, holes, random, sigmaPx);
    const set = settled(setPicture(points, { touchErrorPx: 1.96 * sigmaPx, knownErrorMm: 0 }));
    for (const at of otherHoles) {
      const stated = errorAt(set, at);
      const px = seenInPlane(camera, at);
      const off = (touch: Vec) => distance(carried(set.fit.toPlane, touch) as Vec, at);
      setting.push({ stated: stated?.settingMm ?? 0, off: off(px) });
      trace.push({ stated: stated?.traceMm ?? 0, off: off(shaken(random, px, sigmaPx)) });
    }
  }
  return { settingMm: coverageOf(setting), traceMm: coverageOf(trace) };
}

interface Pair {
  readonly stated: number;
  readonly off: number;
}

function coverageOf(pairs: readonly Pair[]): Coverage {
  const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;
  return {
    covered: mean(pairs.map(({ stated, off }) => (off <= stated ? 1 : 0))),
    meanOverRms: mean(pairs.map(({ stated }) => stated)) / Math.sqrt(mean(pairs.map(({ off }) => off * off))),
  };
}
