import { describe, expect, it } from 'vitest';
import type { Alternative, Change } from '../../../src/plan/alternatives/alternative.ts';
import type { CutterResult } from '../../../src/plan/cutter/cutter-result.ts';
import { alternativeTexts } from '../../../src/words/alternative-text.ts';
import { cutterTexts } from '../../../src/words/cutter-text.ts';
import { castingOf } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';
import { bandOf, planOf } from '../../support/plans.ts';

const joint = jointOf({ fixed: castingOf({ name: 'Block, left' }), moving: castingOf({ name: 'Housing' }) });

const cutterOf = (said: Partial<CutterResult> = {}): CutterResult => ({
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

const told = (cutter: CutterResult | null, way: 'corners' | 'uniform' = 'corners'): string =>
  cutterTexts(
    joint,
    planOf(joint, { cutter, sections: [{ id: 'ribs', nothingLeft: false, bands: [bandOf({ cutterWay: way })] }] }),
  ).join('\n');

describe('what is said of the cutter', () => {
  it('is nothing without one', () => {
    expect(told(null)).toBe('');
  });

  it('is which way was chosen', () => {
    expect(told(cutterOf())).toContain('corners the cutter does not get into are let in');
    expect(told(cutterOf(), 'uniform')).toContain('the whole cut is grown');
  });

  it('is the height of its ridges at a stepover', () => {
    expect(told(cutterOf({ scallopMm: 0.101 }))).toContain('ridges 0.10 mm high');
  });
});

describe('what is said of what else would give', () => {
  const other = (change: Change, said: Partial<Alternative> = {}): string =>
    alternativeTexts(joint, [{ change, holds: true, areaMm2: 132, massG: 24.6, against: [], ...said }]).join();
  const part = 'fixed';

  it('is each kind with its cost, or with what stands against it', () => {
    expect(other({ what: 'clearance', part, homeMm: 0.8, wayInMm: 0.8 })).toBe(
      'A smaller clearance, 0.8 mm: it holds, 132 mm² (24.6 g) off.',
    );
    expect(other({ what: 'clearance', part, homeMm: 0.8, wayInMm: 0.4 })).toContain(
      '0.8 mm at home and 0.4 mm on the way in',
    );
    const against = [{ code: 'section-not-offered', section: 'lips' }] as const;
    expect(other({ what: 'other-part', part: 'moving' }, { holds: false, against })).toBe(
      'Cutting Housing alone: 132 mm² (24.6 g) off, but "lips" is not offered.',
    );
    expect(other({ what: 'both' })).toMatch(/^Cutting both parts, half of it off each: it holds/);
    expect(other({ what: 'turn', part, turnRad: -Math.PI / 60 }, { areaMm2: 0, massG: 0 })).toBe(
      'Entering turned 3.0° less: it holds, no metal off.',
    );
    expect(other({ what: 'stand-off', part, standOffMm: 10 })).toMatch(/^Swinging 10 mm farther out: it holds/);
  });

  it('is nothing where it was not worked out', () => {
    expect(alternativeTexts(joint, [])).toEqual([]);
  });
});
