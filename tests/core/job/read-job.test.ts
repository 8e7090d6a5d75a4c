import { describe, expect, it } from 'vitest';
import { pathBeside } from '../../../src/files/file-paths.ts';
import type { Job } from '../../../src/job/job.ts';
import { readJob } from '../../../src/job/read-job.ts';
import { fullFit, fullJob, fullPart, loadFrom, plainPart } from '../../support/model-files.ts';

function read(files: Readonly<Record<string, unknown>>, fit = 'job.fit.json'): Job {
  const reading = readJob(fit, loadFrom(files));
  if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
  return reading.value;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

describe('a fit', () => {
  it('keeps everything that is written, in mm and radians', () => {
    const { fit, fixed, moving, rotating } = read(fullJob);
    expect(fit).toMatchObject({
      file: 'job.fit.json',
      title: 'Housing to block',
      units: 'mm',
      axis: { x: 10, y: 20 },
      engagesAtMm: 62,
      clearance: { homeMm: 2, wayInMm: 1, rotatingMm: 5 },
      depthMarginMm: 3,
      cut: 'both',
      share: 0.25,
      cutter: { radiusMm: 6, nose: 'flat', handErrorMm: 0.8, runOut: 'leave', stepoverMm: 2 },
      cuttersMm: [4, 6, 8],
      straight: true,
      minWallMm: 4,
    });
    expect([fixed.name, moving.name, ...rotating.map(({ name }) => name)]).toEqual(['Block', 'Housing', 'Clutch']);
  });

  it('pairs the very holes that are named', () => {
    const { dowels, bolts } = read(fullJob).fit;
    expect(dowels.map(({ fixed, moving }) => [fixed.id, moving.id])).toEqual(fullFit.dowels);
    expect(bolts.map(({ fixed, moving }) => [fixed.at.x, moving.at.x])).toEqual([
      [60, 50],
      [-60, -70],
    ]);
  });

  it('has one leg between each two positions, the last ending home', () => {
    const { legs } = read(fullJob).fit;
    expect(legs.map(({ motion }) => motion.kind)).toEqual(['slide', 'turn', 'slide']);
    expect(legs[0]).toMatchObject({
      from: { standOffMm: 100, turnRad: radians(22), shift: { x: 1, y: 2 } },
      motion: { kind: 'slide', by: { x: -1, y: -2 } },
    });
    expect(legs[1]?.motion).toEqual({ kind: 'turn', pole: { x: 0, y: 0 }, angleRad: -radians(22) });
    expect(legs[2]?.to).toEqual({ standOffMm: 0, turnRad: 0, shift: { x: 0, y: 0 } });
  });

  it('takes a turn beyond a full circle literally', () => {
    const { legs } = read({ ...fullJob, 'job.fit.json': { ...fullFit, offerUp: [{ turn: 450 }, {}] } }).fit;
    expect(legs[0]?.motion).toEqual({ kind: 'turn', pole: { x: 0, y: 0 }, angleRad: -radians(450) });
  });

  it('has the defaults where nothing optional is written', () => {
    const { format, units, fixed, moving, axis } = fullFit;
    const bare = { format, units, fixed, moving, axis, clearance: 1.5 };
    expect(read({ ...fullJob, 'job.fit.json': bare }).fit).toEqual({
      file: 'job.fit.json',
      title: 'Housing to Block',
      units: 'mm',
      axis: { x: 10, y: 20 },
      dowels: [],
      bolts: [],
      legs: [],
      engagesAtMm: null,
      wander: null,
      clearance: { homeMm: 1.5, wayInMm: 1.5, rotatingMm: 4 },
      depthMarginMm: 1.5,
      cut: 'fixed',
      share: 0.5,
      axisHole: 'CRANK',
      cutter: null,
      cuttersMm: null,
      straight: false,
      minWallMm: null,
      registrationMm: null,
      nothingShares: false,
    });
  });

  it('fills in a cutter that only states its radius', () => {
    const fit = read({ ...fullJob, 'job.fit.json': { ...fullFit, cutter: { radius: 6 } } }).fit;
    expect(fit.cutter).toEqual({ radiusMm: 6, nose: 'ball', handErrorMm: 0.5, runOut: 'cut-past', stepoverMm: null });
  });

  it('takes the way-in clearance and the depth margin from the home clearance', () => {
    const { depthMargin, ...rest } = fullFit;
    const fit = read({ ...fullJob, 'job.fit.json': { ...rest, clearance: { home: 2.5 } } }).fit;
    expect(fit).toMatchObject({ clearance: { homeMm: 2.5, wayInMm: 2.5, rotatingMm: 4 }, depthMarginMm: 2.5 });
  });

  it('in inches has its own lengths times 25.4, its defaults in mm, and the parts in their own units', () => {
    const inches = { ...fullFit, units: 'in', clearance: 0.1, cutter: { radius: 0.25 } };
    const { fit, fixed } = read({ ...fullJob, 'job.fit.json': inches });
    expect(fit.clearance).toEqual({ homeMm: 2.54, wayInMm: 2.54, rotatingMm: 4 });
    expect(fit.cutter).toMatchObject({ radiusMm: 6.35, handErrorMm: 0.5 });
    expect(fit).toMatchObject({ engagesAtMm: 62 * 25.4, depthMarginMm: 3 * 25.4, minWallMm: 4 * 25.4 });
    expect(fit.legs[0]?.from).toMatchObject({ standOffMm: 2540, turnRad: radians(22) });
    expect(fixed.holes[0]?.at).toEqual({ x: 10, y: 20 });
  });
});

describe('the axis', () => {
  const axisOf = (axis: unknown, block: object) =>
    read({ ...fullJob, 'job.fit.json': { ...fullFit, axis }, 'block.part.json': { ...fullPart, ...block } }).fit.axis;

  it('is a point of the fixed drawing, in its units', () => {
    expect(axisOf([3, 4], {})).toEqual({ x: 3, y: 4 });
    expect(axisOf([3, 4], { units: 'in' })).toEqual({ x: 3 * 25.4, y: 4 * 25.4 });
  });

  it('is mirrored with the fixed part, by point and by hole', () => {
    expect(axisOf([3, 4], { viewedFrom: 'back' })).toEqual({ x: -3, y: 4 });
    expect(axisOf('CRANK', { viewedFrom: 'back' })).toEqual({ x: -10, y: 20 });
  });
});

describe('where part files are looked for', () => {
  it('beside the fit', () => {
    const files = Object.fromEntries(Object.entries(fullJob).map(([path, file]) => [`jobs/${path}`, file]));
    expect(read(files, 'jobs/job.fit.json').fixed.file).toBe('jobs/block.part.json');
  });

  it.each([
    ['job.fit.json', 'a.part.json', 'a.part.json'],
    ['jobs/job.fit.json', './a.part.json', 'jobs/a.part.json'],
    ['jobs/job.fit.json', '../parts/a.part.json', 'jobs/../parts/a.part.json'],
    ['jobs/job.fit.json', '/parts/a.part.json', '/parts/a.part.json'],
    ['C:\\jobs\\job.fit.json', 'a.part.json', 'C:\\jobs\\a.part.json'],
    ['C:\\jobs\\job.fit.json', 'D:\\a.part.json', 'D:\\a.part.json'],
  ])('%s names %s: %s', (fit, named, path) => {
    expect(pathBeside(fit, named)).toBe(path);
  });
});

describe('the same part in two roles', () => {
  it('is mirrored for the one and not for the other', () => {
    const alone = { ...fullFit, fixed: 'housing.part.json', rotating: [], axis: [0, 0], dowels: [], bolts: [] };
    const { fixed, moving } = read({ 'job.fit.json': alone, 'housing.part.json': plainPart });
    expect([fixed.mirrored, moving.mirrored]).toEqual([true, false]);
  });
});
