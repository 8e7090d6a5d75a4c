import { describe, expect, it } from 'vitest';
import type { CheckResult, RotatingResult } from '../../../src/clearance/check-result.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { dowelGaps } from '../../../src/joint/dowel-gaps.ts';
import { checkText } from '../../../src/words/check-text.ts';
import { verdictLine } from '../../../src/words/verdict.ts';
import { checkOf, foulOnTheWay, homeOf, touchOf, wayInOf } from '../../support/answers.ts';
import { castingOf, dowel, type JobSpec } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';

const pins = [dowel('P1', [-158, 12]), dowel('P2', [156, -30])];

const twoDowels: JobSpec = {
  fixed: castingOf({
    name: 'Iron four',
    sections: [{ id: 'ribs', depth: [12, 90], mayCut: true }],
    holes: [dowel('D1', [-158, 12], 9), dowel('D2', [156, -30], 9)],
  }),
  moving: castingOf({
    name: 'Transfer case',
    sections: [{ id: 'lips', depth: [-44, -30] }],
    holes: pins,
  }),
  dowels: [
    ['D1', 'P1'],
    ['D2', 'P2'],
  ],
  offerUp: [{ standOff: 190, turn: 22 }, { standOff: 14, turn: 22 }, { standOff: 14 }, {}],
};

const told = (said: Partial<CheckResult>): string => checkText(jointOf(twoDowels), checkOf(said));

const touch = touchOf();
const firstTouch = { ...touch, dowelGaps: dowelGaps(jointOf(twoDowels), touch.leg, touch.at) };

const fouling = {
  verdict: 'fouls',
  meetsClearance: false,
  home: homeOf({ clearanceMm: 2.86, worstClearanceMm: 1.76 }),
  wayIn: { ...foulOnTheWay, firstTouch },
} as const;

const clutchAt = (clearanceMm: number): RotatingResult => ({
  part: 'clutch',
  against: 'moving',
  state: 'clear',
  clearanceMm,
  toleranceMm: 0,
  nearest: null,
  instant: null,
});

