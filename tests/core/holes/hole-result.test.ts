import { describe, expect, it } from 'vitest';
import { type HoleRequest, holeFor } from '../../../src/holes/hole-result.ts';
import { threadNamed } from '../../../src/holes/named-thread.ts';
import type { ThreadData } from '../../../src/holes/thread-data.ts';

const thread = (name: string): ThreadData => {
  const found = threadNamed(name);
  if (found === null) throw new Error(`no thread ${name}`);
  return found;
};

const nothingSaid: Omit<HoleRequest, 'thread'> = {
  was: null,
  material: null,
  engagementMm: null,
  bossMm: null,
  wallMm: null,
  keepMm: null,
  depthMm: null,
  have: null,
};

const hole = (name: string, asked: Partial<HoleRequest> = {}) =>
  holeFor({ ...nothingSaid, thread: thread(name), ...asked });

const mm = (...sizes: number[]) => sizes.map((diameterMm) => ({ name: `${diameterMm} mm`, diameterMm }));

describe('percent of thread', () => {
  it('is counted of the height to the minor diameter and as handbooks do, five parts to six of one another', () => {
    const { drilled } = hole('M12x1.25');
    expect(drilled.basicShare).toBeCloseTo(1.2 / (1.082532 * 1.25), 6);
    expect(drilled.handbookShare).toBeCloseTo(1.2 / (1.299038 * 1.25), 6);
    expect((drilled.handbookShare ?? 0) / (drilled.basicShare ?? 1)).toBeCloseTo(5 / 6, 12);
    expect(drilled.limits).toBe('within');
  });

  it('the drills of handbooks give 71 to 82 % of thread as handbooks count it (from memory: about 75)', () => {
    for (const name of ['1/4-20', '3/8-16', '1/2-13', '#10-24', '5/16-18', '7/16-14']) {
      expect(hole(name).drilled.handbookShare).toBeGreaterThan(0.71);
      expect(hole(name).drilled.handbookShare).toBeLessThan(0.82);
    }
  });

  it('is not told of a taper thread, nor as handbooks count it of a pipe thread', () => {
    expect(hole('Rc1/4').drilled).toMatchObject({ basicShare: null, handbookShare: null, limits: null });
    expect(hole('G1/4').drilled).toMatchObject({ handbookShare: null, limits: 'within' });
  });
});

describe('the wall of a tapped boss is half of what the boss is larger than the thread (computed)', () => {
  it.each([
    ['M10x1.5', 22, 6],
    ['M12x1.25', 22, 5],
    ['M10x1.5', 18, 4],
    ['M12x1.25', 18, 3],
  ])('%s in a boss of %d mm: %d mm', (name, bossMm, wallMm) => {
    expect(hole(name, { bossMm }).wall?.afterMm).toBeCloseTo(wallMm, 12);
  });

  it('a wall measured beside the old thread loses half of what the thread grows', () => {
    const { wall } = hole('M12x1.25', { was: thread('M10x1.25'), wallMm: 5 });
    expect(wall).toMatchObject({ beforeMm: 5, afterMm: 4 });
  });

  it('of boss and wall the worse counts', () => {
    expect(hole('M12x1.25', { bossMm: 30, wallMm: 2 }).wall?.afterMm).toBe(2);
    expect(hole('M12x1.25', { bossMm: 18, wallMm: 20 }).wall?.afterMm).toBe(3);
  });

  it('a third of the diameter is to be kept where nobody says, and what is stated where somebody does', () => {
    expect(hole('M12x1.25', { bossMm: 20 })).toMatchObject({ wall: { keepMm: 4, keepStated: false }, against: [] });
    expect(hole('M12x1.25', { bossMm: 19.9 }).against).toEqual(['wall-too-thin']);
    expect(hole('M12x1.25', { bossMm: 18, keepMm: 3 })).toMatchObject({ wall: { keepStated: true }, against: [] });
  });
});

describe('an M10 stud thread made into M11 at the same pitch', () => {
  const { enlarging } = hole('M11x1.25', { was: thread('M10x1.25') });

  it('loses four fifths of its height to the 9.75 drill', () => {
    expect(enlarging?.old.goneShare).toBeCloseTo(1 - 0.25 / (1.082532 * 1.25), 6);
    expect(enlarging?.old.goneShare).toBeGreaterThan(0.8);
  });

  it('leaves grooves of an eighth of a millimetre, a fifth of the height of the new thread', () => {
    expect(enlarging?.old.grooveMm).toBeCloseTo(0.125, 12);
    expect(enlarging?.old.ofNewShare).toBeCloseTo(0.125 / 0.625, 12);
    expect(enlarging?.old.samePitch).toBe(true);
  });

  it('takes less metal than an insert, so that none is advised in iron, and one is in aluminium', () => {
    expect(enlarging?.insert?.betterFor).toEqual([]);
    const soft = hole('M11x1.25', { was: thread('M10x1.25'), material: 'aluminium' });
    expect(soft.enlarging?.insert?.betterFor).toEqual(['soft-metal']);
  });
});

