import { describe, expect, test } from 'vitest';
import type { Hole } from '../../../src/job/casting.ts';
import type { Refusal } from '../../../src/joint/notices.ts';
import { noticeText } from '../../../src/words/notices.ts';
import { boltHole, castingOf, dowel, type JobSpec, tapped } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';

type Point = readonly [x: number, y: number];

const dowelPlaces: readonly Point[] = [
  [-150, 10],
  [150, -30],
];
const boltPlaces: readonly Point[] = [
  [70, 140],
  [-60, 120],
  [120, 60],
  [-90, -100],
];

const blockHoles: readonly Hole[] = [
  ...dowelPlaces.map((at, i) => dowel(`D${i + 1}`, at, 9)),
  ...boltPlaces.map((at, i) => tapped(`B${i + 1}`, at)),
];

/** A block and a housing seen from behind, so drawn alike, every hole paired unless a test says otherwise. */
function paired(
  said: Partial<JobSpec> & {
    readonly move?: (at: Point, id: string) => Point;
    readonly viewedFrom?: 'face' | 'back';
  } = {},
) {
  const { move = (at) => at, viewedFrom = 'back', ...spec } = said;
  const holes = [
    ...dowelPlaces.map((at, i) => dowel(`P${i + 1}`, move(at, `P${i + 1}`))),
    ...boltPlaces.map((at, i) => boltHole(`H${i + 1}`, move(at, `H${i + 1}`), 13.5)),
  ];
  return jointOf({
    fixed: castingOf({ name: 'block', holes: blockHoles }),
    moving: castingOf({ name: 'housing', viewedFrom, holes }),
    dowels: [
      ['D1', 'P1'],
      ['D2', 'P2'],
    ],
    bolts: boltPlaces.map((_, i) => [`B${i + 1}`, `H${i + 1}`] as const),
    ...spec,
  });
}

const shifted =
  (which: string, by: number) =>
  ([x, y]: Point, id: string): Point => [id === which ? x + by : x, y];

const swapped = (a: number, b: number): NonNullable<JobSpec['bolts']> =>
  boltPlaces.map((_, i) => [`B${i + 1}`, `H${i === a ? b + 1 : i === b ? a + 1 : i + 1}`] as const);

const textOf = (refusal: Refusal | null): string => (refusal === null ? '' : noticeText(refusal, 'mm'));

describe('drawings that register', () => {
  test('are judged', () => {
    expect(paired().refusal).toBeNull();
  });

  test('are judged though a bolt is off by as much as 10 times what it is allowed', () => {
    // an M12 in a hole of 13.5 is allowed 0.75, so 7.5
    expect(paired({ move: shifted('H1', 7.4) }).refusal).toBeNull();
    expect(paired({ move: shifted('H1', 7.6) }).refusal?.code).toBe('bolts-do-not-register');
  });

  test('are judged though nothing is paired', () => {
    expect(paired({ dowels: [], bolts: [] }).refusal).toBeNull();
  });
});

describe('drawings that do not register', () => {
  test('are refused where one is mirrored, whatever the fit allows', () => {
    const { refusal, notices } = paired({
      move: ([x, y]) => [-x, y],
      registrationMm: 1e4,
    });
    expect(refusal?.code).toBe('hand-mirrored');
    expect(textOf(refusal)).toContain('viewedFrom of block.part.json ("face") and housing.part.json ("back")');
    expect(notices.filter(({ code }) => code === 'hand-mirrored')).toEqual([refusal]);
  });

  test('are refused where the spacing of dowels is off by more than 2 mm', () => {
    expect(paired({ move: shifted('P1', -1.9) }).refusal).toBeNull();
    const { refusal, notices } = paired({ move: shifted('P1', -2.2) });
    expect(refusal?.code).toBe('dowels-do-not-register');
    expect(notices).toContain(refusal);
  });

  test('are refused by 5 mm where nothing is known of a bolt', () => {
    const move = shifted('H1', 5.1);
    const fixed = castingOf({ name: 'block', holes: blockHoles.map((hole) => ({ ...hole, thread: null })) });
    expect(paired({ fixed, move }).refusal?.code).toBe('bolts-do-not-register');
    expect(paired({ fixed, move: shifted('H1', 4.9) }).refusal).toBeNull();
  });

  test('are refused by what the fit says instead, where it does', () => {
    expect(paired({ move: shifted('H1', 7.6), registrationMm: 8 }).refusal).toBeNull();
    expect(paired({ move: shifted('H1', 3), registrationMm: 2 }).refusal?.code).toBe('bolts-do-not-register');
    expect(paired({ move: shifted('P1', -4), registrationMm: 5 }).refusal).toBeNull();
    expect(paired({ move: shifted('P1', -1), registrationMm: 0.5 }).refusal?.code).toBe('dowels-do-not-register');
  });
});

describe('the likeliest cause', () => {
  test('is the pairing, where another one fits: two bolts crosswise', () => {
    const { refusal } = paired({ bolts: swapped(0, 2) });
    expect(refusal?.code).toBe('bolts-do-not-register');
    expect(textOf(refusal)).toContain('pair B1 with H1 and B3 with H3 instead.');
  });

  test('is the pairing of the dowels, where they fit crosswise', () => {
    const { refusal } = paired({
      dowels: [
        ['D1', 'P2'],
        ['D2', 'P1'],
      ],
    });
    expect(textOf(refusal)).toContain('pair D1 with P1 and D2 with P2 instead.');
  });

  test('is no pairing where two holes come equally near', () => {
    const twin = boltHole('H9', [boltPlaces[2]?.[0] ?? 0, (boltPlaces[2]?.[1] ?? 0) + 0.5], 13.5);
    const plain = paired({ bolts: swapped(0, 2) });
    const { refusal } = paired({
      bolts: swapped(0, 2),
      moving: { ...castingOf({ name: 'housing', viewedFrom: 'back' }), holes: [...plain.moving.holes, twin] },
    });
    expect(refusal?.code).toBe('bolts-do-not-register');
    expect(textOf(refusal)).not.toContain('instead');
  });

  test('is no pairing where none fits: then the drawings are to be looked at', () => {
    const { refusal } = paired({ move: shifted('H1', 40) });
    expect(textOf(refusal)).not.toContain('instead');
    expect(textOf(refusal)).toContain('viewedFrom of block.part.json');
  });

  test.each([25.4, 1 / 25.4])('is the unit where everything is %f times as large', (factor) => {
    const { refusal } = paired({ move: ([x, y]) => [x * factor, y * factor] });
    expect(refusal?.code).toBe('dowels-do-not-register');
    expect(textOf(refusal)).toContain('One of the drawings is in inches');
    expect(textOf(refusal)).toContain('block.part.json ("mm") and housing.part.json ("mm")');
  });
});
