import { describe, expect, it } from 'vitest';
import type { Region } from '../../../src/geometry/plane/loop.ts';
import { loopFaults } from '../../../src/geometry/plane/loop-faults.ts';
import { round6 } from '../../../src/geometry/plane/rounding.ts';
import { polar, vec } from '../../../src/geometry/plane/vec.ts';
import { box, disc, outline, ringPiece } from '../../support/jobs.ts';
import { Random } from '../../support/random.ts';

const quarter = Math.tan(Math.PI / 8);

/** A circle of radius 100 as `n` arcs, coordinates to `places` decimals, as a file would have it. */
const ringOfArcs = (n: number, places: number) =>
  outline(
    ...Array.from({ length: n }, (_, i) => {
      const { x, y } = polar(vec(0, 0), 100, (2 * Math.PI * i) / n);
      return [Number(x.toFixed(places)), Number(y.toFixed(places)), Math.tan(Math.PI / 2 / n)] as const;
    }),
  );

const sound: readonly (readonly [what: string, region: Region])[] = [
  ['a square', [box(0, 0, 10, 10)]],
  ['a square the other way round', [outline([0, 0], [0, 10], [10, 10], [10, 0])]],
  ['a plate with two holes', [box(0, 0, 90, 90), disc(20, 20, 5), box(40, 40, 60, 60)]],
  ['concentric circles', [disc(0, 0, 10), disc(0, 0, 9)]],
  ['circles 0.0001 apart', [disc(0, 0, 10), disc(20.0001, 0, 10)]],
  ['a circle as two half arcs', [outline([0, 0, 1], [10, 0, 1])]],
  ['a lens', [outline([0, 0, 0.3], [10, 0, 0.3])]],
  ['a crescent', [outline([0, 0, 0.3], [10, 0, -0.2])]],
  ['a half disc of an arc and a line', [outline([0, 0, 1], [10, 0])]],
  ['a nearly whole circle closed by its chord', [outline([0, 0, 5], [1, 0])]],
  ['a slot, whose lines run smoothly into its arcs', [outline([0, 0], [100, 0, 1], [100, 40], [0, 40, 1])]],
  [
    'rounded corners written to four decimals',
    [outline([0, 0], [8, 0, 0.4142], [10, 2], [10, 8, 0.4142], [8, 10], [0, 10])],
  ],
  ['a rounded inner corner', [outline([0, 0], [10, 0], [10, 5], [7, 5, -quarter], [5, 7], [5, 10], [0, 10])]],
  ['a piece of a ring', [ringPiece(177.5, 201, -8, 0)]],
  ['a vertex on a straight side', [outline([0, 0], [5, 0], [10, 0], [10, 10])]],
  ['a gap of 1e-9 between straight edges', [box(0, 0, 10, 10), box(10 + 1e-9, 0, 20, 10)]],
  ['a sliver 1e-7 wide', [outline([0, 0], [100, 0], [50, 1e-7])]],
  ['arcs of one circle in 3', [ringOfArcs(3, 12)]],
  ['arcs of one circle in 4', [ringOfArcs(4, 12)]],
  ['arcs of one circle in 50', [ringOfArcs(50, 12)]],
  ['arcs of one circle in 12, to 0.001 mm', [ringOfArcs(12, 3)]],
];

describe('a sound outline has no faults', () => {
  it.each(sound)('%s', (_, region) => {
    expect(loopFaults(region)).toEqual([]);
  });
});

