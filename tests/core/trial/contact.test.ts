import { describe, expect, it } from 'vitest';
import { home } from '../../../src/job/path.ts';
import { contactAt, gapFrom, type Offered, slopesOf } from '../../../src/trial/contact.ts';
import { asTraced, correctionOf } from '../../../src/trial/correction.ts';
import { unknownsOf } from '../../../src/trial/equations.ts';
import { surfacePlaceOf } from '../../../src/trial/surface-place.ts';
import { Random } from '../../support/random.ts';
import { readOff, spotsNear, TrueCastings } from '../../support/simulated-trial.ts';
import { trialJoint } from '../../support/trial-job.ts';

const joint = trialJoint();
const offered: Offered = { joint, isCutAt: () => false };
const unknowns = unknownsOf(joint, 120);
const leg = joint.fit.legs[1];
const at = (turnDeg: number) => ({ ...home, standOffMm: 14, turnRad: (turnDeg * Math.PI) / 180 });
const offsetsOf = (values: readonly number[]) => {
  const { offsetMm } = correctionOf(unknowns, values);
  return offsetMm;
};
const random = new Random(5);
const someValues = (): number[] => unknowns.list.map((_, i) => random.between(-1, 1) * (i < 6 ? 0.5 : 0.3));

describe('the gap from a place on the fixed part', () => {
  it('is what corners and sides give, of castings shifted, turned and grown at random', () => {
    for (let run = 0; run < 40; run++) {
      const values = someValues();
      const correction = correctionOf(unknowns, values);
      // a side moves out as a whole, and its corner farther than any rounding of it: so only sides are met
      const castings = new TrueCastings(joint, {
        ...correction.moving,
        fixed: correction.fixed,
        offsetMm: offsetsOf(values),
        wanderMm: 0,
      });
      const spots = spotsNear(joint, 15);
      const spot = random.pick(spots);
      const exact = readOff(joint, castings, [spot], { clayMm: 0, stopRad: 0 }, random).goes[0]?.readings[0];
      const place = surfacePlaceOf(offered, { ...spot, depthMm: 30 });
      const contact = place && gapFrom(offered, place, home, correction);
      if (exact?.kind !== 'clay' || contact === null) throw new Error('no gap there');
      expect(contact.gapMm).toBeCloseTo(exact.thicknessMm, 6);
    }
  });

  it('is none where no moving metal is at that depth', () => {
    const [spot] = spotsNear(joint, 15);
    const place = surfacePlaceOf(offered, {
      section: spot?.section ?? '',
      at: spot?.at ?? { x: 0, y: 0 },
      depthMm: 55,
    });
    expect(place && gapFrom(offered, place, home, asTraced)).toBeNull();
  });
});

describe('the contact at a position', () => {
  it('is nothing at the turn at which corners and sides first meet, and as deep beyond as its pace takes it', () => {
    const stop =
      new TrueCastings(joint, { ...asTraced.moving, offsetMm: () => 0, wanderMm: 0 }).stopTurnRad() ?? Number.NaN;
    const contactNear = (turnRad: number) => contactAt(offered, { ...at(0), turnRad }, asTraced);
    expect(Math.abs(contactNear(stop)?.gapMm ?? Number.NaN)).toBeLessThan(1e-3);
    const step = 1e-3;
    const [before, beyond] = [contactNear(stop + step)?.gapMm ?? 0, contactNear(stop - step)?.gapMm ?? 0];
    expect(before).toBeGreaterThan(0);
    expect(beyond).toBeCloseTo(-before, 2);
  });

  it('is none before sections share depth', () => {
    expect(contactAt(offered, { ...home, standOffMm: 70 }, asTraced)).toBeNull();
  });
});

describe('how a gap changes with a correction', () => {
  const slope = (of: (values: readonly number[]) => number, values: readonly number[], i: number): number => {
    const step = 1e-5;
    const moved = (by: number): number => of(values.map((value, k) => (k === i ? value + by : value)));
    return (moved(step) - moved(-step)) / (2 * step);
  };

  it('is what small changes of each figure give: at a place, and where castings meet', () => {
    let compared = 0;
    for (let run = 0; run < 20; run++) {
      const values = someValues();
      const correction = correctionOf(unknowns, values);
      const spot = random.pick(spotsNear(joint, 15));
      const place = surfacePlaceOf(offered, { ...spot, depthMm: 30 });
      if (place === null) throw new Error('no place');
      const position = at(random.between(0, 20));
      const cases = [
        {
          position: home,
          place,
          contactOf: (v: readonly number[]) => gapFrom(offered, place, home, correctionOf(unknowns, v)),
        },
        {
          position,
          place: undefined,
          contactOf: (v: readonly number[]) => contactAt(offered, position, correctionOf(unknowns, v)),
        },
      ];
      for (const { position: stands, place: from, contactOf } of cases) {
        const contact = contactOf(values);
        if (contact === null) throw new Error('no contact');
        const slopes = slopesOf(contact, offered, stands, correction, unknowns, from);
        slopes.forEach((one, i) => {
          const byDifference = slope((v) => contactOf(v)?.gapMm ?? Number.NaN, values, i);
          // where two places are equally near a step may pass from the one to the other
          if (Math.abs(byDifference - one) < 5e-3) compared += 1;
        });
      }
    }
    expect(leg).toBeDefined();
    expect(compared / (20 * 2 * unknowns.list.length)).toBeGreaterThan(0.98);
  });
});
