import { expect, it } from 'vitest';
import { edgesOf, type Loop, type PathLoop } from '../../../src/geometry/plane/loop.ts';
import { thinLoop } from '../../../src/geometry/plane/thin-loop.ts';
import { Random } from '../../support/random.ts';

type Point = readonly [x: number, y: number];

/** A scanned ring with noise on every vertex, its last edges an arc where asked for. */
function scanned(edges: number, noiseMm: number, arcs = false): PathLoop {
  const random = new Random(edges);
  const vertices = Array.from({ length: edges }, (_, i) => {
    const angle = (2 * Math.PI * i) / edges;
    const radius = 180 + 3 * Math.cos(7 * angle) + random.between(-noiseMm, noiseMm);
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle), bulge: arcs && i % 50 === 49 ? 0.3 : 0 };
  });
  return { kind: 'path', vertices };
}

const cornersOf = (loop: Loop): Point[] => edgesOf(loop).map(({ a }): Point => [a.x, a.y]);

/** Points every few hundredths of a millimetre along straight edges. */
function walked(corners: readonly Point[], stepMm: number): Point[] {
  return corners.flatMap(([x, y], i) => {
    const [toX, toY] = corners[(i + 1) % corners.length] as Point;
    const steps = Math.max(1, Math.ceil(Math.hypot(toX - x, toY - y) / stepMm));
    return Array.from({ length: steps }, (_, k): Point => [x + ((toX - x) * k) / steps, y + ((toY - y) * k) / steps]);
  });
}

/** The furthest of `points` from the nearest of `others`, by brute force; too great by no more than half a step. */
function furthest(points: readonly Point[], others: readonly Point[]): number {
  let most = 0;
  for (const [x, y] of points) {
    let least = Number.POSITIVE_INFINITY;
    for (const [u, v] of others) least = Math.min(least, (u - x) * (u - x) + (v - y) * (v - y));
    most = Math.max(most, least);
  }
  return Math.sqrt(most);
}

it.each([0.05, 0.3, 1, 5])('neither loop is further than %s mm from the other', (withinMm) => {
  const whole = scanned(400, 0.2);
  const stepMm = Math.max(0.2, withinMm / 4);
  const [all, thin] = [whole, thinLoop(whole, withinMm)].map((loop) => walked(cornersOf(loop), stepMm));
  expect(furthest(all as Point[], thin as Point[])).toBeLessThanOrEqual(withinMm + stepMm / 2);
  expect(furthest(thin as Point[], all as Point[])).toBeLessThanOrEqual(withinMm + stepMm / 2);
});

it('keeps every arc and both its ends', () => {
  const whole = scanned(1000, 0.2, true);
  const arcs = (loop: Loop) => edgesOf(loop).filter(({ kind }) => kind === 'arc');
  expect(arcs(thinLoop(whole, 2))).toEqual(arcs(whole));
});

it('leaves only vertices of the outline, in its order', () => {
  const whole = scanned(1000, 0.2);
  const places = (thinLoop(whole, 0.3) as PathLoop).vertices.map((vertex) => whole.vertices.indexOf(vertex));
  expect(places).toEqual([...places].sort((a, b) => a - b));
  expect(places[0]).toBe(0);
});

it('leaves a hundredth of a scan of 100 000 edges where its noise is within the bound', () => {
  expect((thinLoop(scanned(100_000, 0.2), 0.45) as PathLoop).vertices.length).toBeLessThan(1000);
});

it('takes the points off a straight side, and none off a triangle or a circle', () => {
  const square = [0, 1, 2, 3, 4].map((x) => ({ x, y: 0, bulge: 0 }));
  const loop: Loop = { kind: 'path', vertices: [...square, { x: 4, y: 4, bulge: 0 }, { x: 0, y: 4, bulge: 0 }] };
  expect(cornersOf(thinLoop(loop, 0.001))).toEqual([
    [0, 0],
    [4, 0],
    [4, 4],
    [0, 4],
  ]);
  const circle: Loop = { kind: 'circle', centre: { x: 0, y: 0 }, radius: 1 };
  expect(thinLoop(circle, 5)).toBe(circle);
});
