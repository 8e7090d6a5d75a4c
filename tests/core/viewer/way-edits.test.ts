import { describe, expect, it } from 'vitest';
import { demoJob } from '../../../viewer/heavy/demo-job.ts';
import { heldByHome, withPositionMoved, withWander, withWay } from '../../../viewer/job/way-edits.ts';

const home = { standOff: 0, turn: 0 };
const far = { standOff: 60, turn: 20 };
const swing = { standOff: 14, turn: 20 };
const swung = { standOff: 14, turn: 0 };
const way = [far, swing, swung, home];

describe('a position of the way in that is moved', () => {
  it('takes along what shares its turn or its stand-off, so that slides stay slides and turns stay turns', () => {
    expect(withPositionMoved(way, 1, { turn: 12, standOff: 17 })).toEqual([
      { standOff: 60, turn: 12 },
      { standOff: 17, turn: 12 },
      { standOff: 17, turn: 0 },
      home,
    ]);
  });

  it('keeps the turn that it shares with home, and home its own', () => {
    expect(heldByHome(way, 2)).toEqual({ turn: true, standOff: false });
    expect(withPositionMoved(way, 2, { turn: 5, standOff: 17 })).toEqual([
      far,
      { standOff: 17, turn: 20 },
      { standOff: 17, turn: 0 },
      home,
    ]);
  });

  it('does not take along what has the same figure elsewhere on the way', () => {
    const back = [{ standOff: 60, turn: 20 }, { standOff: 30, turn: 5 }, swing, home];
    expect(withPositionMoved(back, 0, { turn: 8, standOff: 60 })).toEqual([
      { standOff: 60, turn: 8 },
      ...back.slice(1),
    ]);
  });

  it('reads what is left out of a file as nothing, and keeps a shift', () => {
    const short = [{ standOff: 60, shift: [3, 0] as [number, number] }, { standOff: 14, turn: 9 }, {}];
    expect(withPositionMoved(short, 0, { turn: 4, standOff: 50 })[0]).toEqual({ standOff: 50, turn: 4, shift: [3, 0] });
    expect(heldByHome(short, 1)).toEqual({ turn: false, standOff: false });
  });

  it('stays where a leg would come to nothing', () => {
    expect(withPositionMoved(way, 1, { turn: 20, standOff: 60 })).toBe(way);
    expect(withPositionMoved(way, 1, { turn: 0, standOff: 14 })).toBe(way);
    expect(withPositionMoved(way, 2, { turn: 0, standOff: 0 })).toBe(way);
  });
});

describe('how far a hand may stray', () => {
  const job = demoJob();

  it('is kept as it is said, and gone where all of it is nothing', () => {
    const said = withWander(withWander(job, { turn: 1 }), { tilt: 0.5 });
    expect(said.fit.wander).toEqual({ turn: 1, tilt: 0.5 });
    expect(withWander(withWander(said, { turn: 0 }), { tilt: 0 }).fit).not.toHaveProperty('wander');
  });

  it('stays with another way in, and goes with the last of it, which there is nothing to stray from', () => {
    const said = withWander(job, { turn: 1 });
    expect(withWay(said, way).fit.wander).toEqual({ turn: 1 });
    expect(withWay(said, [home]).fit).not.toHaveProperty('wander');
  });
});
