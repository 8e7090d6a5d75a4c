import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Loop, Vertex } from '../../../src/geometry/plane/loop.ts';
import { distance } from '../../../src/geometry/plane/vec.ts';
import { chainLines } from '../../../src/intake/outlines/chain.ts';
import { loopFrom } from '../../../src/intake/outlines/loop-from.ts';
import { type OpenLine, turnedRound } from '../../../src/intake/outlines/open-line.ts';
import { areaOf } from './drawn.ts';

const lineOf = (...points: readonly (readonly [number, number, number?])[]): OpenLine => ({
  vertices: points.map(([x, y, bulge = 0]) => ({ x, y, bulge })),
  layer: '0',
  place: 'line 1',
});

const loops = (lines: readonly OpenLine[], joinMm = 0): (Loop | null)[] =>
  chainLines(lines, joinMm).closed.map((closed) => loopFrom(closed));

/** A star-shaped outline round the origin: 3 to 40 vertices at rising angles, each edge straight or gently curved. */
const outline = fc
  .array(
    fc.record({ radius: fc.double({ min: 20, max: 200, noNaN: true }), bulge: fc.constantFrom(0, 0, 0.1, -0.05) }),
    {
      minLength: 3,
      maxLength: 40,
    },
  )
  .map((spokes) =>
    spokes.map(({ radius, bulge }, i): Vertex => {
      const angle = (2 * Math.PI * i) / spokes.length;
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle), bulge };
    }),
  );

/** The outline cut into lines at the vertices marked, in any order, each drawn from either end. */
const cutUp = outline.chain((vertices) =>
  fc
    .record({
      marks: fc.array(fc.boolean(), { minLength: vertices.length, maxLength: vertices.length }),
      keys: fc.array(fc.integer(), { minLength: vertices.length, maxLength: vertices.length }),
      turns: fc.array(fc.boolean(), { minLength: vertices.length, maxLength: vertices.length }),
    })
    .map(({ marks, keys, turns }) => {
      const cuts = vertices.map((_, i) => i).filter((i) => i === 0 || marks[i]);
      const lines = cuts.map((from, k): OpenLine => {
        const to = cuts[k + 1] ?? vertices.length;
        const piece = [...vertices.slice(from, to), vertices[to % vertices.length] as Vertex];
        const line = { vertices: piece, layer: '0', place: '' };
        return turns[k] ? turnedRound(line) : line;
      });
      const shuffled = lines.map((line, i) => ({ line, key: keys[i] as number })).sort((a, b) => a.key - b.key);
      return { vertices, lines: shuffled.map(({ line }) => line) };
    }),
);

