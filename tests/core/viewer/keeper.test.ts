import { expect, it } from 'vitest';
import type { JobFile } from '../../../src/files/job-file.ts';
import { type Keeping, keeperOf } from '../../../viewer/job/keeper.ts';
import { KeptElsewhere, type KeptJob, type StoredVersion } from '../../../viewer/job/storage.ts';
import { fitFile } from '../../support/small-job.ts';

const jobCalled = (title: string): JobFile => ({
  format: 'fettle-job/1',
  fit: { ...(fitFile as JobFile['fit']), title },
  parts: {},
});

/** A disk on which each write waits until it is let through or fails. */
function slowDisk() {
  const asked: { title: string; known: StoredVersion; end: (error?: unknown) => void }[] = [];
  const write = ({ title }: KeptJob, known: StoredVersion): Promise<StoredVersion> =>
    new Promise((done, fail) => {
      const now: StoredVersion = { write: title, pictures: new Map() };
      asked.push({ title, known, end: (error) => (error === undefined ? done(now) : fail(error)) });
    });
  const told: Keeping[] = [];
  const titleOf = ({ fit }: JobFile): string => fit.title ?? '';
  const keeper = keeperOf({ id: 'one', titleOf, openedFrom: null, onKeeping: (now) => told.push(now), write });
  const keep = (title: string): void => keeper.keep(jobCalled(title));
  return { asked, told, keeper, keep, states: () => told.map(({ state }) => state) };
}
const turn = (): Promise<void> => new Promise((done) => setTimeout(done));

it('writes never overlap: one is under way, the newest waits, and those between are not written', async () => {
  const { asked, keeper, keep, states } = slowDisk();
  for (const title of ['a', 'b', 'c']) keep(title);
  expect(asked.map(({ title }) => title)).toEqual(['a']);
  asked[0]?.end();
  await turn();
  expect(asked.map(({ title }) => title)).toEqual(['a', 'c']);
  expect(states()).toEqual(['keeping']);
  asked[1]?.end();
  expect(await keeper.settled()).toMatchObject({ state: 'kept' });
  expect(states()).toEqual(['keeping', 'kept']);
  expect(asked[1]?.known.write).toBe('a');
});

it('what could not be written is said, and goes with the next change or when tried again', async () => {
  const { asked, keeper, keep, told } = slowDisk();
  keep('a');
  asked[0]?.end(new DOMException('full', 'QuotaExceededError'));
  expect(await keeper.settled()).toMatchObject({ state: 'cannot-keep', why: 'no-room' });
  keeper.retry();
  expect(asked[1]?.title).toBe('a');
  asked[1]?.end(new Error('odd'));
  expect(await keeper.settled()).toMatchObject({ state: 'cannot-keep', why: 'broken', said: 'Error: odd' });
  keep('b');
  asked[2]?.end();
  expect(await keeper.settled()).toMatchObject({ state: 'kept' });
  expect(asked.map(({ title, known }) => [title, known.write])).toEqual([
    ['a', null],
    ['a', null],
    ['b', null],
  ]);
  expect(told.map(({ state }) => state)).toEqual([
    'keeping',
    'cannot-keep',
    'keeping',
    'cannot-keep',
    'keeping',
    'kept',
  ]);
});

it('a failed write is not told while a newer one goes on', async () => {
  const { asked, keeper, keep, states } = slowDisk();
  keep('a');
  keep('b');
  asked[0]?.end(new Error('odd'));
  await turn();
  asked[1]?.end();
  expect(await keeper.settled()).toMatchObject({ state: 'kept' });
  expect(states()).toEqual(['keeping', 'kept']);
});

it.each([
  ['kept-elsewhere', new KeptElsewhere()],
  ['not-allowed', new DOMException('', 'SecurityError')],
  ['not-allowed', new ReferenceError('indexedDB is not defined')],
  ['blocked', new DOMException('', 'TimeoutError')],
])('says %s for what the browser calls %s', async (why, error) => {
  const { asked, keeper, keep } = slowDisk();
  keep('a');
  asked[0]?.end(error);
  expect(await keeper.settled()).toMatchObject({ state: 'cannot-keep', why });
});
