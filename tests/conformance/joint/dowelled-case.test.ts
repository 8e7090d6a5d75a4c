import { describe, expect, test } from 'vitest';
import { warningOf } from '../../../src/answers/warning.ts';
import { apply, inverse, rigid } from '../../../src/geometry/plane/rigid.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { placeJob } from '../../../src/joint/place-job.ts';
import { boltHole, castingOf, dowel, jobOf, tapped } from '../../support/jobs.ts';

/**
 * A case hung on a block by two dowels, its drawing at an origin and tilt of its own. Source: closed form. The case's
 * dowels stand 0.12 mm wider, so the least-squares fit leaves half of that at each; its M12 bolts in 13.5 mm holes may
 * be (13.5 − 12)/2 = 0.75 off.
 */
const dowels = [
  { id: 1, at: [-158, 12] },
  { id: 2, at: [156, -30] },
] as const;
const spacing = Math.hypot(314, 42);
const bolts = [
  { id: 1, at: [-72, 142], off: 0.1 },
  { id: 2, at: [68, 144], off: 0.3 },
  { id: 3, at: [-145, 64], off: 0.2 },
  { id: 4, at: [143, 68], off: 0.5 },
  { id: 5, at: [-118, -107], off: 1.1 },
  { id: 6, at: [109, -116], off: 0.4 },
] as const;
const widened = 0.12;
const home = rigid((4 * Math.PI) / 180, vec(-37, 21));

const drawn = (x: number, y: number) => {
  const p = apply(inverse(home), vec(x, y));
  return [p.x, p.y] as const;
};

const block = castingOf({
  name: 'block',
  holes: [
    ...dowels.map(({ id, at: [x, y] }) => dowel(`D${id}`, [x + 60, y - 15], 9)),
    ...bolts.map(({ id, at: [x, y] }) => tapped(`B${id}`, [x + 60, y - 15])),
  ],
});
const transferCase = castingOf({
  name: 'case',
  holes: [
    ...dowels.map(({ id, at: [x, y] }) => {
      const out = ((id === 1 ? -0.5 : 0.5) * widened) / spacing;
      return dowel(`P${id}`, drawn(x + out * 314, y - out * 42));
    }),
    ...bolts.map(({ id, at: [x, y], off }) => boltHole(`H${id}`, drawn(x + 0.6 * off, y - 0.8 * off), 13.5)),
  ],
});

describe('a case on two dowels that stand 0.12 mm wider', () => {
  const reading = placeJob(
    jobOf({
      fixed: block,
      moving: transferCase,
      axis: [60, -15],
      dowels: [
        ['D1', 'P1'],
        ['D2', 'P2'],
      ],
      bolts: bolts.map(({ id }) => [`B${id}`, `H${id}`] as const),
    }),
  );
  if (!reading.ok) throw new Error('not placed');
  const joint = reading.value;

  test('is carried home by the turn and shift its drawing was off by', () => {
    expect((joint.dowelUp.turnRad * 180) / Math.PI).toBeCloseTo(4, 6);
    expect(joint.dowelUp.shift.x).toBeCloseTo(-37, 6);
    expect(joint.dowelUp.shift.y).toBeCloseTo(21, 6);
  });

  test('is 0.06 mm off at each dowel, and says 0.12 mm of spacing', () => {
    const { rmsMm, spacingErrorMm, hand, pairs } = joint.dowelUp;
    expect({ rmsMm, spacingErrorMm, hand }).toEqual({
      rmsMm: expect.closeTo(0.06, 6),
      spacingErrorMm: expect.closeTo(0.12, 6),
      hand: 'agrees',
    });
    expect(pairs.map(({ offsetMm }) => offsetMm)).toEqual([expect.closeTo(0.06, 6), expect.closeTo(0.06, 6)]);
    expect(joint.fitRmsMm).toBeCloseTo(0.06, 12);
  });

  test('lines up on five of its six bolts, and warns of the sixth alone', () => {
    expect(joint.bolts.map((b) => b.offsetMm)).toEqual(bolts.map((b) => expect.closeTo(b.off, 6)));
    expect(joint.bolts.map((b) => b.allowedMm)).toEqual(bolts.map(() => expect.closeTo(0.75, 9)));
    expect(joint.bolts.map((b) => b.linesUp)).toEqual([true, true, true, true, false, true]);
    expect(joint.notices.map((notice) => warningOf(notice, 'mm')).map(({ code, at }) => [code, at])).toEqual([
      ['bolt-does-not-line-up', [-118, -107]],
    ]);
  });
});
