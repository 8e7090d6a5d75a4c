import { expect, test } from 'vitest';
import { hatch } from '../../../src/drawing/fit/plane-layers.ts';
import { pdfOf } from '../../../src/drawing/pdf/pdf.ts';
import { hatchSegments } from '../../../src/drawing/scene/hatch.ts';
import { boxOfText, layer, text, viewOf } from '../../../src/drawing/scene/marks.ts';
import { papers } from '../../../src/drawing/scene/papers.ts';
import { svgOf } from '../../../src/drawing/svg/svg.ts';
import type { Box } from '../../../src/geometry/plane/edge-box.ts';
import type { Region } from '../../../src/geometry/plane/loop.ts';
import { distance, lerp, vec } from '../../../src/geometry/plane/vec.ts';
import { box, disc, outline } from '../../support/jobs.ts';
import { readPages } from '../../support/pdf-reader.ts';

const lengthOf = (region: Region, angleRad: number, pitchMm: number): number =>
  hatchSegments(region, angleRad, pitchMm).reduce((sum, [a, b]) => sum + distance(a, b), 0);

// Cavalieri: lines a pitch apart, together as long as the area divided by the pitch
const regions: [string, Region, number][] = [
  ['a disc', [disc(3, -7, 20)], Math.PI * 400],
  ['a ring', [disc(0, 0, 20), disc(2, 0, 10)], Math.PI * 300],
  ['a square', [box(0, 0, 30, 30)], 900],
  ['a half disc', [outline([-10, 0, 0], [10, 0, 1])], Math.PI * 50],
  ['two discs', [disc(0, 0, 5), disc(100, 0, 5)], Math.PI * 50],
];
test.each(regions)('hatching of %s covers its area at any angle', (_, region, areaMm2) => {
  for (const angle of [0, Math.PI / 4, -Math.PI / 4, 1]) {
    expect(lengthOf(region, angle, 0.05) * 0.05).toBeCloseTo(areaMm2, areaMm2 > 500 ? -0.5 : 0);
  }
});

test('hatching of a disc ends on its circle exactly', () => {
  for (const segment of hatchSegments([disc(3, -7, 20)], Math.PI / 4, 1)) {
    for (const end of segment) expect(distance(end, vec(3, -7))).toBeCloseTo(20, 9);
  }
});

test('nothing has no hatching', () => {
  expect(hatchSegments([], Math.PI / 4, 1)).toEqual([]);
});

const boxAt = (minX: number, minY: number, maxX: number, maxY: number): Box => ({ minX, minY, maxX, maxY });

// a square of 30 with a box of 10 by 4 in it, half of another box outside
test('hatching leaves the boxes of words out, at any angle', () => {
  const words = [boxAt(10, 10, 20, 14), boxAt(25, 20, 35, 24), boxAt(12, 12, 20, 14)];
  for (const angle of [0, Math.PI / 4, 1]) {
    const segments = hatchSegments([box(0, 0, 30, 30)], angle, 0.05, words);
    const length = segments.reduce((sum, [a, b]) => sum + distance(a, b), 0);
    expect(length * 0.05).toBeCloseTo(900 - 40 - 20, -0.5);
    for (const [a, b] of segments) {
      const { x, y } = lerp(a, b, 0.5);
      expect(words.some(({ minX, maxX, minY, maxY }) => minX < x && x < maxX && minY < y && y < maxY)).toBe(false);
    }
  }
});

const crossing = ([a, b]: readonly [readonly number[], readonly number[]], { minX, maxX, minY, maxY }: Box): boolean =>
  Array.from({ length: 200 }, (_, i) => [0, 1].map((k) => lerp1(a[k] ?? 0, b[k] ?? 0, i / 199))).some(
    ([x = 0, y = 0]) => minX < x && x < maxX && minY < y && y < maxY,
  );
const lerp1 = (a: number, b: number, t: number): number => a + (b - a) * t;

test('no line of hatching runs over words, in SVG or PDF', async () => {
  const name = text(vec(20, 20), 'ear: do not cut', 3, { anchor: 'middle' });
  const field = layer('do-not-cut', [hatch([box(0, 0, 40, 40)], Math.PI / 4, 2)]);
  const view = { ...viewOf('ear', [field, layer('text', [name])]), scale: 2, at: vec(5, 5) };
  const scene = { title: 'Ear', description: '', widthMm: 100, heightMm: 100, penMm: 0.35, views: [view] };
  const words = boxOfText({ ...name, at: vec(45, 45) });

  const [page] = await readPages(await pdfOf('ear', [scene], { paper: papers.a4 }));
  const printed = page?.drawing.lines ?? [];
  expect(printed.length).toBeGreaterThan(20);
  expect(printed.filter((line) => crossing(line, words))).toEqual([]);

  const drawn = [...svgOf(scene).matchAll(/M([\d.]+),([\d.]+)L([\d.]+),([\d.]+)/g)].map((match) => {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = match.slice(1).map(Number);
    return [
      [x1, 100 - y1],
      [x2, 100 - y2],
    ] as const;
  });
  expect(drawn.length).toBe(printed.length);
  expect(drawn.filter((line) => crossing(line, words))).toEqual([]);
});
