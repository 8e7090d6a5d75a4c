import { describe, expect, it } from 'vitest';
import { fileText } from '../../../src/files/file-text.ts';
import type { JobFile } from '../../../src/files/job-file.ts';
import { readJobFile } from '../../../src/job/read-job-file.ts';
import { readTrialFile } from '../../../src/trial/read-trial.ts';
import * as edits from '../../../viewer/job/trial-edits.ts';
import { smallJob } from '../../support/small-job.ts';

const place = { section: 'rib', at: [160, 0], depth: 30 } satisfies edits.PlaceToRead;
const begun = edits.withGo(smallJob, '2026-11-30');
const clay = (job: JobFile, thickness: number, where: edits.PlaceToRead = place): JobFile =>
  edits.withReading(job, 0, where, { kind: 'clay', thickness });

/** The trial file that the page would save, read as any other. */
function readBack(job: JobFile) {
  const trial = edits.trialIn(job);
  const read = trial && readTrialFile('a.trial.json', fileText(trial));
  if (!read?.ok) throw new Error(JSON.stringify(read?.findings));
  return read.value;
}

describe('trial fits of a job', () => {
  it('begin as one record of a trial file without a schema, by the name of the job file, and the job still reads', () => {
    const twice = edits.withGo(begun, '2026-12-01');
    expect(twice.records).toEqual([
      {
        format: 'fettle-trial/1',
        fit: expect.stringMatching(/\.job\.json$/),
        goes: [
          { go: 1, date: '2026-11-30' },
          { go: 2, date: '2026-12-01' },
        ],
      },
    ]);
    expect(readJobFile('a.job.json', JSON.stringify(twice)).ok).toBe(true);
    expect(readBack(twice).goes).toHaveLength(2);
  });

  it('go with their last go, and leave other records as they are', () => {
    const other = { format: 'someone-elses/1', said: 'rust' };
    const both = edits.withGo({ ...smallJob, records: [other] }, '2026-11-30');
    expect(both.records).toHaveLength(2);
    expect(edits.withoutLastGo(both).records).toEqual([other]);
    expect(edits.withoutLastGo(begun)).toEqual(smallJob);
  });

  it('are replaced by those of a trial file, whose schema stays out', () => {
    const opened = {
      $schema: 'urn:fettle:trial:1',
      format: 'fettle-trial/1',
      fit: 'a.fit.json',
      goes: [{ go: 1 }],
    } as const;
    const replaced = edits.withTrial(clay(begun, 2), { ...opened, goes: [...opened.goes] });
    expect(replaced.records).toEqual([{ format: 'fettle-trial/1', fit: 'a.fit.json', goes: [{ go: 1 }] }]);
  });

  it('stay the very same while something else of the job changes', () => {
    const changed = { ...begun, fit: { ...begun.fit, title: 'another' } };
    expect(edits.trialIn(changed)).toBe(edits.trialIn(begun));
  });

  it('say what had come off', () => {
    expect(edits.goesIn(edits.withCut(begun, 0, 'first'))[0]?.cut).toBe('first');
  });
});

describe('a reading', () => {
  it('takes the least number that is free in any go', () => {
    const three = clay(clay(clay(begun, 1), 2), 3);
    const second = edits.withGo(edits.withoutReading(three, 0, 1), '2026-12-01');
    const again = edits.withReading(second, 1, place, { kind: 'mark', touched: true });
    expect(edits.goesIn(again).map(({ readings }) => readings?.map(({ id }) => id))).toEqual([['1', '3'], ['2']]);
    expect(readBack(again).goes[1]?.readings).toEqual([{ id: '2', ...place, kind: 'mark', touched: true }]);
  });

  it('is told anew, as clay or as a mark, where and as exactly as it was read', () => {
    const exact = edits.withTrial(begun, {
      ...(edits.trialIn(begun) as NonNullable<ReturnType<typeof edits.trialIn>>),
      goes: [{ go: 1, readings: [{ id: 'c1', ...place, kind: 'clay', thickness: 2, error: 0.3 }] }],
    });
    const marked = edits.withSaid(exact, 0, 0, { kind: 'mark', touched: false });
    expect(edits.goesIn(marked)[0]?.readings).toEqual([
      { id: 'c1', ...place, error: 0.3, kind: 'mark', touched: false },
    ]);
    const deeper = edits.withDepth(edits.withSaid(marked, 0, 0, { kind: 'clay', thickness: 4 }), 0, 0, 25);
    expect(edits.goesIn(deeper)[0]?.readings).toEqual([
      { id: 'c1', ...place, depth: 25, error: 0.3, kind: 'clay', thickness: 4 },
    ]);
  });

  it('is taken out, and the list with the last one', () => {
    expect(edits.withoutReading(clay(begun, 2), 0, 0)).toEqual(begun);
  });
});