const faulty: readonly (readonly [what: string, region: Region, faults: readonly string[]])[] = [
  ['one vertex', [outline([3, 4])], ['too-few-vertices 0/0 (3, 4)']],
  ['two vertices and no arc', [outline([0, 0], [10, 0])], ['too-few-vertices 0/0 (0, 0)']],
  ['a vertex twice in a row', [outline([0, 0], [9, 0], [9, 0], [9, 9])], ['zero-length-edge 0/0 (9, 0)']],
  ['the first vertex again at the end', [outline([1, 2], [9, 0], [9, 9], [1, 2])], ['closed-twice 0/0 (1, 2)']],
  ['a whole circle as one arc', [outline([5, 5, 1], [5, 5, 1])], ['zero-length-edge 0/0 (5, 5)']],
  ['vertices on one line', [outline([0, 0], [0.1, 0.3], [0.3, 0.9])], ['no-area 0/0 (0, 0)']],
  ['an arc out and the same arc back', [outline([0, 0, 0.3], [10, 0, -0.3])], ['no-area 0/0 (0, 0)']],
  ['a bow tie', [outline([0, 0], [10, 10], [10, 0], [0, 10])], ['crosses 0/0 (5, 5)']],
  ['two loops that cross', [box(0, 0, 10, 10), disc(0, 5, 2)], ['crosses 1/0 (0, 3)']],
  ['circles that cross', [disc(0, 0, 5), disc(8, 0, 5)], ['crosses 1/0 (4, -3)']],
  ['circles that touch from outside', [disc(0, 0, 10), disc(20, 0, 10)], ['touches 1/0 (10, 0)']],
  ['circles that touch from inside', [disc(0, 0, 10), disc(-5, 0, 5)], ['touches 1/0 (-10, 0)']],
  ['one circle twice', [disc(1, 2, 10), disc(1, 2, 10)], ['overlaps 1/0 (11, 2)']],
  ['a circle on a straight edge', [box(0, 0, 90, 90), disc(40, 10, 10)], ['touches 1/0 (40, 0)']],
  [
    'a vertex met again',
    [outline([0, 0], [20, 0], [10, 10], [20, 20], [0, 20], [10, 10])],
    ['repeated-vertex 0/0 (10, 10)'],
  ],
  ['a vertex on another edge', [outline([0, 0], [4, 0], [4, 4], [2, 0], [0, 4])], ['touches 0/0 (2, 0)']],
  [
    'a spike',
    [outline([0, 0], [5, 0], [9, 0], [5, 0.0], [5, 5])],
    ['overlaps 0/0 (9, 0)', 'repeated-vertex 0/0 (5, 0)'],
  ],
  [
    'a side of two boxes shared in part',
    [box(0, 0, 9, 9), box(9, 4, 20, 20)],
    ['overlaps 1/0 (9, 4)', 'touches 1/0 (9, 9)'],
  ],
  ['corners of two boxes in one place', [box(0, 0, 9, 9), box(9, 9, 20, 20)], ['touches 1/0 (9, 9)']],
  [
    'an arc that meets the edge after it again',
    [outline([0, 0, -3], [3, 0], [3, 15], [-9, 15], [-9, 0])],
    ['touches 0/0 (3, 4)'],
  ],
  [
    'an arc that runs back along the arc before it',
    [outline([10, 0, quarter], [0, 10, -quarter], [10, 0], [20, 20], [30, 0])],
    ['overlaps 0/0 (0, 10)', 'repeated-vertex 0/0 (10, 0)'],
  ],
];

/** Kind, loop/other loop and place of each fault, in one order. */
const inWords = (region: Region): string[] =>
  loopFaults(region)
    .map(({ kind, loop, otherLoop, at }) => `${kind} ${loop}/${otherLoop} (${round6(at.x)}, ${round6(at.y)})`)
    .sort();

describe('a faulty outline is told of by kind and place', () => {
  it.each(faulty)('%s', (_, region, expected) => {
    expect(inWords(region)).toEqual(expected);
  });
});

const zigzag = (edges: number) =>
  outline(
    ...Array.from({ length: edges }, (_, i) => {
      const { x, y } = polar(vec(0, 0), i % 2 === 0 ? 200 : 240, (2 * Math.PI * i) / edges);
      return [x, y] as const;
    }),
  );

describe('many edges', () => {
  it('100,000 long thin teeth all round are found sound', () => {
    expect(loopFaults([zigzag(100_000)])).toEqual([]);
  });

  it('one tooth among 20,000 that strikes through its neighbours is found where it does', () => {
    const teeth = zigzag(20_000);
    const [first, ...rest] = teeth.kind === 'path' ? teeth.vertices : [];
    const bent: Region = [{ kind: 'path', vertices: [{ x: 201, y: 2, bulge: first?.bulge ?? 0 }, ...rest] }];
    const faults = loopFaults(bent);
    expect(faults.length).toBeGreaterThan(0);
    for (const { kind, at } of faults) {
      expect(kind).toBe('crosses');
      expect(Math.hypot(at.x - 220, at.y)).toBeLessThan(25);
    }
  });

  it('an outline that crosses itself everywhere is told of at twenty places', () => {
    const random = new Random(5);
    const tangle = outline(...Array.from({ length: 5000 }, () => [random.next(), random.next()] as const));
    expect(loopFaults([tangle])).toHaveLength(20);
  });
});
