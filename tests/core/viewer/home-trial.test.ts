import { describe, expect, it } from 'vitest';
import type { TrialFile } from '../../../src/files/trial-file.ts';
import { homeTexts } from '../../../viewer/heavy/home-texts.ts';
import { type OpenedJob, openedJob } from '../../../viewer/heavy/opened-job.ts';
import { findHome } from '../../../viewer/job/home.ts';
import { goesIn, withGo, withoutLastGo } from '../../../viewer/job/trial-edits.ts';
import { blockFile, fitFile, housingFile } from '../../support/small-job.ts';

const fit = 'job.fit.json';
const trial = (note: string): TrialFile => ({
  $schema: './mine.json',
  format: 'fettle-trial/1',
  fit,
  job: 'a digest',
  goes: [{ go: 1, note }],
});

function opened(trials: Record<string, unknown>): {
  value: OpenedJob;
  texts: (job: OpenedJob['job']) => ReturnType<typeof homeTexts>;
} {
  const all = { [fit]: fitFile, 'block.part.json': blockFile, 'housing.part.json': housingFile, ...trials };
  const files = Object.entries(all).map(([name, file]) => ({ name, text: JSON.stringify(file) }));
  const read = openedJob(files);
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return { value: read.value, texts: (job) => homeTexts(job, fit, Object.keys(all), read.value.trial ?? null) };
}

const notes = ({ value: { job } }: ReturnType<typeof opened>): unknown[] => goesIn(job).map(({ note }) => note);

describe('a trial file beside the fit', () => {
  it('comes into the records of the job, and goes back as it came', () => {
    const at = opened({ 'a.trial.json': trial('a') });
    expect(notes(at)).toEqual(['a']);
    const { texts, moreInJob } = at.texts(at.value.job);
    expect(moreInJob).toBe(false);
    expect(JSON.parse(texts.get('a.trial.json') ?? '')).toEqual(trial('a'));
  });

  it('that is named as the fit goes before the others, which have nothing written into them', () => {
    const at = opened({ 'a.trial.json': trial('a'), 'job.trial.json': trial('ours'), 'z.trial.json': trial('z') });
    expect(notes(at)).toEqual(['ours']);
    const names = [...at.texts(at.value.job).texts.keys()];
    expect(names.filter((name) => name.endsWith('.trial.json'))).toEqual(['job.trial.json']);
  });

  it('that cannot be read keeps no job from opening, says why, and is not written over', () => {
    const at = opened({ 'job.trial.json': { format: 'fettle-trial/1', fit }, 'z.trial.json': trial('z') });
    expect(notes(at)).toEqual([]);
    expect(at.value.trial).toMatchObject({ name: 'job.trial.json', as: null, fault: { at: 'goes' } });
    const begun = at.texts(withGo(at.value.job, '2026-12-01'));
    expect([...begun.texts.keys()].filter((name) => name.endsWith('.trial.json'))).toEqual([]);
    expect(begun.moreInJob).toBe(true);
  });

  it('names its fit and its job still where all of it was taken out, and begun anew', () => {
    const at = opened({ 'a.trial.json': trial('a') });
    const none = withoutLastGo(at.value.job);
    const written = (job: OpenedJob['job']): unknown => JSON.parse(at.texts(job).texts.get('a.trial.json') ?? '');
    expect(written(none)).toEqual({ ...trial('a'), goes: [] });
    expect(written(withGo(none, '2026-12-01'))).toEqual({ ...trial('a'), goes: [{ go: 1, date: '2026-12-01' }] });
  });

  it('that was not opened may change on the disk', async () => {
    let version = 'one';
    const files = [
      { name: fit, text: JSON.stringify(fitFile), version: 'same' },
      ...['a', 'job'].map((name) => ({
        name: `${name}.trial.json`,
        text: JSON.stringify(trial(name)),
        version: 'one',
      })),
    ];
    const ask = async (address: string): Promise<Response> =>
      Response.json(
        address === 'versions'
          ? { [fit]: 'same', 'job.trial.json': 'one', 'a.trial.json': version }
          : { open: fit, files },
      );
    const home = await findHome(
      { opened: async (all) => openedJob(all), homeTexts: async (...asked) => homeTexts(...asked) },
      ask,
      'http:',
    );
    version = 'two';
    expect(await home?.look()).toBe('same');
  });
});
