import { describe, expect, it } from 'vitest';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { axisName } from '../../../src/words/names.ts';
import { clockText, depthText, placeText, turnRange } from '../../../src/words/places.ts';
import { castingOf, dowel } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';

const joint = jointOf({
  fixed: castingOf({ holes: [dowel('D1', [-150, 0]), dowel('D2', [150, 0]), dowel('SPARE', [0, 101])] }),
  moving: castingOf({ holes: [dowel('P1', [-150, 0]), dowel('P2', [150, 0])] }),
  dowels: [
    ['D1', 'P1'],
    ['D2', 'P2'],
  ],
});

const radians = (deg: number): number => (deg * Math.PI) / 180;

describe('places on a casting', () => {
  it.each([
    [90, "12 o'clock"],
    [0, "3 o'clock"],
    [-90, "6 o'clock"],
    [180, "9 o'clock"],
    [-180, "9 o'clock"],
    [60, "1 o'clock"],
    [45, 'half past 1'],
    [75, 'half past 12'],
    [97.4, "12 o'clock"],
    [105, 'half past 11'],
  ])('%f° anticlockwise from 3 is %s', (deg, text) => {
    expect(clockText(deg)).toBe(text);
  });

  it('a place is told from the axis, on the clock, and from the nearest paired dowel', () => {
    expect(placeText(vec(0, 100), joint)).toBe("100.0 mm from the axis at 90.0° (12 o'clock), 180.3 mm from D1");
    expect(placeText(vec(60, -80), joint)).toBe("100.0 mm from the axis at -53.1° (5 o'clock), 120.4 mm from D2");
  });

  it('the axis goes by the name of its hole; it is the crank where that is called so, or where anything turns', () => {
    const about = (axisHole: string | null, turning = false): string =>
      axisName({ fit: { ...joint.fit, axisHole }, rotating: turning ? [joint.fixed] : [] });
    expect(about(null)).toBe('the axis');
    expect(about(null, true)).toBe('the crank');
    expect(about('CRANK')).toBe('the crank');
    expect(about('pump bore', true)).toBe('pump bore');
  });

  it('the axis has no direction', () => {
    expect(placeText(vec(0.1, -0.2), joint)).toBe('on the axis');
  });

  it.each([
    [{ fromMm: 12, toMm: 90 }, 'from face 12 to 90 mm'],
    [{ fromMm: 0, toMm: 12.5 }, 'from face 0 to 12.5 mm'],
    [{ fromMm: -44, toMm: -30 }, '44 to 30 mm proud of its face'],
    [{ fromMm: -44, toMm: 0 }, '44 to 0 mm proud of its face'],
    [{ fromMm: -4, toMm: 6 }, 'from 4 mm proud of its face to 6 mm behind it'],
    [null, 'through every depth'],
  ])('depth %o reads "%s"', (depth, text) => {
    expect(depthText(depth, 'mm')).toBe(text);
  });

  it('a turn that stands still is told once', () => {
    expect(turnRange(radians(22), radians(22))).toBe('22.0°');
    expect(turnRange(radians(13.62), radians(1.38))).toBe('13.6° to 1.4°');
  });
});
