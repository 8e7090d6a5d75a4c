import { describe, expect, it } from 'vitest';
import type { LengthName, RowName, Stack } from '../../../src/stack/stack.ts';
import { type StackRow, stackUp } from '../../../src/stack/stack-result.ts';
import { summed } from '../../../src/stack/sum.ts';
import { Random } from '../../support/random.ts';

type Lengths = Record<LengthName, number>;

const lengths: Lengths = {
  flangeProud: 8,
  bell: 118,
  adapter: 0,
  tip: 112,
  splineFrom: 40,
  splineTo: 92,
  pilotMouth: -12,
  pilotLength: 16,
  crankBottom: 10,
  flywheel: 38,
  hubFrom: -8,
  hubTo: 22,
  fingers: 41,
  release: 28,
  releaseStroke: 14,
  fingerTravel: 9,
};

const stack = (changed: Partial<Lengths> = {}, errorMm = 0, wantedMm: Stack['wantedMm'] = {}): Stack => ({
  file: '',
  title: '',
  units: 'mm',
  lengths: Object.fromEntries(Object.entries({ ...lengths, ...changed }).map(([name, mm]) => [name, { mm, errorMm }])),
  wantedMm,
  errorAssumed: null,
});

function row(of: Stack, name: RowName): Exclude<StackRow, { readonly state: 'missing' }> {
  const found = stackUp(of).rows.find((one) => one.name === name);
  if (found === undefined || found.state === 'missing') throw new Error(`${name} is missing`);
  return found;
}

it('± 0.20, 0.10 and 0.15 add up to ± 0.45 at worst, ± 0.269 by root of the sum of squares (looked up)', () => {
  const { worstMm, rssMm } = summed([
    [1, { mm: 0, errorMm: 0.2 }],
    [-1, { mm: 0, errorMm: 0.1 }],
    [1, { mm: 0, errorMm: 0.15 }],
  ]);
  expect(worstMm).toBeCloseTo(0.45, 12);
  expect(rssMm).toBeCloseTo(0.269, 3);
});

describe('where things lie along the crank', () => {
  /** The same by places, counted from the block's face toward the gearbox. */
  function byPlaces(l: Lengths): Record<RowName, number> {
    const face = l.bell + l.adapter;
    const friction = l.flangeProud + l.flywheel;
    const tip = face - l.tip;
    const [mouth, bottom] = [l.flangeProud - l.pilotMouth, l.flangeProud - l.crankBottom];
    const [hubFront, hubRear] = [friction + l.hubFrom, friction + l.hubTo];
    const [splineFront, splineRear] = [face - l.splineTo, face - l.splineFrom];
    const gap = face - l.release - (friction + l.fingers);
    return {
      pilot: Math.min(mouth, mouth) - Math.max(tip, mouth - l.pilotLength),
      tipGap: tip - bottom,
      spline: Math.min(hubRear, splineRear) - Math.max(hubFront, splineFront),
      releaseGap: gap,
      strokeLeft: l.releaseStroke - gap - l.fingerTravel,
    };
  }

  const strewn = (random: Random, most: number): Lengths =>
    Object.fromEntries(
      Object.entries(lengths).map(([name, mm]) => [name, mm + random.between(-most, most)]),
    ) as Lengths;

  it('500 random stacks agree with the places of their ends', () => {
    const random = new Random(1);
    for (let i = 0; i < 500; i++) {
      const these = strewn(random, 12);
      for (const [name, mm] of Object.entries(byPlaces(these)))
        expect(row(stack(these), name as RowName).mm).toBeCloseTo(mm, 9);
    }
  });

  it('no stack within the errors leaves the worst case', () => {
    const random = new Random(2);
    for (let i = 0; i < 200; i++) {
      const drawn = strewn(random, 8);
      const found = stackUp(stack(drawn, 0.4)).rows;
      for (let k = 0; k < 20; k++) {
        const built = Object.fromEntries(
          Object.entries(drawn).map(([name, mm]) => [name, mm + (random.chance(0.5) ? 0.4 : -0.4)]),
        ) as Lengths;
        const truth = byPlaces(built);
        for (const one of found) {
          if (one.state === 'missing') throw new Error('nothing is missing');
          expect(truth[one.name]).toBeGreaterThan(one.leastMm - 1e-9);
          expect(truth[one.name]).toBeLessThan(one.mostMm + 1e-9);
          if (one.state === 'holds') expect(truth[one.name]).toBeGreaterThan(0);
          if (one.state === 'fails') expect(truth[one.name]).toBeLessThan(1e-9);
        }
      }
    }
  });

  it('a length on both sides is no error: the flange stands in tip and pilot mouth alike, once each', () => {
    expect(row(stack({}, 0.1), 'pilot').worstMm).toBeCloseTo(0.5, 12);
    expect(row(stack({}, 0.1), 'spline').worstMm).toBeCloseTo(0.2, 12);
  });
});

describe('a row', () => {
  it.each([
    [119.4, 'holds'],
    [119.6, 'undecided'],
    [120.4, 'undecided'],
    [120.6, 'fails'],
  ])('with the tip %f mm long against a bottom at 120, ± 0.5 mm in all, %s', (tip, state) => {
    expect(row(stack({ tip }, 0.1), 'tipGap').state).toBe(state);
  });

  it('holds what is wanted to the last, and more than nothing where nothing is said', () => {
    expect(row(stack({}, 0, { tipGap: 8 }), 'tipGap').state).toBe('holds');
    expect(row(stack({}, 0, { tipGap: 8.01 }), 'tipGap').state).toBe('fails');
    expect(row(stack({ tip: 120 }), 'tipGap').state).toBe('fails');
    expect(row(stack({ tip: 120 }, 0, { tipGap: 0 }), 'tipGap').state).toBe('holds');
  });

  it('without all its lengths names them, and leaves the whole undecided', () => {
    const { hubFrom, ...rest } = stack().lengths;
    const { rows, verdict } = stackUp({ ...stack(), lengths: rest });
    expect(hubFrom).toBeDefined();
    expect(rows.find(({ name }) => name === 'spline')).toEqual({
      name: 'spline',
      state: 'missing',
      missing: ['hubFrom'],
    });
    expect(verdict).toBe('undecided');
  });

  it('that fails outweighs one that is missing', () => {
    const { hubFrom: _, ...rest } = stack({ tip: 130 }).lengths;
    expect(stackUp({ ...stack(), lengths: rest }).verdict).toBe('not');
  });
});
