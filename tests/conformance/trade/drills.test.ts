import { describe, expect, test } from 'vitest';
import { inchDrillNamed, inchDrillSource, inchDrills } from '../../../src/trade/inch-drills.ts';
import { drillPointMm, engagementIn } from '../../../src/trade/thread-engagement.ts';
import { insertHole } from '../../../src/trade/wire-inserts.ts';
import { titled } from '../../support/titled.ts';
import { tradeCases } from './trade-cases.ts';

describe('inch drills (numbers and letters from memory of ASME B94.11M, fractions computed)', () => {
  test.each([
    ['#1', 5.7912],
    ['#7', 5.1054],
    ['#50', 1.778],
    ['A', 5.9436],
    ['e', 6.35],
    ['F', 6.5278],
    ['Z', 10.4902],
    ['1/4', 6.35],
    ['27/64', 10.715625],
  ])('%s is %f mm', (name, diameterMm) => {
    expect(inchDrillNamed(name)?.diameterMm).toBeCloseTo(diameterMm, 9);
  });

  test.each(['', '#0', '#51', '2/8', '65/64', 'AA', '__proto__'])('%j is the name of none', (name) => {
    expect(inchDrillNamed(name)).toBeNull();
  });

  test('numbers grow smaller and letters larger, and no two have one name', () => {
    const of = (pattern: RegExp) => inchDrills.filter(({ name }) => pattern.test(name)).map(({ name }) => name);
    expect(of(/^#/)).toEqual(Array.from({ length: 50 }, (_, i) => `#${50 - i}`));
    expect(of(/^[A-Z]$/).join('')).toBe('ABCDEFGHIJKLMNOPQRSTUVWXYZ');
    expect(inchDrillSource.basis).toBe('from memory');
    expect(new Set(inchDrills.map(({ name }) => name)).size).toBe(inchDrills.length);
  });
});

describe('the point of a 118° drill (computed)', () => {
  const { expected, tolerance } = tradeCases.drillPoints;
  test.each(expected)('of $diameterMm mm is $pointMm mm long', ({ diameterMm, pointMm }) => {
    expect(Math.abs(drillPointMm(diameterMm) - pointMm)).toBeLessThan(tolerance);
  });
});

describe('the hole for a wire thread insert (computed; held against makers’ tables from memory)', () => {
  const { expected, tolerance } = tradeCases.insertHoles;
  test.each(titled(expected))('%s', (_, { majorMm, pitchMm, outsideMm }) => {
    expect(Math.abs(insertHole(majorMm, pitchMm).majorMm - outsideMm)).toBeLessThan(tolerance);
  });

  test('for M10 × 1.5 is drilled 10.4 mm, the tenth above its minor diameter', () => {
    expect(insertHole(10, 1.5).minorMm).toBeCloseTo(10.325, 3);
    expect(insertHole(10, 1.5).drillMm).toBe(10.4);
  });
});

test('a thread engages 1.5 diameters in grey iron, 2 in aluminium and 1 in steel (looked up), 1.25 in ductile iron (common practice)', () => {
  const told = ['grey-iron', 'aluminium', 'steel', 'ductile-iron'].map((name) => engagementIn(name));
  expect(told.map((engagement) => engagement?.timesMajor)).toEqual([1.5, 2, 1, 1.25]);
  expect(told.map((engagement) => engagement?.source.basis)).toEqual([
    'looked up',
    'looked up',
    'looked up',
    'common practice',
  ]);
  expect(engagementIn('cheese')).toBeNull();
});
