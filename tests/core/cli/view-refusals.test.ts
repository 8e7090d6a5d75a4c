import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { versionOf } from '../../../cli/view/opened-files.ts';
import { fitFile, jobFiles } from '../../support/small-job.ts';
import { folderWith } from '../../support/temp-folder.ts';
import { viewing } from '../../support/view-server.ts';

/** What a server says to bytes sent as they are, until it closes or falls silent with an answer. */
function spoken(port: number, ...pieces: readonly string[]): Promise<string> {
  return new Promise((done, fail) => {
    const socket = connect(port, '127.0.0.1', () => {
      for (const piece of pieces) socket.write(piece);
    });
    let heard = '';
    socket.on('data', (chunk) => {
      heard += String(chunk);
    });
    socket.on('close', () => done(heard));
    socket.on('error', (error: NodeJS.ErrnoException) => (error.code === 'ECONNRESET' ? done(heard) : fail(error)));
  });
}

describe('who may ask the viewer', () => {
  it('an address without its secret, or with another, shows nothing at all', async () => {
    const { ask, base } = await viewing();
    const wrong = `${base.slice(0, -2)}${base.at(-2) === 'A' ? 'B' : 'A'}/`;
    for (const path of ['/', '/job', '/favicon.ico', base.slice(0, -1), wrong, `${wrong}job`, `/x${base}`, '*']) {
      const { status, text } = await ask(path);
      expect({ path, status, text }).toEqual({ path, status: 404, text: '' });
    }
    const { status } = await ask(`${wrong}file/block.part.json`, { method: 'PUT', body: '{}' });
    expect(status).toBe(404);
  });

  it('the secret is another each time, and of 256 bits', async () => {
    const [one, other] = [await viewing(), await viewing()];
    expect(one.base).toMatch(/^\/[\w-]{43}\/$/);
    expect(one.base).not.toBe(other.base);
  });

  it.each([
    'evil.example',
    'evil.example:PORT',
    '127.0.0.1',
    '127.0.0.1:1',
    'localhost.evil.example:PORT',
    '[::1]:PORT',
  ])('a name that was made to lead here is turned away: Host %s', async (host) => {
    const { get, port } = await viewing();
    const { status, text } = await get('job', { headers: { Host: host.replace('PORT', String(port)) } });
    expect(status).toBe(421);
    expect(text).not.toContain('fettle-part');
  });

  it('two Host headers, or none, are turned away', async () => {
    const { port, base } = await viewing();
    const own = `Host: 127.0.0.1:${port}\r\n`;
    const head = `GET ${base}job HTTP/1.1\r\nConnection: close\r\n`;
    expect(await spoken(port, `${head}${own}Host: evil.example\r\n\r\n`)).toMatch(/^HTTP\/1\.1 4(00|21) /);
    expect(await spoken(port, `${head}\r\n`)).toMatch(/^HTTP\/1\.1 400 /);
    expect(await spoken(port, `${head}${own}\r\n`)).toMatch(/^HTTP\/1\.1 200 /);
  });

  it.each(['http://evil.example', 'null', 'https://127.0.0.1:PORT', 'http://127.0.0.1:1', 'http://localhost:PORT'])(
    'a page from elsewhere is turned away: Origin %s',
    async (origin) => {
      const { get, port } = await viewing();
      const { status } = await get('job', { headers: { Origin: origin.replace('PORT', String(port)) } });
      expect(status).toBe(403);
    },
  );

  it.each(['cross-site', 'same-site'])('a page from elsewhere is turned away: Sec-Fetch-Site %s', async (site) => {
    const { get } = await viewing();
    expect((await get('', { headers: { 'Sec-Fetch-Site': site } })).status).toBe(403);
  });

  it('its own page is let in, by either name of this machine', async () => {
    const { get, port } = await viewing();
    for (const host of [`127.0.0.1:${port}`, `localhost:${port}`]) {
      const headers = { Host: host, Origin: `http://${host}`, 'Sec-Fetch-Site': 'same-origin' };
      expect((await get('job', { headers })).status).toBe(200);
    }
  });

  it('listens on no address but this machine’s own', async () => {
    const { port } = await viewing();
    await expect(
      new Promise((done, fail) => connect(port, '127.0.0.2').once('connect', done).once('error', fail)),
    ).rejects.toMatchObject({ code: 'ECONNREFUSED' });
  });
});

