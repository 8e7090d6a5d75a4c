import { describe, expect, it } from 'vitest';
import type { CheckResult } from '../../../src/clearance/check-result.ts';
import type { Polygon } from '../../../src/geometry/polygons/polygons.ts';
import type { PartCut } from '../../../src/plan/part-cut.ts';
import type { PlanResult } from '../../../src/plan/plan-result.ts';
import { grindText } from '../../../src/words/grind-text.ts';
import { checkOf, foulOnTheWay, homeOf, wayInOf } from '../../support/answers.ts';
import { castingOf } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';
import { bandOf, bandOfLines, planOf } from '../../support/plans.ts';

const joint = jointOf({
  fixed: castingOf({
    name: 'Iron four',
    material: { name: 'grey-iron', densityGPerCm3: 7.2 },
    sections: [
      { id: 'ribs', depth: [12, 90], mayCut: true },
      { id: 'flange', depth: [0, 12] },
    ],
    doNotCut: [{ id: 'ear', depth: [0, 12] }],
  }),
  moving: castingOf({ name: 'Transfer case' }),
});

const told = (cut: Partial<PartCut> = {}, said: Partial<PlanResult> = {}): string =>
  grindText(joint, planOf(joint, cut, said), []);

const square = (x: number, y: number, side: number): Polygon => [
  { x, y },
  { x: x + side, y },
  { x: x + side, y: y + side },
  { x, y: y + side },
];

const crooked = { holds: false };

describe('a cut plan in words', () => {
  it('grams are left out where the material is not known', () => {
    expect(told({ massG: null })).toMatch(/^THE PLAN HOLDS: take 2\.9 cm³ of grey iron off/);
  });

  it('the pieces of a band are told one by one, with their places, the largest first', () => {
    const planned = [square(98, -2, 4), square(-5, 145, 10)];
    const bands = [bandOfLines({ planned, first: [square(-4, 146, 8)], last: [square(-6, 144, 12)] }, joint)];
    const text = told({ sections: [{ id: 'ribs', nothingLeft: false, bands }] });
    expect(text).toMatch(/ribs .* 64 mm² +144 mm²\n/);
    expect(text).toMatch(
      /- 100 mm² about 150\.0 mm from the axis at 90\.0° .*\n {2}- 16 mm² about 100\.0 mm from the axis at 0\.0°/,
    );
  });

  it('the same pieces in a second band are told once', () => {
    const band = bandOfLines({ planned: [square(98, -2, 4)], first: [], last: [] }, joint);
    const bands = [band, { ...band, depth: { fromMm: 32, toMm: 40 } }];
    const text = told({ sections: [{ id: 'ribs', nothingLeft: false, bands }] });
    expect(text.match(/16 mm² about/g)).toHaveLength(1);
  });

  it('a section with nothing left says so', () => {
    expect(
      told({ sections: [{ id: 'ribs', nothingLeft: false, bands: [bandOf({ takeOff: null })] }] }, crooked),
    ).toContain('all of it');
  });

  it('a plan that does not hold forbids cutting', () => {
    const text = told({}, crooked);
    expect(text).toMatch(/^THE PLAN DOES NOT HOLD: /);
    expect(text).toContain('Do not start cutting:');
    expect(text).not.toContain('Grind to the first line');
  });

  it('what stands against a plan is named in its first line', () => {
    const severed = [{ section: 'ribs', areaMm2: 5, at: { x: 0, y: 100 } }];
    expect(told({ severed }, crooked)).toMatch(/^THE PLAN DOES NOT HOLD: a piece of "ribs" would come off\./);
    const short = { home: homeOf({ clearanceMm: 1.8 }), wayIn: null, wander: null };
    expect(told({}, { ...crooked, afterCut: short }).replace(/\s+/g, ' ')).toMatch(
      /^THE PLAN DOES NOT HOLD: what is left keeps only 1\.8 mm of the 2 mm asked at home\./,
    );
  });

  it('what stands against a plan in several bands of a section is named once', () => {
    const parted = { section: 'ribs', areaMm2: 10, at: { x: 0, y: 0 } };
    const [line] = told({ severed: [parted, parted] }, crooked).split('. It would');
    expect(line?.match(/would come\s+off/g)).toHaveLength(1);
  });

  it('nothing to cut and nothing that may be cut are told apart', () => {
    expect(told({ sections: [], volumeMm3: 0, massG: 0 })).toMatch(/^NOTHING TO TAKE OFF: /);
    expect(told({ sections: [], volumeMm3: 0, massG: 0 }, crooked)).toMatch(/^NO PLAN: /);
  });

  it.each([
    ['do-not-cut', 'ear', '"ear" is not to be cut'],
    ['rotating', null, 'it meets a rotating part'],
  ] as const)('a foul left because it is %s says why and where', (why, doNotCut, words) => {
    const text = told(
      {},
      { ...crooked, uncured: [{ section: 'flange', why, doNotCut, areaMm2: 12.4, at: { x: 0, y: 180 } }] },
    );
    expect(text.replaceAll(/\s+/g, ' ')).toContain(`"flange", 12 mm²: ${words}`);
    expect(text.replaceAll(/\s+/g, ' ')).toContain("180.0 mm from the axis at 90.0° (12 o'clock)");
  });

  it('every other way in is named before the drawing where only the way in fails', () => {
    const everyWay = 'Whether any way in needs no cutting: fettle ways job.fit.json';
    const said = (check: Partial<CheckResult>): string => grindText(joint, planOf(joint), [], checkOf(check));
    const text = said({ verdict: 'fouls', wayIn: foulOnTheWay });
    expect(text).toContain(everyWay);
    expect(text.indexOf(everyWay)).toBeLessThan(text.indexOf('fettle draw'));
    expect(said({ verdict: 'fouls', home: homeOf({ state: 'fouls' }), wayIn: foulOnTheWay })).not.toContain(everyWay);
    expect(said({ wayIn: wayInOf() })).not.toContain(everyWay);
  });

  it('carries every caution of cutting', () => {
    const text = told().replaceAll(/\s+/g, ' ');
    for (const word of ['strength', 'Crack-test', 'eyes and lungs', 'aluminium dust', 'hoist', 'road', 'licensed']) {
      expect(text).toContain(word);
    }
  });

  it('is never wider than 100 columns', () => {
    for (const line of told().split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });
});
