import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcSpans, type Edge, edgeOfBulge, pointOnEdge } from '../../../src/geometry/plane/edge.ts';
import { angleOf, distance, lerp, sub, type Vec, vec } from '../../../src/geometry/plane/vec.ts';
import { arcsAlong, bulgeThrough } from '../../../src/intake/outlines/arcs-along.ts';

const place = fc.record({
  x: fc.double({ min: -200, max: 200, noNaN: true }),
  y: fc.double({ min: -200, max: 200, noNaN: true }),
});

function bezier([a, b, c, d]: readonly [Vec, Vec, Vec, Vec]): (t: number) => Vec {
  return (t) => {
    const [ab, bc, cd] = [lerp(a, b, t), lerp(b, c, t), lerp(c, d, t)];
    return lerp(lerp(ab, bc, t), lerp(bc, cd, t), t);
  };
}

function distanceTo(edge: Edge, p: Vec): number {
  const ends = Math.min(distance(p, edge.a), distance(p, edge.b));
  if (edge.kind === 'arc') {
    return arcSpans(edge, angleOf(sub(p, edge.centre))) ? Math.abs(distance(p, edge.centre) - edge.radius) : ends;
  }
  const [along, out] = [sub(edge.b, edge.a), sub(p, edge.a)];
  const share = (along.x * out.x + along.y * out.y) / (along.x ** 2 + along.y ** 2);
  return share > 0 && share < 1 ? distance(p, lerp(edge.a, edge.b, share)) : ends;
}

const edgesAlong = (curve: (t: number) => Vec, withinMm: number): Edge[] => {
  const vertices = arcsAlong(curve, withinMm);
  return vertices.slice(1).map((b, i) => edgeOfBulge(vertices[i] as Vec, b, vertices[i]?.bulge ?? 0));
};

describe('a curve followed by arcs', () => {
  it('is nowhere farther from them than asked, cusps and loops and all', () => {
    fc.assert(
      fc.property(fc.tuple(place, place, place, place), (points) => {
        const curve = bezier(points);
        const edges = edgesAlong(curve, 0.005);
        for (let i = 0; i <= 300; i++) {
          const p = curve(i / 300);
          // eight samples a piece are no proof: a tenth is left for what lies between them
          expect(Math.min(...edges.map((edge) => distanceTo(edge, p)))).toBeLessThan(0.0055);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('takes few of them: an ellipse of 200 by 120 less than a hundred', () => {
    const ellipse = (t: number) => vec(100 * Math.cos(2 * Math.PI * t), 60 * Math.sin(2 * Math.PI * t));
    expect(arcsAlong(ellipse, 0.005).length).toBeLessThan(100);
  });

  it('ends where a curve has no length, no bounds or no numbers', () => {
    expect(arcsAlong(() => vec(3, 4), 0.005)).toHaveLength(2);
    expect(arcsAlong((t) => vec(t * 1e300, 0), 0.005).length).toBeLessThan(5);
    expect(arcsAlong(() => vec(Number.NaN, 0), 0.005).length).toBeLessThan(5);
  });

  it('becomes lines where it is straight', () => {
    expect(arcsAlong((t) => vec(100 * t ** 2, 50 * t ** 2), 0.005)).toEqual([
      { x: 0, y: 0, bulge: 0 },
      { x: 100, y: 50, bulge: 0 },
    ]);
  });
});

it('the bulge through three points of an arc is the bulge of that arc', () => {
  fc.assert(
    fc.property(
      place,
      place,
      fc.double({ min: -3, max: 3, noNaN: true }),
      fc.double({ min: 0.1, max: 0.9, noNaN: true }),
      (a, b, bulge, t) => {
        fc.pre(distance(a, b) > 1 && Math.abs(bulge) > 1e-3);
        expect(bulgeThrough(a, pointOnEdge(edgeOfBulge(a, b, bulge), t), b)).toBeCloseTo(bulge, 6);
      },
    ),
    { numRuns: 200 },
  );
});