describe('a check in words', () => {
  it('the verdict names where it stands', () => {
    const both = checkOf({ ...fouling, home: homeOf({ state: 'fouls' }) });
    expect(verdictLine(both)).toContain('FOULS at home and on the way in:');
    const clutch = {
      part: 'clutch',
      against: 'moving',
      state: 'fouls',
      clearanceMm: 0,
      toleranceMm: 0,
      nearest: null,
      instant: null,
    } as const;
    expect(verdictLine(checkOf({ verdict: 'fouls', rotating: [clutch] }))).toContain('at the rotating clutch:');
    expect(verdictLine(checkOf({ verdict: 'too-close', home: homeOf({ state: 'touches' }) }))).toContain(
      'it touches at home',
    );
  });

  it('what only passes end to end, nearer than the margin, is told as a gap along the axis', () => {
    const passing = checkOf({
      verdict: 'fouls',
      meetsClearance: false,
      wayIn: { ...foulOnTheWay, alongCrankMm: 1, worstClearanceMm: -1.1 },
    });
    expect(told(passing)).toMatch(/way in +fouls +1\.0 mm along the axis +2 mm\n/);
    expect(told(passing).replace(/\s+/g, ' ')).toContain('1.0 mm apart along the axis, which is less than');
  });

  it('the first touch says what a rule shows: two dowels 158 mm out, turned 13.62°, are 37.6 mm from their holes', () => {
    // 2 · 158.45 · sin(13.62°/2) = 37.6 by the chord
    const text = told(fouling);
    expect(text).toContain('It stops at a turn of 13.6°, stand-off 14.0 mm (leg 2):');
    expect(text).toContain('D1 is 37.6 mm from its hole and D2 37.7 mm, measured square to the axis.');
  });

  it('the nearest places are told where nothing touches', () => {
    const nearest = homeOf().nearest;
    const text = told({
      home: homeOf({ nearest: nearest && { ...nearest, fixedAt: vec(0, 90), movingAt: vec(0, 98) } }),
      wayIn: wayInOf(),
    });
    expect(text).toContain('On the way in, at a turn of 10.0°, stand-off 14.0 mm (leg 2):');
    expect(text).not.toContain('First touch');
  });

  it('no pair in reach is not called near', () => {
    const far = homeOf({ clearanceMm: null, worstClearanceMm: null, errorMm: null, nearest: null });
    expect(told({ home: far })).toMatch(/home +clear +out of reach/);
  });

  it('an undecided figure is a lower bound', () => {
    const text = told({
      verdict: 'undecided',
      home: homeOf({ state: 'undecided', clearanceMm: 0, worstClearanceMm: -1 }),
    });
    expect(text).toMatch(/home +undecided +at least 0\.0 mm/);
  });

  it('every notice is printed', () => {
    const notice = { code: 'rotating-close', part: 'clutch', against: 'fixed', clearanceMm: 2.5, limitMm: 3 } as const;
    expect(told({ notices: [notice] })).toContain('- "clutch" runs 2.5 mm from the fixed part');
  });

  it('each verdict ends in something to do, and in its cautions', () => {
    for (const verdict of ['goes', 'should-go', 'too-close', 'fouls', 'undecided'] as const) {
      expect(told({ verdict })).toMatch(/\nNext\n {2}- .*\n/);
      expect(told({ verdict })).toContain('it says nothing of strength');
    }
    expect(told(fouling)).toContain('fettle grind job.fit.json');
  });

  describe('every other way in', () => {
    const everyWay = 'fettle ways job.fit.json';

    it('is named where only the way in fouls, or passes too near', () => {
      expect(told(fouling)).toContain(`- Whether any way in needs no cutting: ${everyWay}`);
      const near = wayInOf({ clearanceMm: 1.2 });
      expect(told({ verdict: 'too-close', meetsClearance: false, wayIn: near })).toContain(everyWay);
    });

    it.each([
      ['home fouls', { ...fouling, home: homeOf({ state: 'fouls', clearanceMm: 0 }) }],
      ['it is too near at home', { ...fouling, home: homeOf({ clearanceMm: 1.9 }) }],
      ['home alone fouls', { verdict: 'fouls', home: homeOf({ state: 'fouls', clearanceMm: 0 }), wayIn: wayInOf() }],
      ['what runs round is too near at home', { ...fouling, rotating: [clutchAt(3.9)] }],
      ['only home was asked', { verdict: 'fouls', home: homeOf({ state: 'fouls', clearanceMm: 0 }), wayIn: null }],
      ['the way in is clear', { wayIn: wayInOf() }],
      ['nothing is judged', { ...fouling, verdict: 'undecided', reason: 'never-near' }],
    ] as const)('is not named where %s', (_, said) => {
      expect(told(said)).not.toContain(everyWay);
    });

    it('is not named where metal without a depth may be met on each of them', () => {
      const deep = jointOf({ ...twoDowels, moving: castingOf({ sections: [{ depth: null }], holes: pins }) });
      expect(checkText(deep, checkOf(fouling))).not.toContain(everyWay);
    });
  });

  it('is never wider than 100 columns, and plain', () => {
    const sections = Array.from({ length: 60 }, () => 'word');
    const lengthy = { code: 'trace-error-assumed', part: 'block', sections, traceErrorMm: 1 } as const;
    for (const line of told({ ...fouling, notices: [lengthy] }).split('\n')) {
      expect(line.length).toBeLessThanOrEqual(100);
      expect(line).not.toMatch(/[^\P{Cc}]/u);
    }
  });

  it('says none of the words that promise too much', () => {
    const all = [told(fouling), told({}), told({ verdict: 'should-go' })].join('\n');
    expect(all).not.toMatch(/certif|guarantee|envelope|\bpose\b|Plasticine/i);
    expect(all).toMatch(/Proved for\s+the\s+outlines as traced/);
  });
});
