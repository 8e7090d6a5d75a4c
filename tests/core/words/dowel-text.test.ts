import { describe, expect, it } from 'vitest';
import { dowelText } from '../../../src/words/dowel-text.ts';
import { castingOf, dowel, holeOf } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';

const joint = (x: number) =>
  jointOf({
    fixed: castingOf({ name: 'block', holes: [dowel('D1', [-80, 0]), dowel('D2', [80, 0])] }),
    moving: castingOf({
      name: 'case',
      holes: [dowel('P1', [-80, 0]), dowel('P2', [80, 0]), holeOf({ id: 'SHAFT', kind: 'bore', at: [x, 0] })],
    }),
    dowels: [
      ['D1', 'P1'],
      ['D2', 'P2'],
    ],
  });

describe('a bore of the moving part by the axis', () => {
  it('is told with how far off it was traced, and that no tracing decides it', () => {
    expect(dowelText(joint(0.3))).toContain(
      '"SHAFT" of case stands 0.30 mm from the axis by the tracing: tracing cannot decide this, put an indicator on it.',
    );
  });

  it('is none where it stands well aside', () => {
    expect(dowelText(joint(40))).not.toContain('SHAFT');
  });
});