describe('M12 in place of M10', () => {
  it('takes more metal than an insert for M10, which is then the better way', () => {
    const { enlarging } = hole('M12x1.25', { was: thread('M10x1.25'), bossMm: 19 });
    expect(enlarging?.insert?.hole.majorMm).toBeCloseTo(11.624, 3);
    expect(enlarging?.insert).toMatchObject({ leavesWall: true, betterFor: ['less-metal', 'wall'] });
    expect(enlarging?.old).toMatchObject({ goneShare: 1, grooveMm: 0 });
  });

  it('an insert that leaves too thin a wall as well is no better way', () => {
    const { enlarging } = hole('M12x1.25', { was: thread('M10x1.25'), bossMm: 18 });
    expect(enlarging?.insert).toMatchObject({ leavesWall: false, betterFor: [] });
    expect(enlarging?.sizes).toEqual([]);
  });
});

describe('sizes that fit the metal there is', () => {
  it('are larger than the old thread, leave the wall to be kept, and are twelve at most', () => {
    const { enlarging } = hole('M12x1.25', { was: thread('M11x1.25'), bossMm: 20 });
    expect(enlarging?.sizes?.map((size) => size.thread)).toEqual(['M12x1.75', 'M12x1.5', 'M12x1.25', 'M12x1']);
    for (const size of enlarging?.sizes ?? []) expect(size.wallMm).toBeCloseTo(4, 12);
    expect(hole('M8x1.25', { was: thread('M6x1'), bossMm: 100 }).enlarging?.sizes).toHaveLength(12);
  });

  it('are not told where nothing is known of the metal, nor where the tables end', () => {
    expect(hole('M27x2', { was: thread('M24x3'), bossMm: 100 }).enlarging?.sizes).toBeNull();
    expect(hole('M12x1.25', { was: thread('M11x1.25') }).enlarging?.sizes).toBeNull();
  });
});

describe('the depth of a blind hole', () => {
  it('is engagement, two free pitches, the lead of the tap and the point of the drill', () => {
    const { engagement } = hole('M10x1.5', { engagementMm: 15 });
    expect(engagement?.fullThreadMm).toBe(18);
    expect(engagement?.secondTap.shoulderMm).toBe(24);
    expect(engagement?.bottomingTap.shoulderMm).toBe(21);
    expect(engagement?.secondTap.tipMm).toBeCloseTo(24 + 8.5 / 2 / Math.tan((59 * Math.PI) / 180), 9);
  });

  it('follows the material where no engagement is asked for', () => {
    expect(hole('M12x1.25', { material: 'grey-iron' }).engagement).toMatchObject({ wantedMm: 18, advisedMm: 18 });
    expect(hole('M12x1.25').engagement).toBeNull();
    expect(hole('G1/4', { material: 'steel' }).engagement).toBeNull();
    expect(hole('Rc1/4').engagement?.wantedMm).toBe(9.7);
  });

  it('a hole that is too shallow for what is wanted stands against it', () => {
    const shallow = hole('M12x1.25', { material: 'grey-iron', depthMm: 22 });
    expect(shallow).toMatchObject({ engagementWithinMm: 17, against: ['too-shallow'] });
    expect(hole('M12x1.25', { material: 'grey-iron', depthMm: 23 }).against).toEqual([]);
  });
});

describe('how far a drill may go wrong', () => {
  it('is the wall, or the wall over the depth', () => {
    const { stray } = hole('M12x1.25', { wallMm: 3, keepMm: 1, depthMm: 40 });
    expect(stray?.untilGone.offMm).toBe(3);
    expect(Math.tan(stray?.untilGone.leanRad ?? 0) * 40).toBeCloseTo(3, 12);
    expect(stray?.untilKeep.offMm).toBe(2);
    expect(Math.tan(stray?.untilKeep.leanRad ?? 0) * 40).toBeCloseTo(2, 12);
  });

  it('is nothing where the wall is too thin already, and leans by no angle where no depth is known', () => {
    const { stray } = hole('M12x1.25', { wallMm: 3 });
    expect(stray).toMatchObject({ untilKeep: { offMm: 0, leanRad: null }, untilGone: { leanRad: null } });
  });
});

describe('the drill to take from a box', () => {
  it.each([
    ['M12x1.25', mm(10.5, 10.7, 11), '10.7 mm', 'does'],
    ['M12x1.25', mm(10.2, 11), '11 mm', 'loose'],
    ['M12x1.25', mm(10.2, 11.5), '10.2 mm', 'tight'],
    ['M12x1.25', mm(9, 10), '10 mm', 'tight'],
    ['9/16-18', mm(13.096875), '13.096875 mm', 'does'],
    ['Rc1/4', mm(11.3, 11.5), '11.3 mm', 'does'],
    ['Rc1/4', mm(10, 11.5), '11.5 mm', 'loose'],
  ])('for %s of these is the right or the nearest one', (name, have, taken, verdict) => {
    const { atHand, against } = hole(name, { have });
    expect(atHand).toMatchObject({ drill: { name: taken }, verdict });
    expect(against).toEqual(verdict === 'does' ? [] : ['no-drill-at-hand']);
  });

  it('larger than the thread itself leaves none of it', () => {
    const { atHand } = hole('M12x1.25', { have: mm(25) });
    expect(atHand).toMatchObject({ basicShare: 0, handbookShare: 0, verdict: 'loose' });
  });

  it('an empty box has none', () => {
    expect(hole('M12x1.25', { have: [] })).toMatchObject({ atHand: null, against: ['no-drill-at-hand'] });
  });
});
