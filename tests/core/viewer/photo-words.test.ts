import { expect, it } from 'vitest';
import type { PhotoFault } from '../../../src/intake/photo/photo-fault.ts';
import { errorIn, faultText } from '../../../viewer/words/photo.ts';

const faults: readonly PhotoFault[] = [
  { code: 'not-a-jpeg' },
  { code: 'no-picture-size' },
  { code: 'too-few-points', found: 3, needed: 4 },
  { code: 'too-few-points', found: 3, needed: 2 },
  { code: 'not-a-number', point: 1 },
  { code: 'coincident', where: 'picture', points: [0, 1] },
  { code: 'in-a-line', where: 'plane', points: [0, 1, 2] },
  { code: 'behind-camera', points: [2], suspects: [1, 2] },
  { code: 'behind-camera', points: [2], suspects: [] },
  { code: 'undetermined' },
  { code: 'out-of-range', what: 'touchErrorPx', found: 0 },
  { code: 'too-square-on', tiltRad: 0.01, relativeError: 0.5 },
  { code: 'no-such-height', heightMm: 90_000 },
  { code: 'beyond-camera', depthMm: -2000, heightMm: 1500 },
];

it.each(faults.map((fault) => [fault.code, fault] as const))(
  'a sentence says it, and names the points: %s',
  (_, fault) => {
    const said = faultText(fault, ['D1', 'D2', 'B1'], 'mm');
    expect(said).toMatch(/^[A-Z0-9].*\.$/);
    expect(said).not.toMatch(/undefined|NaN|null/);
    if ('points' in fault)
      for (const i of fault.points) if (fault.code !== 'behind-camera') expect(said).toContain(['D1', 'D2', 'B1'][i]);
  },
);

it('a limit is never rounded to less than it is', () => {
  expect(errorIn('mm', 0.6201)).toBe(0.63);
  expect(errorIn('mm', 0.62)).toBe(0.62);
  expect(errorIn('in', 0.635)).toBe(0.025);
});