describe('what the viewer may be asked', () => {
  it.each([
    ['POST', 'job', 'GET, HEAD'],
    ['DELETE', 'file/block.part.json', 'PUT'],
    ['OPTIONS', 'file/block.part.json', 'PUT'],
    ['GET', 'file/block.part.json', 'PUT'],
    ['PUT', '', 'GET, HEAD'],
    ['TRACE', 'versions', 'GET, HEAD'],
  ])('%s of %j is no way to ask', async (method, rest, allow) => {
    const { get } = await viewing();
    const { status, headers } = await get(rest, { method });
    expect({ status, allow: headers.allow }).toEqual({ status: 405, allow });
  });

  it.each(['file', 'jobs', 'job/', 'job?x', '?', 'index.html', '../job', './', '%2e%2e/', 'job%00', '__proto__'])(
    'there is nothing at %j, and no list of what there is',
    async (rest) => {
      const { get } = await viewing();
      expect(await get(rest)).toMatchObject({ status: 404, text: '' });
    },
  );

  it.each([
    '../outside.part.json',
    '..%2foutside.part.json',
    '%2e%2e%2foutside.part.json',
    '%252e%252e%252foutside.part.json',
    '..%5coutside.part.json',
    '..\\outside.part.json',
    '....//outside.part.json',
    '%2fetc%2fpasswd',
    'block.part.json%00.json',
    'block.part.json%00',
    '%c0%ae%c0%ae/outside.part.json',
    '%',
    '',
    'BLOCK.part.json',
    'block.part.json/',
    './block.part.json',
    'unnamed.part.json',
    'block.part.json.before',
  ])('no path leads to a file that was not opened: %s', async (path) => {
    const outer = folderWith({ 'outside.part.json': '{"format":"fettle-part/1"}' });
    const folder = join(outer, 'job');
    mkdirSync(folder);
    for (const [name, content] of Object.entries({ ...jobFiles(), 'unnamed.part.json': {} })) {
      writeFileSync(join(folder, name), JSON.stringify(content));
    }
    const { get } = await viewing({ folder });
    const headers = { 'If-Match': `"${versionOf(readFileSync(join(outer, 'outside.part.json')))}"` };
    const { status, text } = await get(`file/${path}`, { method: 'PUT', headers, body: '{"format":"fettle-part/1"}' });
    expect({ status, code: JSON.parse(text).code }).toEqual({ status: 403, code: 'not-opened' });
    expect(readFileSync(join(folder, 'block.part.json'), 'utf8')).toBe(JSON.stringify(jobFiles()['block.part.json']));
  });

  it.each([
    '../outside.part.json',
    'link.part.json',
    'linked/outside.part.json',
    'ABSOLUTE',
    'notes.txt',
    'nul\0.json',
  ])(
    'what lies outside the job’s folder, or is no JSON file, is neither shown nor written: a fit that names %j',
    async (named) => {
      const outer = folderWith({ 'outside.part.json': '{"format":"fettle-part/1"}', 'job/notes.txt': 'mine' });
      const outside = join(outer, 'outside.part.json');
      const folder = join(outer, 'job');
      symlinkSync(outside, join(folder, 'link.part.json'));
      symlinkSync(outer, join(folder, 'linked'));
      const name = named === 'ABSOLUTE' ? outside : named;
      writeFileSync(join(folder, 'job.fit.json'), JSON.stringify({ ...fitFile, moving: name }));
      const { get, put } = await viewing({ folder });
      const { files } = JSON.parse((await get('job')).text) as { files: { name: string }[] };
      expect(files.map((file) => file.name)).toEqual(['job.fit.json']);
      const body = '{"format":"fettle-part/1","name":"x"}';
      expect((await put(name, body, versionOf(readFileSync(outside)))).status).toBe(412);
      expect(readFileSync(outside, 'utf8')).toBe('{"format":"fettle-part/1"}');
      expect(readFileSync(join(folder, 'notes.txt'), 'utf8')).toBe('mine');
    },
  );

  it('a fit that names another program’s file does not make it the viewer’s to overwrite', async () => {
    const folder = folderWith(jobFiles({ fit: { moving: 'package.json' } }));
    writeFileSync(join(folder, 'package.json'), '{"name":"other"}');
    const { put } = await viewing({ folder });
    const version = versionOf(readFileSync(join(folder, 'package.json')));
    const { status } = await put('package.json', '{"format":"fettle-part/1"}', version);
    expect(status).toBe(400);
    expect(readFileSync(join(folder, 'package.json'), 'utf8')).toBe('{"name":"other"}');
  });
});

describe('how much may be asked of the viewer', () => {
  it('a body that says it is too large is not read', async () => {
    const { port, base } = await viewing({ mostBytes: 1000 });
    const heard = await spoken(
      port,
      `PUT ${base}file/block.part.json HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nIf-Match: "x"\r\nContent-Length: 1001\r\n\r\n`,
    );
    expect(heard).toMatch(/^HTTP\/1\.1 413 /);
    expect(heard).toMatch(/\r\nConnection: close\r\n/);
  });

  it('a body that turns out too large is read no further', async () => {
    const { port, base } = await viewing({ mostBytes: 1000 });
    const chunk = `3e8\r\n${'x'.repeat(1000)}\r\n`;
    const heard = await spoken(
      port,
      `PUT ${base}file/block.part.json HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nIf-Match: "x"\r\nTransfer-Encoding: chunked\r\n\r\n`,
      chunk,
      chunk,
    );
    expect(heard).toMatch(/^HTTP\/1\.1 413 /);
  });

  it('headers and addresses have an end', async () => {
    const { get } = await viewing();
    expect((await get('x'.repeat(5000))).status).toBe(414);
    expect((await get('job', { headers: { 'X-Long': 'x'.repeat(17_000) } })).status).toBe(431);
  });

  it('headers that never end are given up', async () => {
    const { port, base } = await viewing({}, { headersTimeout: 50, connectionsCheckingInterval: 20 });
    expect(await spoken(port, `GET ${base} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n`)).toMatch(/^HTTP\/1\.1 408 /);
  });

  it('what is no request at all is refused without a word of what stands behind', async () => {
    const { port } = await viewing();
    expect(await spoken(port, 'nonsense\r\n\r\n')).toBe('HTTP/1.1 400 Bad Request\r\nConnection: close\r\n\r\n');
  });
});
