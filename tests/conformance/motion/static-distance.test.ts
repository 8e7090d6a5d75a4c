import { beforeAll, describe, expect, test } from 'vitest';
import type { Region } from '../../../src/geometry/plane/loop.ts';
import { identity } from '../../../src/geometry/plane/rigid.ts';
import { Geos } from '../../bench/peers/geos.ts';
import { jstsDistance, jstsPolygon } from '../../bench/peers/jsts.ts';
import { chordMm, ringsOf } from '../../bench/peers/rings.ts';
import { passageOf } from '../../support/judge-passage.ts';
import { Random } from '../../support/random.ts';
import { randomPolygon, randomRegion } from '../../support/random-outlines.ts';
import { randomSetting, type Setting } from '../../support/random-settings.ts';
import { standing } from '../../support/shapes.ts';

// Sources: GEOS 3.13 (geos-wasm) and JSTS 2.12, each measuring the same two polygons standing still.
let geos: Geos;
beforeAll(async () => {
  geos = await Geos.start();
});

function geosDistance({ fixed, moving, start }: Setting): number {
  const a = geos.polygon(ringsOf(fixed), identity);
  const b = geos.polygon(ringsOf(moving), start);
  const distanceMm = geos.distance(a, b);
  geos.free(a, b);
  return distanceMm;
}

function seededSettings(count: number, regionOf: (random: Random, sizeMm: number) => Region): Setting[] {
  return Array.from({ length: count }, (_, seed) => {
    const random = new Random(seed + 1);
    const { start } = randomSetting(random);
    return { fixed: regionOf(random, 100), moving: regionOf(random, 60), start, motion: standing };
  });
}

const withHole = (random: Random, sizeMm: number): Region => [
  ...randomPolygon(random, sizeMm),
  ...(random.chance(0.5) ? randomPolygon(random, sizeMm * 0.3) : []),
];

/** Both see the same straight edges: what is left is rounding of some 300 mm. */
const roundingMm = 1e-9;

describe('the least distance of two solids standing still', () => {
  test('of straight edges, with and without holes, is that of GEOS: 200 pairs', () => {
    const settings = seededSettings(200, withHole);
    const wrong = settings.flatMap((setting, seed) => {
      const [ours, theirs] = [passageOf(setting).distanceMm ?? Number.NaN, geosDistance(setting)];
      return Math.abs(ours - theirs) <= roundingMm ? [] : [{ seed, ours, theirs }];
    });
    expect(wrong).toEqual([]);
  });

  test('of straight edges that do not meet is that of JSTS as well', () => {
    const clear = seededSettings(200, withHole).filter((setting) => passageOf(setting).state === 'clear');
    expect(clear.length).toBeGreaterThan(80);
    for (const setting of clear) {
      const theirs = jstsDistance(
        jstsPolygon(ringsOf(setting.fixed), identity),
        jstsPolygon(ringsOf(setting.moving), setting.start),
      );
      expect(Math.abs((passageOf(setting).distanceMm ?? Number.NaN) - theirs)).toBeLessThanOrEqual(roundingMm);
    }
  });

  test('of arcs is that of GEOS measuring fine chords, to the height of the chords: 200 pairs', () => {
    const wrong = seededSettings(200, randomRegion).flatMap((setting, seed) => {
      const [ours, theirs] = [passageOf(setting).distanceMm ?? Number.NaN, geosDistance(setting)];
      return Math.abs(ours - theirs) <= 2 * chordMm ? [] : [{ seed, ours, theirs }];
    });
    expect(wrong).toEqual([]);
  });
});
