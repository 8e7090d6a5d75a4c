import { createHash } from 'node:crypto';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { jobFiles } from '../../support/small-job.ts';
import { folderWith } from '../../support/temp-folder.ts';
import { smallPage, viewing } from '../../support/view-server.ts';

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');
const asWritten = Object.fromEntries(Object.entries(jobFiles()).map(([name, file]) => [name, JSON.stringify(file)]));

describe('the page of the viewer', () => {
  it('is the page that was built', async () => {
    const { status, text, headers } = await (await viewing()).get('');
    expect({ status, text }).toEqual({ status: 200, text: smallPage });
    expect(headers['content-type']).toBe('text/html; charset=utf-8');
  });

  // hashes of "\nlet a = 1;" and "p{color:red}" by openssl dgst -sha256 -binary | base64: a browser reads CR LF as LF
  it('may run its own scripts and styles by their hash, and nothing else', async () => {
    const { headers } = await (await viewing()).get('');
    expect(String(headers['content-security-policy']).split('; ')).toEqual([
      "default-src 'none'",
      "script-src 'sha256-zNICszcODNxfb/tqSGD4CAgmaldni62vjSVnP/eaEZo='",
      "style-src 'sha256-p0bF+un5yUb9MBO6xRb8kPHlY2BdpHVtLiFkDrZPF64='",
      'worker-src blob:',
      "img-src 'self' blob: data:",
      "connect-src 'self'",
      "base-uri 'none'",
      "form-action 'none'",
      "frame-ancestors 'none'",
    ]);
  });

  it.each([
    ['', 200],
    ['job', 200],
    ['nothing', 404],
    ['file/x', 405],
  ])('every answer carries the strict headers: %j', async (rest, status) => {
    const answered = await (await viewing()).get(rest);
    expect(answered.status).toBe(status);
    expect(answered.headers).toMatchObject({
      'content-security-policy': expect.stringMatching(/^default-src 'none'.*frame-ancestors 'none'$/),
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cache-control': 'no-store',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
    });
    expect(answered.headers).not.toHaveProperty('access-control-allow-origin');
  });

  it('HEAD is GET without the body', async () => {
    const { get } = await viewing();
    for (const rest of ['', 'job', 'versions']) {
      const [whole, head] = [await get(rest), await get(rest, { method: 'HEAD' })];
      expect(head).toMatchObject({ status: 200, text: '' });
      expect(head.headers['content-length']).toBe(String(Buffer.byteLength(whole.text)));
    }
  });
});

describe('the job that the viewer opens', () => {
  it('is the fit and every part it names, by the names in the fit', async () => {
    const files = {
      ...jobFiles({ fit: { fixed: './block.part.json', rotating: ['wheels/clutch.part.json'] } }),
      'wheels/clutch.part.json': '{}',
    };
    const { get } = await viewing({ folder: folderWith(files) });
    const job = JSON.parse((await get('job')).text);
    expect(job.open).toBe('job.fit.json');
    expect(job.files.map((file: { name: string }) => file.name)).toEqual([
      'job.fit.json',
      './block.part.json',
      'housing.part.json',
      'wheels/clutch.part.json',
    ]);
    expect(job.files[1]).toEqual({
      name: './block.part.json',
      text: asWritten['block.part.json'],
      version: sha256(asWritten['block.part.json'] ?? ''),
    });
  });

  it('is without the parts that are missing', async () => {
    const { get, folder } = await viewing();
    rmSync(join(folder, 'housing.part.json'));
    const { files } = JSON.parse((await get('job')).text);
    expect(files.map((file: { name: string }) => file.name)).toEqual(['job.fit.json', 'block.part.json']);
  });

  it('is a job in one file, alone', async () => {
    const folder = folderWith({ 'whole.job.json': '{"format":"fettle-job/1","fixed":"a.part.json"}' });
    const { get } = await viewing({ jobFile: join(folder, 'whole.job.json') });
    const { open, files } = JSON.parse((await get('job')).text);
    expect({ open, names: files.map((file: { name: string }) => file.name) }).toEqual({
      open: 'whole.job.json',
      names: ['whole.job.json'],
    });
  });

  it('is nothing where nothing is named', async () => {
    const { get, put } = await viewing({ jobFile: null });
    expect(JSON.parse((await get('job')).text)).toEqual({ open: null, files: [] });
    expect(JSON.parse((await get('versions')).text)).toEqual({});
    expect((await put('block.part.json', '{}', '')).status).toBe(403);
  });

  it.each(['', '{', '[]', 'null', '{"fixed":7,"moving":null,"rotating":{}}'])(
    'is the fit alone where the fit is %j, for the page to say what is wrong with it',
    async (fit) => {
      const { get } = await viewing({ folder: folderWith({ 'job.fit.json': fit }) });
      expect(JSON.parse((await get('job')).text)).toEqual({
        open: 'job.fit.json',
        files: [{ name: 'job.fit.json', text: fit, version: sha256(fit) }],
      });
    },
  );

  it('has versions that tell what has changed on disk and what is gone', async () => {
    const { get, folder } = await viewing();
    const versions = async () => JSON.parse((await get('versions')).text);
    const before = Object.fromEntries(Object.entries(asWritten).map(([name, text]) => [name, sha256(text)]));
    expect(await versions()).toEqual(before);
    writeFileSync(join(folder, 'block.part.json'), 'changed');
    rmSync(join(folder, 'housing.part.json'));
    expect(await versions()).toEqual({ ...before, 'block.part.json': sha256('changed'), 'housing.part.json': null });
  });
});
