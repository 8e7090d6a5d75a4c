import { describe, expect, it } from 'vitest';
import type { Alternative, CutterAnswer, CutterEnd } from '../../../src/answers/grind-answer.ts';
import { alternativeTexts } from '../../../src/words/alternative-text.ts';
import { cutterTexts } from '../../../src/words/cutter-text.ts';
import { bandOf, planOf } from '../../support/answers.ts';
import { castingOf } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';

const joint = jointOf({ fixed: castingOf({ name: 'Block, left' }), moving: castingOf({ name: 'Housing' }) });

const cutterOf = (said: Partial<CutterAnswer> = {}): CutterAnswer => ({
  radiusMm: 6,
  nose: 'ball',
  scallopMm: null,
  neededVolumeMm3: 2919,
  extraVolumeMm3: 1592,
  extraMassG: 11.38,
  ends: [],
  narrow: [],
  covered: [],
  ...said,
});

const told = (cutter: CutterAnswer | null, way: 'as-needed' | 'corners' | 'uniform' = 'corners'): string =>
  cutterTexts(
    joint,
    planOf({ cutter, sections: [{ id: 'ribs', nothingLeft: false, bands: [bandOf({ cutterWay: way })] }] }),
  ).join('\n');

const endOf = (what: CutterEnd['what']): CutterEnd => ({
  section: 'ribs',
  atMm: 38,
  towards: 'back',
  what,
  mm: 6,
  reachMm: 6,
  against: null,
  at: [0, 0],
});

describe('what is said of the cutter', () => {
  it('is nothing without one', () => {
    expect(told(null)).toBe('');
  });

  it('is what it costs, which way was chosen, and to leave no nick', () => {
    expect(told(cutterOf())).toContain('11.4 g (1.6 cm³) more than the 2.9 cm³ the clearance alone needs');
    expect(told(cutterOf())).toContain('corners the cutter does not get into are let in');
    expect(told(cutterOf(), 'uniform')).toContain('the whole cut is grown');
    expect(told(cutterOf())).toMatch(/bigger fillet .* leave no nick/);
  });

  it('is that it costs nothing where it costs nothing', () => {
    expect(told(cutterOf({ extraVolumeMm3: 0 }), 'as-needed')).toContain('no more for that than the clearance needs');
  });

  it('is how far it runs past an end', () => {
    expect(told(cutterOf({ ends: [endOf('cut-past')] }))).toContain('run 6.0 mm past what is in the way');
    expect(told(cutterOf({ ends: [endOf('run-past')] }))).toContain('Run the ball 6.0 mm past it');
  });

  it('is the height of its ridges at a stepover', () => {
    expect(told(cutterOf({ scallopMm: 0.101 }))).toContain('ridges 0.1 mm high');
  });
});

describe('what is said of what else would give', () => {
  const other = (said: Partial<Alternative>): string =>
    alternativeTexts(
      joint,
      planOf({
        alternatives: [
          {
            what: 'clearance',
            homeMm: null,
            wayInMm: null,
            part: 'fixed',
            turnDeg: null,
            standOffMm: null,
            holds: true,
            areaMm2: 132,
            massG: 24.6,
            against: [],
            ...said,
          },
        ],
      }),
    ).join();

  it('is each kind with its cost, or with what stands against it', () => {
    expect(other({ homeMm: 0.8, wayInMm: 0.8 })).toBe('A smaller clearance, 0.8 mm: it holds, 132 mm² (24.6 g) off.');
    expect(other({ homeMm: 0.8, wayInMm: 0.4 })).toContain('0.8 mm at home and 0.4 mm on the way in');
    expect(other({ what: 'other-part', part: 'moving', holds: false, against: ['"lips" is not offered'] })).toBe(
      'Cutting Housing alone: 132 mm² (24.6 g) off, but "lips" is not offered.',
    );
    expect(other({ what: 'both', part: 'both' })).toMatch(/^Cutting both parts, shared as the fit says: it holds/);
    expect(other({ what: 'turn', turnDeg: -3, areaMm2: 0, massG: 0 })).toBe(
      'Entering turned 3.0° less: it holds, no metal off.',
    );
    expect(other({ what: 'stand-off', standOffMm: 10 })).toMatch(/^Swinging 10 mm farther out: it holds/);
  });

  it('is nothing where it was not worked out', () => {
    expect(alternativeTexts(joint, planOf({ alternatives: null }))).toEqual([]);
  });
});
