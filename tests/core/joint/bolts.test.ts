import { describe, expect, test } from 'vitest';
import type { Hole } from '../../../src/job/casting.ts';
import { boltNotices, boltsOf } from '../../../src/joint/bolts.ts';
import { noticeText } from '../../../src/words/notices.ts';
import { boltHole, holeOf, tapped } from '../../support/jobs.ts';

const o = [0, 0] as const;
const allowed = (fixed: Hole, moving: Hole) => boltsOf([{ fixed, moving }])[0]?.allowedMm ?? null;
const threadedHole = (thread: string, diameterMm: number | null = null) =>
  holeOf({ id: 'H', at: o, thread, diameterMm });
const stud = (diameterMm: number) => holeOf({ id: 'S', at: o, kind: 'stud', diameterMm });

describe('how far a bolt may be off', () => {
  test.each<[string, Hole, Hole, number | null]>([
    ['(H − F)/2 for a tapped hole against a clearance hole', tapped('B', o), boltHole('H', o, 13.5), 0.75],
    ['the same the other way round', boltHole('H', o, 13.5), tapped('B', o), 0.75],
    ['(H − F)/2 for a stud of stated diameter', stud(12), boltHole('H', o, 13), 0.5],
    [
      'that of the tapped hole’s thread before its drilled diameter',
      { ...tapped('B', o), diameterMm: 10.2 },
      boltHole('H', o, 13.5),
      0.75,
    ],
    ['ISO 273 medium where the clearance hole is not measured', tapped('B', o, 'M10'), boltHole('H', o), 0.5],
    ['found from the clearance hole’s own thread', tapped('B', o, null), threadedHole('M8'), 0.5],
    ['both halves for two clearance holes', threadedHole('M12', 13), boltHole('H', o, 13.5), 1.25],
    ['both halves, one of them ISO 273 medium', threadedHole('M12'), boltHole('H', o, 13), 1.25],
    ['that of a planned hole to be tapped', { ...threadedHole('M12'), kind: 'planned' }, boltHole('H', o, 13.5), 0.75],
    ['unknown for two plain holes', boltHole('A', o, 13), boltHole('H', o, 13.5), null],
    ['unknown where no diameter is known', tapped('B', o, null), boltHole('H', o), null],
    ['unknown for a thread the table has no hole for', tapped('B', o, 'M13'), boltHole('H', o), null],
    ['unknown for a thread nobody can read', tapped('B', o, 'coarse'), boltHole('H', o, 13), null],
    ['unknown for two tapped holes', tapped('A', o), tapped('B', o), null],
    ['below nothing for a bolt that does not pass', tapped('B', o), boltHole('H', o, 11), -0.5],
  ])('is %s', (_title, fixed, moving, expected) => {
    const found = allowed(fixed, moving);
    if (expected === null) expect(found).toBeNull();
    else expect(found).toBeCloseTo(expected, 9);
  });

  test('a diameter in inches’ own sizes is computed: 3/8-16 in an 11 mm hole', () => {
    expect(allowed(tapped('B', o, '3/8-16'), boltHole('H', o, 11))).toBeCloseTo(0.7375, 9);
  });
});

describe('lining up', () => {
  const at = (x: number) => [{ fixed: tapped('B1', [100, 50]), moving: boltHole('H1', [100 + x, 50], 13.5) }];

  test.each([
    [0.5, true],
    [0.75, true],
    [0.7501, false],
  ])('%f mm off with 0.75 allowed: %s', (offset, linesUp) => {
    expect(boltsOf(at(offset))).toEqual([
      { fixed: 'B1', moving: 'H1', offsetMm: expect.closeTo(offset, 9), allowedMm: 0.75, linesUp },
    ]);
  });

  test('is not claimed where the allowance is not known', () => {
    const pairs = [{ fixed: boltHole('B1', o, 13), moving: boltHole('H1', [1, 0], 13) }];
    expect(boltsOf(pairs)).toMatchObject([{ offsetMm: 1, allowedMm: null, linesUp: null }]);
    expect(boltNotices(pairs)).toEqual([]);
  });

  test('each bolt that does not is warned of at its own hole', () => {
    const pairs = [...at(0.2), ...at(1.1)];
    const notices = boltNotices(pairs);
    expect(notices).toMatchObject([{ code: 'bolt-does-not-line-up', at: { x: 100, y: 50 } }]);
    expect(notices.map((notice) => noticeText(notice, 'mm'))).toEqual([
      'Bolt B1–H1 does not line up: 1.1 mm off, 0.75 mm allowed.',
    ]);
  });

  test('a bolt thicker than its hole does not line up even dead centre', () => {
    const pairs = [{ fixed: tapped('B1', o), moving: boltHole('H1', o, 11) }];
    expect(boltNotices(pairs).map((notice) => noticeText(notice, 'mm'))).toEqual([
      'Bolt B1–H1 is thicker than its hole.',
    ]);
  });
});