describe('where a go stopped', () => {
  const stand = { turn: 13.5, standOff: 14 };
  const stopped = (job: JobFile, to: edits.Stopped | undefined, was: edits.Stand, is: edits.Stand) =>
    edits.withStopped(job, 0, to, { was, is, depths: {} });
  const positions = (job: JobFile) => edits.goesIn(job)[0]?.readings?.map(({ position }) => position);

  it('is a turn and stand-off, a dowel from its hole, home, or not written down', () => {
    for (const to of [{ ...stand, error: 0.3 }, { dowel: 'D1', fromHole: 35.1 }, 'home'] as const) {
      const said = stopped(begun, to, 'home', 'home');
      expect(readBack(said).goes[0]?.stopped).toEqual(to);
      expect(stopped(said, undefined, 'home', 'home')).toEqual(begun);
    }
  });

  it('takes along what was read where it stopped, and leaves what was read elsewhere', () => {
    const elsewhere = clay(clay(begun, 2), 3, { ...place, position: { standOff: 2 } });
    const moved = stopped(elsewhere, stand, 'home', stand);
    expect(positions(moved)).toEqual([stand, { standOff: 2 }]);
    expect(positions(stopped(moved, 'home', stand, 'home'))).toEqual([undefined, { standOff: 2 }]);
    const deeper = edits.withStopped(elsewhere, 0, stand, { was: 'home', is: stand, depths: { 1: 21 } });
    expect(edits.goesIn(deeper)[0]?.readings?.map(({ depth }) => depth)).toEqual([21, 30]);
  });
});

describe('a feeler gauge between the faces', () => {
  it('is put down by its place, put down anew there, and taken out', () => {
    const one = edits.withFace(begun, 0, { at: [0, 170], gap: 0.2 });
    const again = edits.withFace(edits.withFace(one, 0, { at: [5, 5], gap: 0 }), 0, { at: [0, 170], gap: 0.3 });
    expect(readBack(again).goes[0]?.faces).toEqual([
      { at: [5, 5], gap: 0 },
      { at: [0, 170], gap: 0.3 },
    ]);
    expect(edits.withoutFace(one, 0, 0)).toEqual(begun);
  });
});

describe('what is told of a go beside its readings', () => {
  const cutOf = (job: JobFile) => readBack(job).goes[0]?.cut;

  it('is what came off place by place, in the order of the table, each measured once', () => {
    const took = [
      { place: 7, takeOff: 5.2 },
      { place: 2, takeOff: 1 },
      { place: 7, takeOff: 5.5 },
    ].reduce((job, one) => edits.withTook(job, 0, one), edits.withCut(begun, 0, 'first'));
    expect(cutOf(took)).toEqual([
      { place: 2, takeOff: 1 },
      { place: 7, takeOff: 5.5 },
    ]);
    expect(cutOf(edits.withoutTook(edits.withoutTook(took, 0, 2), 0, 7))).toBeUndefined();
  });

  it('is a note, and the limit of a reading, each taken out by leaving it empty', () => {
    const told = edits.withError(edits.withNote(clay(begun, 3), 0, 'Rained.'), 0, 0, 0.3);
    expect(readBack(told).goes[0]).toMatchObject({ note: 'Rained.', readings: [{ error: 0.3 }] });
    const untold = edits.withError(edits.withNote(told, 0, ''), 0, 0, undefined);
    expect(readBack(untold)).toEqual(readBack(clay(begun, 3)));
  });
});
