import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { schemaIds } from '../../../src/files/file-text.ts';
import type { JobFile } from '../../../src/files/job-file.ts';
import { homeTexts } from '../../../viewer/heavy/home-texts.ts';
import { openedJob } from '../../../viewer/heavy/opened-job.ts';
import { findHome, type Home, type JobFiles } from '../../../viewer/job/home.ts';
import { blockFile, fitFile, housingFile } from '../../support/small-job.ts';

const fitName = 'job.fit.json';
const reader: JobFiles = {
  opened: async (files, present) => openedJob(files, present),
  homeTexts: async (job, open, served) => homeTexts(job, open, served),
};

const threeFiles = { [fitName]: fitFile, 'block.part.json': blockFile, 'housing.part.json': housingFile };

/** A server with files on a disk of its own, whose next answer to a PUT can be made to fail. */
function server(files: Record<string, unknown>, open: string | null = Object.keys(files)[0] ?? null) {
  const texts = new Map(Object.entries(files).map(([name, value]) => [name, JSON.stringify(value)]));
  const versionOf = (name: string): string | null => {
    const text = texts.get(name);
    return text === undefined ? null : createHash('sha256').update(text).digest('hex');
  };
  const puts: string[] = [];
  const trouble: { next: 'unreachable' | 'reply-lost' | [number, object] | null } = { next: null };
  const put = (name: string, ifMatch: string | undefined, text: string): Response => {
    const failing = trouble.next;
    trouble.next = null;
    if (failing === 'unreachable') throw new TypeError('failed to fetch');
    if (Array.isArray(failing)) return Response.json(failing[1], { status: failing[0] });
    if (ifMatch !== `"${versionOf(name)}"`) return Response.json({ code: 'changed' }, { status: 412 });
    texts.set(name, text);
    puts.push(name);
    if (failing === 'reply-lost') throw new TypeError('failed to fetch');
    return Response.json({ version: versionOf(name) });
  };
  const ask = async (address: string, options: RequestInit = {}): Promise<Response> => {
    if (address.startsWith('file/')) {
      const headers = new Headers(options.headers);
      return put(decodeURIComponent(address.slice(5)), headers.get('If-Match') ?? undefined, String(options.body));
    }
    const names = [...texts.keys()];
    if (address === 'versions') return Response.json(Object.fromEntries(names.map((name) => [name, versionOf(name)])));
    return Response.json({
      open,
      files: names.map((name) => ({ name, text: texts.get(name), version: versionOf(name) })),
    });
  };
  return { ask, texts, puts, trouble, read: (name: string) => JSON.parse(texts.get(name) ?? 'null') };
}

async function homeOn(at: ReturnType<typeof server>): Promise<{ home: Home; job: JobFile }> {
  const home = await findHome(reader, at.ask, 'http:');
  if (!home?.opened.ok) throw new Error('not opened');
  return { home, job: home.opened.value.job };
}
const titled = (job: JobFile, title: string): JobFile => ({ ...job, fit: { ...job.fit, title } });
const emptied = (name: string, job: JobFile): JobFile => {
  const part = job.parts[name];
  return part === undefined ? job : { ...job, parts: { ...job.parts, [name]: { ...part, sections: [] } } };
};

describe('files behind a page that is served', () => {
  it('are none where the page was opened from a disk, nothing is open, or the server is another', async () => {
    expect(await findHome(reader, server(threeFiles).ask, 'file:')).toBeNull();
    expect(await findHome(reader, server(threeFiles, null).ask, 'http:')).toBeNull();
    expect(await findHome(reader, async () => new Response('<html>'), 'https:')).toBeNull();
    expect(await findHome(reader, () => Promise.reject(new TypeError()), 'http:')).toBeNull();
  });

  it('open as the job they are, and nothing is written where nothing was changed', async () => {
    const at = server(threeFiles);
    const { home, job } = await homeOn(at);
    expect(home.open).toBe(fitName);
    const parts = { 'block.part.json': blockFile, 'housing.part.json': housingFile };
    expect(job).toEqual({ format: 'fettle-job/1', fit: fitFile, parts });
    expect(await home.save(job)).toEqual({ saved: [], notSaved: [], onlyInJob: [], moreInJob: false });
    expect(at.puts).toEqual([]);
  });

  it('are written one by one, only those that were changed, and read as what was meant', async () => {
    const at = server(threeFiles);
    const { home, job } = await homeOn(at);
    expect((await home.save(titled(job, 'Other'))).saved).toEqual([fitName]);
    expect((await home.save(titled(job, 'Another'))).saved).toEqual([fitName]);
    expect(at.puts).toEqual([fitName, fitName]);
    expect(at.read(fitName)).toEqual({ $schema: schemaIds['fettle-fit/1'], ...fitFile, title: 'Another' });
    expect(at.texts.get(fitName)?.split('\n').length).toBeGreaterThan(10);
  });

  it('of a job in one file are that file', async () => {
    const whole = { format: 'fettle-job/1', fit: fitFile, parts: { 'block.part.json': blockFile } };
    const at = server({ 'a.job.json': whole });
    const { home, job } = await homeOn(at);
    const record = { format: 'note/1' };
    expect(await home.save({ ...job, records: [record] })).toMatchObject({ saved: ['a.job.json'], moreInJob: false });
    expect(at.read('a.job.json')).toEqual({ $schema: schemaIds['fettle-job/1'], ...whole, records: [record] });
  });

  it('a fit and parts have no place for a part that is not whole, one they lack, and pictures: that is said', async () => {
    const at = server(threeFiles);
    const { home, job } = await homeOn(at);
    const picture = { id: 'p', part: 'block.part.json', name: 'p.jpg', mediaType: 'image/jpeg', data: '', touches: [] };
    const clutch = job.parts['block.part.json'];
    if (clutch === undefined) throw new Error('no block');
    const more: JobFile = {
      ...emptied('housing.part.json', job),
      fit: { ...job.fit, rotating: ['clutch.part.json'] },
      pictures: [picture as NonNullable<JobFile['pictures']>[number]],
    };
    const saved = await home.save({ ...more, parts: { ...more.parts, 'clutch.part.json': clutch } });
    expect(saved.onlyInJob).toEqual(['housing.part.json', 'clutch.part.json']);
    expect(saved.moreInJob).toBe(true);
    expect(at.read('housing.part.json')).toEqual(housingFile);
  });
});