describe('lines chained end to end', () => {
  it('give back the outline they were cut from, in whatever order and sense they come', () => {
    fc.assert(
      fc.property(cutUp, ({ vertices, lines }) => {
        const { closed, gaps, branches } = chainLines(lines, 0);
        expect({ gaps, branches }).toEqual({ gaps: [], branches: [] });
        expect(closed.map((each) => loopFrom(each))).toEqual([loopFrom(vertices)]);
      }),
      { numRuns: 150 },
    );
  });

  it('meet over gaps up to the join, which moves the outline by no more than half of each', () => {
    const gap = fc.double({ min: -0.1, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(cutUp, fc.array(gap, { minLength: 160, maxLength: 160 }), ({ vertices, lines }, offsets) => {
        const untidy = lines.map((line, i): OpenLine => {
          const last = line.vertices.length - 1;
          const off = (k: number) => offsets[4 * i + k] as number;
          const moved = line.vertices.map((v, k): Vertex => {
            if (k === 0) return { ...v, x: v.x + off(0), y: v.y + off(1) };
            return k === last ? { ...v, x: v.x + off(2), y: v.y + off(3) } : v;
          });
          return { ...line, vertices: moved };
        });
        fc.pre(vertices.every((v, i) => distance(v, vertices[(i + 1) % vertices.length] as Vertex) > 2));
        const { closed, gaps, joined } = chainLines(untidy, 0.5);
        const area = areaOf(loopFrom(closed[0] ?? []) as Loop);
        const around = vertices.reduce(
          (sum, v, i) => sum + distance(v, vertices[(i + 1) % vertices.length] as Vertex),
          0,
        );
        expect(gaps).toEqual([]);
        expect(Math.max(0, ...joined.map(({ sizeMm }) => sizeMm))).toBeLessThan(0.3);
        expect(Math.abs(area - areaOf(loopFrom(vertices) as Loop))).toBeLessThan(0.3 * around);
      }),
      { numRuns: 100 },
    );
  });

  const openSquare = (gap: number) => [lineOf([gap, 0], [10, 0], [10, 10]), lineOf([0, 0], [0, 10], [10, 10])];

  it('list a gap wider than the join with its size and both its ends, and close nothing', () => {
    const { closed, joined, gaps } = chainLines(openSquare(0.6), 0.5);
    expect({ closed, joined }).toEqual({ closed: [], joined: [] });
    expect(gaps).toEqual([{ from: { x: 0.6, y: 0 }, to: { x: 0, y: 0 }, sizeMm: 0.6, layer: '0', doubtful: false }]);
  });

  it('list a gap they closed too', () => {
    const { closed, joined } = chainLines(openSquare(0.4), 0.5);
    expect(closed).toHaveLength(1);
    expect(joined).toMatchObject([{ sizeMm: 0.4, layer: '0' }]);
  });

  it('meet where two straight ends cross, whether they stop short of it or run past', () => {
    for (const off of [-0.2, 0.2]) {
      const [loop] = loops([lineOf([off, 0], [10, 0], [10, 10]), lineOf([10, 10], [0, 10], [0, off])], 0.5);
      const corners = [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ] as const;
      const near = corners.map(([x, y]) => ({ x: expect.closeTo(x, 9), y: expect.closeTo(y, 9), bulge: 0 }));
      expect(loop).toEqual({ kind: 'path', vertices: near });
    }
  });

  it('meet halfway where lines in one line overlap, so that no spike is left', () => {
    const lines = [lineOf([1, 0], [2, 0], [2, 4], [0, 4], [0, 0]), lineOf([0, 0], [1.1, 0])];
    expect(loops(lines, 0.5).map((loop) => areaOf(loop as Loop))).toEqual([8]);
    expect(chainLines(lines, 0.05).gaps).toHaveLength(1);
  });

  it('are not joined where another end lies nearly as near', () => {
    const { closed, gaps } = chainLines([...openSquare(0.3), lineOf([0.1, -0.2], [3, -9])], 0.5);
    expect(closed).toEqual([]);
    expect(gaps[0]).toMatchObject({ doubtful: true });
  });

  it('are joined at a narrow gap although a wide one lies beside it', () => {
    const { closed, joined } = chainLines([...openSquare(0.01), lineOf([0.4, -0.2], [3, -9])], 0.5);
    expect(closed).toHaveLength(1);
    expect(joined).toHaveLength(1);
  });

  it('stop where three of them meet, and say where', () => {
    const { closed, branches, gaps } = chainLines([...openSquare(0), lineOf([10, 10], [20, 20])], 0.5);
    expect(closed).toEqual([]);
    expect(branches).toEqual([{ at: { x: 10, y: 10 }, lines: 3 }]);
    expect(gaps).toHaveLength(1);
  });

  it('count once where they were drawn twice, from either end', () => {
    const [one, other] = openSquare(0) as [OpenLine, OpenLine];
    const arc = lineOf([0, 0, 1], [10, 10]);
    expect(chainLines([one, turnedRound(one), other, one], 0)).toMatchObject({ doubles: 2, branches: [], gaps: [] });
    expect(chainLines([arc, lineOf([10, 10, -1], [0, 0])], 0)).toMatchObject({ doubles: 1, closed: [] });
    expect(chainLines([arc, lineOf([10, 10, 1], [0, 0])], 0)).toMatchObject({ doubles: 0 });
    expect(loops([arc, lineOf([10, 10, 1], [0, 0])])).toEqual([
      { kind: 'circle', centre: { x: 5, y: 5 }, radius: expect.closeTo(Math.sqrt(50), 9) },
    ]);
  });

  it('are left out where they have no length', () => {
    expect(chainLines([...openSquare(0), lineOf([3, 3], [3, 3]), lineOf([1, 1])], 0)).toMatchObject({
      dots: 2,
      gaps: [],
    });
  });

  it('do not turn a stray scrap shorter than the join into an outline', () => {
    expect(chainLines([lineOf([0, 0], [0.3, 0])], 0.5)).toMatchObject({ closed: [], gaps: [{ sizeMm: 0.3 }] });
  });
});
