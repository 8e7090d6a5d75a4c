import { describe, expect, it } from 'vitest';
import { checkJoint } from '../../../src/clearance/check.ts';
import type { RotatingResult } from '../../../src/clearance/check-result.ts';
import { drain } from '../../../src/geometry/progress.ts';
import type { Casting } from '../../../src/job/casting.ts';
import { box, castingOf, disc } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';

/** What the check says of a disc of radius 50 that turns beside a lip from 62 to 66 right of the axis. */
function besideLip(traced: Casting['traced']): RotatingResult | undefined {
  const clutch = castingOf({ name: 'clutch', sections: [{ depth: [-40, -10], loops: [disc(0, 0, 50)] }] });
  const housing = castingOf({ sections: [{ depth: [0, 40], loops: [box(62, -5, 66, 5)] }] });
  const { rotating } = drain(checkJoint(jointOf({ moving: housing, rotating: [{ ...clutch, traced }] })));
  return rotating.find(({ against }) => against === 'moving');
}

describe('a part that turns with the crank', () => {
  it('keeps the gap from the ring it sweeps', () => {
    expect(besideLip(null)).toMatchObject({ state: 'clear', clearanceMm: 12 });
  });

  it('brings round what was not traced of it on another side: never clear there', () => {
    // traced out to 70 on the lip's side, to 50 only on the other
    const offCentre = { depth: null, loops: [disc(10, 0, 60)] };
    expect(besideLip(offCentre)).toMatchObject({ state: 'undecided', clearanceMm: 0 });
  });

  it('is clear where the tracing reaches past the lip all round', () => {
    expect(besideLip({ depth: null, loops: [disc(0, 0, 90)] })).toMatchObject({ state: 'clear', clearanceMm: 12 });
  });
});
