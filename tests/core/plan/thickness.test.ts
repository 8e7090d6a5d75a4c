import { describe, expect, it } from 'vitest';
import { type Thickness, thinnest } from '../../../src/geometry/cutting/thickness.ts';
import { buildOutlineTree } from '../../../src/geometry/motion/outline-tree.ts';
import { polygonLoop } from '../../../src/geometry/plane/loop.ts';
import { polar, type Vec, vec } from '../../../src/geometry/plane/vec.ts';
import { difference } from '../../../src/geometry/polygons/polygon-engine.ts';
import type { Polygon } from '../../../src/geometry/polygons/polygons.ts';
import { Random } from '../../support/random.ts';

const reachMm = 13;

/** What is left of a solid between its new edges, made by a cut, and its old ones. */
const afterCut = (metal: Polygon, cut: Polygon): Thickness | null =>
  thinnest(difference([metal], [cut]), buildOutlineTree([polygonLoop(metal)]), reachMm);

/** A closed outline through corners with a vertex every `stepMm` or so, each put off at random by up to `noiseMm`. */
function rough(corners: readonly Vec[], noiseMm: number, stepMm = 0.12): Polygon {
  const random = new Random(7);
  const off = (): number => random.between(-noiseMm, noiseMm);
  return corners.flatMap((a, i) => {
    const b = corners[(i + 1) % corners.length] as Vec;
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const lengthMm = Math.hypot(dx, dy);
    const count = Math.ceil(lengthMm / stepMm);
    return Array.from({ length: count }, (_, k) => {
      const byMm = k === 0 ? 0 : off() / lengthMm;
      return vec(a.x + (dx * k) / count + dy * byMm, a.y + (dy * k) / count - dx * byMm);
    });
  });
}

const bar = (thickMm: number): Vec[] => [vec(0, -thickMm), vec(60, -thickMm), vec(60, 0), vec(0, 0)];

const disc = (x: number, y: number, radius: number): Polygon =>
  Array.from({ length: 400 }, (_, i) => {
    const p = polar(vec(x, y), radius, (2 * Math.PI * i) / 400);
    return vec(p.x, p.y);
  });

describe.each([0, 0.05, 0.1, 0.2])('on outlines rough by %d mm', (noiseMm) => {
  it.each([0.5, 2, 6])('a web of %d mm between a cut and the far flank is as thick as it is', (webMm) => {
    const found = afterCut(rough(bar(12), noiseMm), disc(30, 12, 24 - webMm));
    expect(found?.mm).toBeGreaterThan(webMm - noiseMm - 0.01);
    expect(found?.mm).toBeLessThan(webMm + noiseMm + 0.01);
    expect(found?.at.x).toBeGreaterThan(25);
    expect(found?.at.x).toBeLessThan(35);
  });

  it.each([8, 20, 32])('the feather of %d° that a cut along a slant leaves is thin', (deg) => {
    const slope = Math.tan((deg * Math.PI) / 180);
    // all above a line that rises from the lower side of the bar
    const cut = [vec(15 - 1 / slope, -13), vec(15 + 20 / slope, 8), vec(-300, 8), vec(-300, -13)];
    expect(afterCut(rough(bar(12), noiseMm), cut)?.mm).toBeLessThan(0.5 + noiseMm);
  });

  it('a sliver that is parted off is thin', () => {
    const found = afterCut(rough(bar(12), noiseMm), [vec(-5, -11.4), vec(65, -11.4), vec(65, -3), vec(-5, -3)]);
    expect(found?.mm).toBeLessThan(0.6);
  });

  it('a skin along a flank, parted at one end alone, is thin', () => {
    const found = afterCut(rough(bar(12), noiseMm), [vec(20, -11.5), vec(65, -11.5), vec(65, -11.2), vec(20, -11.2)]);
    expect(found?.mm).toBeLessThan(0.5 + 1e-6);
  });

  it.each([5, 20, 60, 300])('the flank on which a cut by a disc of %d mm runs out is no wall', (radius) => {
    const metal = rough(bar(60), noiseMm);
    for (const deepMm of [0.05, 0.3, 2]) expect(afterCut(metal, disc(30, radius - deepMm, radius))).toBeNull();
  });
});

it('a film of metal that rounding leaves beside a cut is no wall, nor is a crumb that hangs on nothing', () => {
  const crumb = [vec(30, 5), vec(30.2, 5), vec(30.1, 5.1)];
  const left = [[vec(0, -60), vec(60, -60), vec(60, -2), vec(0, -2)], crumb];
  const outline = buildOutlineTree([polygonLoop([vec(0, -60), vec(60, -60), vec(60, 5), vec(0, 5)])]);
  expect(thinnest(left, outline, reachMm)).toBeNull();
});
