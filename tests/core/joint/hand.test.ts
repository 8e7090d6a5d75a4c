import { describe, expect, test } from 'vitest';
import { mirrorPoint } from '../../../src/geometry/plane/loop.ts';
import { type Vec, vec } from '../../../src/geometry/plane/vec.ts';
import { checkHand, handNotices } from '../../../src/joint/hand.ts';
import { registrationRefusal } from '../../../src/joint/registration.ts';
import { noticeText } from '../../../src/words/notices.ts';
import { castingOf } from '../../support/jobs.ts';

const same = (points: readonly Vec[]) => points.map((p) => ({ from: p, to: p }));
const flipped = (points: readonly Vec[]) => points.map((p) => ({ from: mirrorPoint(p), to: p }));

const dowelsAndBolt = [vec(-158, 12), vec(156, -30), vec(68, 144)];

describe('the hand check', () => {
  test('agrees for two drawings of one hand and finds a mirrored one', () => {
    expect(checkHand(same(dowelsAndBolt)).hand).toBe('agrees');
    expect(checkHand(flipped(dowelsAndBolt)).hand).toBe('mirrored');
  });

  test.each([
    ['no holes', []],
    ['one hole', [vec(10, 0)]],
    ['two holes', [vec(-158, 12), vec(156, -30)]],
    ['three holes on one line', [vec(-100, -50), vec(0, 0), vec(100, 50)]],
    ['three holes within tracing error of one line', [vec(-150, 0), vec(0, 0.9), vec(150, 0)]],
  ])('cannot tell from %s', (_title, points) => {
    expect(checkHand(same(points)).hand).toBe('cannot-tell');
    expect(checkHand(flipped(points)).hand).toBe('cannot-tell');
  });

  test('cannot tell where the holes fit neither way: a square with two of its corners paired crosswise', () => {
    const corners = [vec(100, 0), vec(0, 100), vec(-100, 0), vec(0, -100)] as const;
    const crossed = [corners[1], corners[0], corners[2], corners[3]];
    const { hand, asDrawnRmsMm, mirroredRmsMm } = checkHand(corners.map((to, i) => ({ from: crossed[i] as Vec, to })));
    expect(hand).toBe('cannot-tell');
    expect(asDrawnRmsMm).toBeCloseTo(mirroredRmsMm as number, 9);
  });

  test('mirrored, a pattern misses by twice its rms distance from its best line', () => {
    // (±150, 0) and (0, 30): the best line is y = 10, the rms distance from it √(600/3) = 14.142
    const { asDrawnRmsMm, mirroredRmsMm } = checkHand(same([vec(-150, 0), vec(150, 0), vec(0, 30)]));
    expect(asDrawnRmsMm).toBe(0);
    expect(mirroredRmsMm).toBeCloseTo(2 * Math.sqrt(200), 9);
  });
});

describe('what is said of the hand', () => {
  const saidOf = (pairs: Parameters<typeof checkHand>[0]) => {
    const hand = checkHand(pairs);
    const files = { fixed: castingOf({ name: 'block' }), moving: castingOf({ name: 'case', viewedFrom: 'back' }) };
    const fit = { dowels: [], bolts: [], registrationMm: null };
    const refusal = registrationRefusal({ fit, files, hand, movingHoles: [], spacingErrorMm: null, bolts: [] });
    return [...(refusal === null ? [] : [refusal]), ...handNotices(hand)].map((notice) => ({
      code: notice.code,
      text: noticeText(notice, 'mm'),
    }));
  };

  test('nothing where it agrees', () => {
    expect(saidOf(same(dowelsAndBolt))).toEqual([]);
  });

  test('a mirrored drawing is told with both files and what they say of themselves', () => {
    const [said, ...more] = saidOf(flipped(dowelsAndBolt));
    expect(more).toEqual([]);
    expect(said?.code).toBe('hand-mirrored');
    expect(said?.text).toContain('seen from the other side');
    expect(said?.text).toContain('block.part.json ("face") and case.part.json ("back")');
  });

  test('holes that cannot tell are told, with what to pair', () => {
    const two = saidOf(same(dowelsAndBolt.slice(0, 2)));
    expect(two).toMatchObject([{ code: 'hand-cannot-tell', text: expect.stringContaining('Fewer than three') }]);
    const line = saidOf(same([vec(0, 0), vec(1, 0), vec(2, 0)]));
    expect(line).toMatchObject([{ code: 'hand-cannot-tell', text: expect.stringContaining('off their line') }]);
  });
});
