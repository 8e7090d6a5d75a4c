import { describe, expect, it } from 'vitest';
import { trueBars } from '../../../src/drawing/scene/check-bars.ts';
import type { JobFile } from '../../../src/files/job-file.ts';
import { type JobPatch, laneOf, patched, patchOf } from '../../../viewer/protocol.ts';
import { blockFile, fitFile, housingFile } from '../../support/small-job.ts';

const job = {
  format: 'fettle-job/1',
  fit: fitFile,
  parts: { 'block.part.json': blockFile, 'housing.part.json': housingFile },
} as unknown as JobFile;

/** A patch as it comes in at the other side: nothing in it is the object it was. */
const sent = (patch: JobPatch | null): JobPatch | null => structuredClone(patch);
const after = (had: JobFile | null, before: JobFile | null, now: JobFile): JobFile | null =>
  patched(had, sent(patchOf(before, now)));

const withTitle = (of: JobFile, title: string): JobFile => ({ ...of, fit: { ...of.fit, title } });
const withBlockNamed = (of: JobFile, name: string): JobFile => ({
  ...of,
  parts: { ...of.parts, 'block.part.json': { ...of.parts['block.part.json'], name } as JobFile['parts'][string] },
});

describe('a job sent to a worker', () => {
  it('is sent whole to one that has none, without what changes no answer', () => {
    const whole = { ...job, pictures: [], records: [{ format: 'a record' }], openRuns: [] };
    expect(after(null, null, whole)).toEqual(job);
  });

  it('is not sent again where it asks the same', () => {
    const kept = after(null, null, job);
    expect(patchOf(job, { ...job, pictures: [] })).toBeNull();
    expect(after(kept, job, { ...job, pictures: [] })).toBe(kept);
  });

  it('keeps every part there when the fit changes, and sends none', () => {
    const kept = after(null, null, job);
    const now = withTitle(job, 'another');
    expect(patchOf(job, now)).toEqual({ fit: now.fit });
    const there = after(kept, job, now);
    expect(there).toEqual(now);
    expect(there?.parts).toBe(kept?.parts);
  });

  it('keeps the fit and the other part there when one part changes, and sends that part alone', () => {
    const kept = after(null, null, job);
    const now = withBlockNamed(job, 'another');
    expect(patchOf(job, now)).toEqual({
      parts: { 'block.part.json': JSON.stringify(now.parts['block.part.json']), 'housing.part.json': null },
    });
    const there = after(kept, job, now);
    expect(there).toEqual(now);
    expect(there?.fit).toBe(kept?.fit);
    expect(there?.parts['housing.part.json']).toBe(kept?.parts['housing.part.json']);
  });

  it('comes out as it is after every edit of many, parts brought and taken among them, in their order', () => {
    const { 'block.part.json': block, ...rest } = job.parts;
    const edits: JobFile[] = [
      job,
      withTitle(job, 'one'),
      { ...job, parts: rest },
      { ...job, parts: { ...rest, 'other.part.json': { ...block } as JobFile['parts'][string] } },
      withBlockNamed(withTitle(job, 'two'), 'two'),
      job,
      { ...job, parts: { constructor: { ...block } as JobFile['parts'][string], ...job.parts } },
    ];
    let [kept, before]: (JobFile | null)[] = [null, null];
    for (const now of edits) {
      kept = after(kept ?? null, before ?? null, now);
      before = now;
      expect(kept).toEqual(now);
      expect(Object.keys(kept?.parts ?? {})).toEqual(Object.keys(now.parts));
    }
  });

  it('cannot be changed where it never was', () => {
    expect(() => patched(null, { fit: job.fit })).toThrow('whole');
  });
});

it('a question has a lane with its like: each output, paper and file its own', () => {
  const what = { as: 'pdf', paper: 'a4', bars: trueBars, mirrored: false, date: '', page: '' } as const;
  const lanes = [
    laneOf({ kind: 'work', alternatives: false, from: null }),
    laneOf({ kind: 'sheets', printing: { bars: trueBars, mirrored: false } }),
    laneOf({ kind: 'make', what, from: null, beside: {} }),
    laneOf({ kind: 'make', what: { ...what, as: 'dxf' }, from: null, beside: {} }),
    laneOf({ kind: 'make', what: { ...what, paper: 'a3' }, from: null, beside: {} }),
    laneOf({ kind: 'import', file: { name: 'a.csv', bytes: new Uint8Array(), partName: '' } }),
    laneOf({ kind: 'import', file: { name: 'b.csv', bytes: new Uint8Array(), partName: '' } }),
  ];
  expect(new Set(lanes).size).toBe(lanes.length);
  expect(laneOf({ kind: 'work', alternatives: true, from: null })).toBe(lanes[0]);
});