describe('a disk that says no', () => {
  it.each([
    ['is full', 507, { code: 'ENOSPC', text: 'job.fit.json was not saved: no room left on the disk.' }],
    ['fails', 500, { code: 'EIO', text: 'job.fit.json was not saved: a write that failed (EIO).' }],
    ['takes no more than so much', 413, { code: 'too-large', text: 'More than 64 MB; nothing was written.' }],
    ['may not be written', 403, { code: 'EACCES', text: 'job.fit.json was not saved: no leave to write.' }],
  ])('is quoted where it %s; the other files are saved, and this one the next time', async (_, status, body) => {
    const at = server(threeFiles);
    const { home, job } = await homeOn(at);
    const block = job.parts['block.part.json'];
    if (block === undefined) throw new Error('no block');
    const edited: JobFile = {
      ...titled(job, 'New'),
      parts: { ...job.parts, 'block.part.json': { ...block, name: 'B' } },
    };
    at.trouble.next = [status, body];
    expect(await home.save(edited)).toMatchObject({
      saved: ['block.part.json'],
      notSaved: [{ file: fitName, why: 'refused', said: body.text }],
    });
    expect(home.state()).toBe('same');
    expect(await home.save(edited)).toMatchObject({ saved: [fitName], notSaved: [] });
    expect(at.read(fitName).title).toBe('New');
  });

  it('or does not answer leaves the file unsaved, until it does', async () => {
    const at = server(threeFiles);
    const { home, job } = await homeOn(at);
    at.trouble.next = 'unreachable';
    expect((await home.save(titled(job, 'New'))).notSaved).toEqual([{ file: fitName, why: 'unreachable' }]);
    expect((await home.save(titled(job, 'New'))).saved).toEqual([fitName]);
  });

  it('or whose answer was lost has the file all the same: what is ours there is not taken for a change', async () => {
    const at = server(threeFiles);
    const { home, job } = await homeOn(at);
    at.trouble.next = 'reply-lost';
    expect((await home.save(titled(job, 'New'))).notSaved).toEqual([{ file: fitName, why: 'unreachable' }]);
    expect(await home.save(titled(job, 'New'))).toMatchObject({ saved: [fitName], notSaved: [] });
    expect(home.state()).toBe('same');
  });
});

describe('a file that something else changed on the disk', () => {
  const elsewhere = { ...fitFile, title: 'By hand' };

  it('is noticed, and is not written over', async () => {
    const at = server(threeFiles);
    const { home, job } = await homeOn(at);
    expect(await home.look()).toBe('same');
    at.texts.set(fitName, JSON.stringify(elsewhere));
    expect((await home.save(titled(job, 'Mine'))).notSaved).toEqual([{ file: fitName, why: 'changed-on-disk' }]);
    expect([home.state(), await home.look()]).toEqual(['changed-on-disk', 'changed-on-disk']);
    expect(at.read(fitName)).toEqual(elsewhere);
  });

  it('is shown when asked for, or written over when asked for', async () => {
    const at = server(threeFiles);
    const { home, job } = await homeOn(at);
    at.texts.set(fitName, JSON.stringify(elsewhere));
    expect(await home.look()).toBe('changed-on-disk');
    expect(await home.reload()).toMatchObject({ ok: true, value: { job: { fit: elsewhere } } });
    expect(home.state()).toBe('same');
    at.texts.set(fitName, JSON.stringify({ ...elsewhere, title: 'Again' }));
    expect(await home.saveOver(job)).toMatchObject({ saved: [fitName], notSaved: [] });
    expect([at.read(fitName), home.state()]).toEqual([{ $schema: schemaIds['fettle-fit/1'], ...fitFile }, 'same']);
  });

  it('or took away is noticed, and nothing is put in its place', async () => {
    const at = server(threeFiles);
    const { home } = await homeOn(at);
    at.texts.delete('block.part.json');
    expect(await home.look()).toBe('changed-on-disk');
  });

  it('a save on its way is not taken for such a change', async () => {
    const at = server(threeFiles);
    const { home, job } = await homeOn(at);
    const [saved, state] = await Promise.all([home.save(titled(job, 'New')), home.look()]);
    expect([saved.saved, state]).toEqual([[fitName], 'same']);
  });
});
