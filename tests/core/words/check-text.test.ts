import { describe, expect, it } from 'vitest';
import type { CheckResult, Verdict } from '../../../src/clearance/check-result.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { dowelGaps } from '../../../src/joint/dowel-gaps.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import { checkText } from '../../../src/words/check-text.ts';
import { verdictLine } from '../../../src/words/verdict.ts';
import { checkOf, foulOnTheWay, homeOf, touchOf, wayInOf } from '../../support/answers.ts';
import { castingOf, disc, dowel, type JobSpec } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';

const twoDowels: JobSpec = {
  fixed: castingOf({
    name: 'Iron four',
    sections: [{ id: 'ribs', depth: [12, 90], mayCut: true }],
    holes: [dowel('D1', [-158, 12], 9), dowel('D2', [156, -30], 9)],
  }),
  moving: castingOf({
    name: 'Transfer case',
    sections: [{ id: 'lips', depth: [-44, -30] }],
    holes: [dowel('P1', [-158, 12]), dowel('P2', [156, -30])],
  }),
  dowels: [
    ['D1', 'P1'],
    ['D2', 'P2'],
  ],
  offerUp: [{ standOff: 190, turn: 22 }, { standOff: 14, turn: 22 }, { standOff: 14 }, {}],
};

const told = (said: Partial<CheckResult>, spec: JobSpec = twoDowels, placed: Partial<Joint> = {}): string =>
  checkText({ ...jointOf(spec), ...placed }, checkOf(said));

const touch = touchOf();
const firstTouch = { ...touch, dowelGaps: dowelGaps(jointOf(twoDowels), touch.leg, touch.at) };

const fouling = {
  verdict: 'fouls',
  meetsClearance: false,
  home: homeOf({ clearanceMm: 2.86, worstClearanceMm: 1.76 }),
  wayIn: { ...foulOnTheWay, firstTouch },
} as const;

describe('a check in words', () => {
  it.each<[Verdict, RegExp]>([
    ['goes', /^GOES: /],
    ['should-go', /^SHOULD GO: /],
    ['too-close', /^TOO CLOSE: /],
    ['fouls', /^FOULS /],
    ['undecided', /^UNDECIDED /],
  ])('the verdict %s comes first', (verdict, line) => {
    expect(told({ verdict })).toMatch(line);
  });

  it('the verdict names where it stands', () => {
    expect(verdictLine(checkOf(fouling))).toContain('FOULS on the way in:');
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

  it('both figures stand beside what was asked', () => {
    expect(told(fouling)).toMatch(/home +clear +2\.9 mm +1\.8 mm +2 mm/);
    expect(told(fouling)).toMatch(/way in +fouls +4\.1 mm deep +5\.2 mm deep +2 mm\n/);
  });

  it('what only passes end to end, nearer than the margin, is told as a gap along the crank', () => {
    const passing = checkOf({
      verdict: 'fouls',
      meetsClearance: false,
      wayIn: { ...foulOnTheWay, alongCrankMm: 1, worstClearanceMm: -1.1 },
    });
    expect(told(passing)).toMatch(/way in +fouls +1\.0 mm along the crank +2 mm\n/);
    expect(told(passing).replace(/\s+/g, ' ')).toContain('1.0 mm apart along the crank, which is less than');
  });

  it('how much metal stands in the way is told', () => {
    expect(told(fouling)).toContain('On the way in 95 mm² of metal stand in the way, 4.1 mm deep at the deepest.');
  });

  it('the first touch says what a rule shows: two dowels 158 mm out, turned 13.62°, are 37.6 mm from their holes', () => {
    // 2 · 158.45 · sin(13.62°/2) = 37.6 by the chord
    const text = told(fouling);
    expect(text).toContain('It stops at a turn of 13.6°, stand-off 14.0 mm (leg 2):');
    expect(text).toContain('D1 is 37.6 mm from its hole and D2 37.7 mm, measured square to the crank.');
  });

  it('a foul is told by pair, turn, stand-off and depth of the fixed part', () => {
    // lips 44 to 30 proud at stand-off 14 stand 16 to 30 deep, and pass with 2 mm margin
    expect(told(fouling)).toMatch(/2 +13\.6° to 1\.4° +14 mm +ribs +lips +from face 14 to 32 mm/);
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

  it('the way in is not told twice where it is nearest at home', () => {
    expect(told({ wayIn: wayInOf() })).toContain('On the way in: nowhere nearer than at home.');
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

  it('bolts that do not line up are counted and named', () => {
    const bolt = (n: number, offsetMm: number) => ({
      fixed: `B${n}`,
      moving: `H${n}`,
      offsetMm,
      allowedMm: 0.75,
      linesUp: offsetMm <= 0.75,
    });
    const text = told({}, twoDowels, { bolts: [bolt(1, 0.2), bolt(5, 1.1)] });
    expect(text).toContain('Bolts: 1 of 2 line up');
    expect(text).toMatch(/B5–H5 +off by 1\.10 mm +allowed 0\.75 mm +DOES NOT LINE UP/);
  });

  it('what is only assumed is said aloud', () => {
    expect(told({})).toContain('What was traced of Iron four and Transfer case is taken as complete');
    const traced = { depth: [0, 90] as const, loops: [disc(0, 0, 300)] };
    const known = told(
      {},
      { fixed: castingOf({ name: 'Iron four', traced }), moving: castingOf({ name: 'Transfer case' }) },
    );
    expect(known).toContain('What was traced of Transfer case is taken as complete');
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

  it('inches are told in inches', () => {
    const text = told(fouling, { ...twoDowels, units: 'in' });
    expect(text).toMatch(/home +clear +0\.11 in +0\.07 in +0\.079 in/);
    expect(text).not.toMatch(/\d mm/);
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
