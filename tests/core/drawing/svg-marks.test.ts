import svgpath from 'svgpath';
import { expect, test } from 'vitest';
import { outline } from '../../../src/drawing/scene/marks.ts';
import { styleOf } from '../../../src/drawing/scene/styles.ts';
import { markNodes } from '../../../src/drawing/svg/svg-marks.ts';
import { pointOnEdge } from '../../../src/geometry/plane/edge.ts';
import { edgesOf, type Loop } from '../../../src/geometry/plane/loop.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { disc, outline as loop } from '../../support/jobs.ts';

const sheetMm = 200;
const placing = {
  place: ({ x, y }: { readonly x: number; readonly y: number }) => vec(x, sheetMm - y),
  scale: 1,
  penMm: 0.7,
  style: styleOf('fixed'),
  paper: '#fff',
};

const pathOf = (loop: Loop): string => markNodes(outline([loop]), placing)[0]?.attributes.d ?? '';

// svgpath turns the arcs of a path into cubic curves by its own reading of the flags; a quarter circle's curve
// strays from its arc by less than 3e-4 of the radius
const bulges = [0.1, 0.4142, 1, 2.5, -0.1, -0.4142, -1, -2.5];
test.each(bulges)('an arc of bulge %f runs where its bulge says, read by another library', (bulge) => {
  const arced = loop([30, 40, bulge], [50, 55, 0], [20, 60, 0]);
  const [arc] = edgesOf(arced);
  if (arc?.kind !== 'arc') throw new Error('no arc');
  let [x, y] = [0, 0];
  let furthest = 0;
  let curves = 0;
  svgpath(pathOf(arced))
    .abs()
    .unarc()
    .iterate(([kind, ...to]) => {
      if (kind === 'C') {
        curves += 1;
        const [x1, y1, x2, y2, x3, y3] = to as [number, number, number, number, number, number];
        const middle = vec((x + 3 * x1 + 3 * x2 + x3) / 8, (y + 3 * y1 + 3 * y2 + y3) / 8);
        const off = Math.hypot(middle.x - arc.centre.x, sheetMm - middle.y - arc.centre.y) - arc.radius;
        furthest = Math.max(furthest, Math.abs(off));
      }
      [x, y] = to.slice(-2) as [number, number];
    });
  expect(curves).toBeGreaterThan(0);
  expect(furthest).toBeLessThan(3e-4 * arc.radius + 1e-3);
});

test('the path of an arc goes through its ends and, past half a circle, its middle', () => {
  const arced = loop([30, 40, 2.5], [50, 55, 0], [20, 60, 0]);
  const [arc] = edgesOf(arced);
  if (arc === undefined) throw new Error('no arc');
  const middle = placing.place(pointOnEdge(arc, 0.5));
  const numbers = [...pathOf(arced).matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
  expect(numbers[0]).toEqual([30, 160]);
  expect(numbers[1]?.[0]).toBeCloseTo(middle.x, 3);
  expect(numbers[1]?.[1]).toBeCloseTo(middle.y, 3);
  expect(numbers[2]).toEqual([50, 145]);
});

test('a circle is a circle', () => {
  expect(markNodes(outline([disc(30, 40, 12.5)]), placing)).toEqual([
    { tag: 'circle', attributes: { cx: '30', cy: '160', r: '12.5' }, children: [] },
  ]);
});

test('a ring keeps its hole: both outlines in one path', () => {
  const d = markNodes(outline([disc(0, 0, 20), disc(0, 0, 10)]), placing)[0]?.attributes.d ?? '';
  expect(d.match(/M/g)).toHaveLength(2);
  expect(d.match(/A20 20 /g)).toHaveLength(2);
  expect(d.match(/A10 10 /g)).toHaveLength(2);
});
