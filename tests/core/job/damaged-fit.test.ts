import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/files/finding.ts';
import { readJob } from '../../../src/job/read-job.ts';
import { findingText } from '../../../src/words/finding-text.ts';
import { fullFit, fullJob, fullPart, loadFrom, plainPart, withChange } from '../../support/model-files.ts';

const findingsOf = (files: Readonly<Record<string, unknown>>): readonly Finding[] => {
  const reading = readJob('job.fit.json', loadFrom(files));
  return reading.ok ? [] : reading.findings;
};

type Damage = readonly [path: readonly (string | number)[], value: unknown, at: string, words: string];

/** One thing wrong with an otherwise sound fit, where it is to be told of, and a piece of what is to be said. */
const damages: readonly Damage[] = [
  [['format'], 'fettle-part/1', 'format', 'expected "fettle-fit/1"'],
  [['title'], '', 'title', 'not blank'],
  [['units'], undefined, 'units', 'one of "mm", "in"'],
  [['fixed'], undefined, 'fixed', 'a text'],
  [['moving'], 7, 'moving', 'a text'],
  [['rotating'], 'clutch.part.json', 'rotating', 'a list'],
  [['axis'], undefined, 'axis', 'the id of one of its holes'],
  [['axis'], 'CRANC', 'axis', 'Did you mean "CRANK"?'],
  [['axis'], 'P1', 'axis', 'a hole in block.part.json'],
  [['axis'], [1, 2, 3], 'axis', 'at most 2'],
  [['axis'], [2e5, 0], 'axis[0]', 'within ±100000 mm'],
  [['dowels'], [['D1']], 'dowels[0]', 'at least 2'],
  [['dowels'], [['D1', 'P1', 'P2']], 'dowels[0]', 'at most 2'],
  [['dowels', 0, 1], 'D1', 'dowels[0][1]', 'a hole in housing.part.json (P1, P2, H1, H2)'],
  [['dowels', 1, 0], 'D3', 'dowels[1][0]', 'Did you mean "D1"?'],
  [['dowels', 1, 0], 'D1', 'dowels[1][0]', '"D1", paired already'],
  [['dowels', 1, 0], 'constructor', 'dowels[1][0]', 'the id of a hole'],
  [['bolts', 1, 1], 'H9', 'bolts[1][1]', 'Did you mean "H1"?'],
  [['bolts', 0, 0], 4, 'bolts[0][0]', 'a text'],
  [['offerUp'], [], 'offerUp', 'at least 1'],
  [['offerUp', 3], { standOff: 2 }, 'offerUp[3]', 'found standOff 2, turn 0, shift [0, 0]'],
  [['offerUp', 3], { turn: 1 }, 'offerUp[3]', 'home at the end'],
  [['offerUp', 3], { shift: [0, 1] }, 'offerUp[3]', 'home at the end'],
  [['offerUp', 0, 'standOff'], -1, 'offerUp[0].standOff', 'at least 0'],
  [['offerUp', 0, 'standoff'], 100, 'offerUp[0].standoff', 'Did you mean "standOff"?'],
  [['offerUp', 0, 'turn'], 40_000, 'offerUp[0].turn', 'at most 36000'],
  [['offerUp', 0, 'turn'], 203, 'offerUp[1]', 'add a position'],
  [['offerUp', 0, 'shift'], [1], 'offerUp[0].shift', 'at least 2'],
  [['inputShaft'], 62, 'inputShaft', 'an object'],
  [['inputShaft'], {}, 'inputShaft.engagesAt', 'a number'],
  [['inputShaft', 'engagesAt'], -62, 'inputShaft.engagesAt', 'at least 0'],
  [['wander'], { turns: 1 }, 'wander.turns', 'Did you mean "turn"?'],
  [['wander'], { turn: -1 }, 'wander.turn', 'at least 0'],
  [['wander'], { turn: 11 }, 'wander.turn', 'at most 10'],
  [['wander'], { tilt: 6 }, 'wander.tilt', 'at most 5'],
  [['wander'], { shift: 150 }, 'wander.shift', 'a hand astray, at most 25 mm'],
  [['wander'], { standOff: -1 }, 'wander.standOff', 'at least 0'],
  [['wander'], 2, 'wander', 'an object'],
  [['clearance'], undefined, 'clearance', 'a number for home and way in'],
  [['clearance'], -2, 'clearance', 'at least 0'],
  [['clearance'], '2', 'clearance', 'a number for home and way in'],
  [['clearance'], { wayIn: 1 }, 'clearance.home', 'a number'],
  [['clearance', 'wayin'], 1, 'clearance.wayin', 'Did you mean "wayIn"?'],
  [['clearance', 'rotating'], -4, 'clearance.rotating', 'at least 0'],
  [['depthMargin'], -1, 'depthMargin', 'at least 0'],
  [['clearance'], 100.001, 'clearance', 'found 100.001; expected a clearance, at most 100 mm'],
  [['clearance'], { home: 2, wayIn: 101 }, 'clearance.wayIn', 'found 101; expected a clearance, at most 100 mm'],
  [['cutter'], { radius: 250.001 }, 'cutter.radius', 'found 250.001; expected the radius of a cutter, at most 250 mm'],
  [['depthMargin'], 1e300, 'depthMargin', 'within ±100000 mm'],
  [['cut'], 'none', 'cut', 'one of "fixed", "moving", "both"'],
  [['share'], 1.5, 'share', 'at most 1'],
  [['cutter', 'radius'], 0, 'cutter.radius', 'more than 0'],
  [['cutter', 'radius'], undefined, 'cutter.radius', 'a number'],
  [['cutter', 'nose'], 'round', 'cutter.nose', 'one of "ball", "flat"'],
  [['cutter', 'runOut'], 'cut past', 'cutter.runOut', '"cut-past"'],
  [['cutter', 'stepover'], 0, 'cutter.stepover', 'more than 0'],
  [['cutter', 'handError'], -1, 'cutter.handError', 'at least 0'],
  [['cutters'], [3, 0], 'cutters[1]', 'found 0; expected more than 0'],
  [['cutters'], [3, -4], 'cutters[1]', 'found -4; expected more than 0'],
  [['cutters'], [3, 10_000], 'cutters[1]', 'found 10000; expected the radius of a cutter, at most 250 mm'],
  [['cutters'], [3, 6, 3], 'cutters[2]', 'found 3, listed already; expected each radius once'],
  [['cutters'], [3, '6'], 'cutters[1]', 'found "6"; expected a number'],
  [['cutters'], Array.from({ length: 13 }, (_, i) => i + 1), 'cutters', 'at most 12 in the list'],
  [['cutters'], [], 'cutters', 'at least 1 in the list'],
  [['minWall'], -1, 'minWall', 'at least 0'],
  [['clerance'], 2, 'clerance', 'Did you mean "clearance"?'],
];

