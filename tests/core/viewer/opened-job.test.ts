import { describe, expect, it } from 'vitest';
import { type OpenedFile, openedJob } from '../../../viewer/heavy/opened-job.ts';
import { blockFile, fitFile, housingFile } from '../../support/small-job.ts';

const file = (name: string, value: unknown): OpenedFile => ({ name, text: JSON.stringify(value) });
const fit = file('job.fit.json', fitFile);
const block = file('block.part.json', blockFile);
const housing = file('housing.part.json', housingFile);
const parts = { 'block.part.json': blockFile, 'housing.part.json': housingFile };

describe('files that are opened become a job', () => {
  it('a fit with its parts, in whatever order they come', () => {
    expect(openedJob([housing, fit, block])).toEqual({
      ok: true,
      value: { job: { format: 'fettle-job/1', fit: fitFile, parts }, from: 'job.fit.json', missing: [] },
    });
  });

  it('a fit without one of its parts, which is wanted by name, and goes in when it comes', () => {
    const first = openedJob([fit, block]);
    expect(first).toMatchObject({ ok: true, value: { missing: ['housing.part.json'] } });
    const then = openedJob([housing], first.ok ? first.value.job : null);
    expect(then).toMatchObject({ ok: true, value: { job: { fit: fitFile, parts }, missing: [] } });
  });

  it('finds a part that the fit names by a path by its last name, which is all a browser tells', () => {
    const far = { ...fitFile, fixed: './block.part.json', moving: 'parts/housing.part.json' };
    const opened = openedJob([file('job.fit.json', far), block, housing]);
    expect(opened.ok && Object.keys(opened.value.job.parts)).toEqual(['block.part.json', 'parts/housing.part.json']);
    expect(opened).toMatchObject({ ok: true, value: { job: { fit: { fixed: 'block.part.json' } }, missing: [] } });
  });

  it('a job in one file, with a part that was opened beside it', () => {
    const job = { format: 'fettle-job/1', fit: fitFile, parts: { 'block.part.json': blockFile } };
    expect(openedJob([file('a.job.json', job), housing])).toMatchObject({
      ok: true,
      value: { job: { ...job, parts }, from: 'a.job.json', missing: [] },
    });
  });

  it('parts alone, the first of them fixed, with clearances in their own unit', () => {
    const inches = file('block.part.json', { ...blockFile, units: 'in' });
    expect(openedJob([inches, housing])).toMatchObject({
      ok: true,
      value: {
        job: { fit: { units: 'in', fixed: 'block.part.json', clearance: { home: 0.08, wayIn: 0.04 } } },
        from: null,
        missing: [],
      },
    });
  });

  it('a part that the present job does not name starts a job of its own', () => {
    const present = openedJob([fit, block, housing]);
    const other = openedJob([file('other.part.json', blockFile)], present.ok ? present.value.job : null);
    expect(other).toMatchObject({ ok: true, value: { job: { fit: { fixed: 'other.part.json' } } } });
  });

  it.each([
    ['two fits', [fit, { ...fit, name: 'b.fit.json' }], [['b.fit.json', 'a second job or fit']]],
    ['nothing', [], [['', 'no file of Fettle']]],
    [
      'faults in two files',
      [file('job.fit.json', { ...fitFile, axis: 7 }), { name: 'block.part.json', text: '{' }, housing],
      [
        ['job.fit.json', '7'],
        ['block.part.json', 'the end of the file'],
      ],
    ],
  ])('says all that is wrong with %s', (_, files, expected) => {
    const opened = openedJob(files);
    expect(!opened.ok && opened.findings.map(({ file, found }) => [file, found])).toEqual(expected);
  });
});