describe('a fit with one thing wrong', () => {
  it('is otherwise sound', () => {
    expect(findingsOf(fullJob)).toEqual([]);
  });

  it.each(damages)('%j = %j is told of once, at %s: %s', (path, value, at, words) => {
    const findings = findingsOf({ ...fullJob, 'job.fit.json': withChange(fullFit, path, value) });
    expect(findings.map((finding) => finding.at)).toEqual([at]);
    expect(findings.map(findingText).join()).toContain(words);
    expect(findings[0]?.file).toBe('job.fit.json');
  });

  it('is strayed from only where there is a way in', () => {
    const { offerUp: _, ...homeOnly } = fullFit;
    const found = (fit: object) => findingsOf({ ...fullJob, 'job.fit.json': fit }).map(findingText);
    expect(found({ ...homeOnly, wander: { turn: 1 } })).toEqual([
      expect.stringContaining('found a wander without a way in; expected offerUp with the way in that is strayed from'),
    ]);
    expect(found({ ...fullFit, wander: { turn: 1, standOff: 2, shift: 1, tilt: 0.5 } })).toEqual([]);
  });

  it('turn and shift may change together by 180°, and the turn alone by any angle', () => {
    const offered = (first: object) => ({ ...fullFit, offerUp: [first, {}] });
    expect(findingsOf({ ...fullJob, 'job.fit.json': offered({ turn: -180, shift: [1, 0] }) })).toEqual([]);
    expect(findingsOf({ ...fullJob, 'job.fit.json': offered({ turn: 450 }) })).toEqual([]);
  });
});

describe('a job with several files wrong', () => {
  it('every file is told of at once: the fit, both parts, and one that is not there', () => {
    const { 'clutch.part.json': _, ...files } = fullJob;
    const findings = findingsOf({
      ...files,
      'job.fit.json': withChange(fullFit, ['units'], 'cm'),
      'block.part.json': withChange(fullPart, ['units'], 'cm'),
      'housing.part.json': `${JSON.stringify(plainPart)},`,
    });
    expect(findings.map(({ file, at }) => `${file} ${at}`.replace(/\d+$/, 'n'))).toEqual([
      'job.fit.json units',
      'block.part.json units',
      'housing.part.json line 1, column n',
      'clutch.part.json ',
    ]);
  });

  it('ids are looked up in a part that has faults of its own', () => {
    const findings = findingsOf({
      ...fullJob,
      'job.fit.json': withChange(fullFit, ['axis'], 'CRANC'),
      'block.part.json': withChange(fullPart, ['sections', 0, 'depth'], [12, 0]),
    });
    expect(findings.map(({ file, at }) => `${file} ${at}`)).toEqual([
      'job.fit.json axis',
      'block.part.json sections[0].depth',
    ]);
  });

  it('ids are not called unknown where their part could not be read', () => {
    const findings = findingsOf({ ...fullJob, 'block.part.json': '{' });
    expect(findings.map(({ file }) => file)).toEqual(['block.part.json']);
  });

  it('a fit that is not there, or is no JSON, is told of alone', () => {
    expect(findingsOf({}).map(({ file, found }) => `${file}: ${found}`)).toEqual(['job.fit.json: no such file']);
    expect(findingsOf({ ...fullJob, 'job.fit.json': 'fit' }).map(({ at }) => at)).toEqual(['line 1, column 1']);
  });

  it('a faulty file that is named twice is told of once', () => {
    const files = { ...fullJob, 'job.fit.json': { ...fullFit, rotating: ['clutch.part.json', 'clutch.part.json'] } };
    expect(findingsOf({ ...files, 'clutch.part.json': '' })).toHaveLength(1);
  });
});
