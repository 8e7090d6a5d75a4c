import * as fs from 'node:fs';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Disk } from '../../../cli/save.ts';
import { versionOf } from '../../../cli/view/opened-files.ts';
import { failingDisk } from '../../support/failing-disk.ts';
import { blockFile, jobFiles } from '../../support/small-job.ts';
import { folderWith } from '../../support/temp-folder.ts';
import { viewing } from '../../support/view-server.ts';

const old = JSON.stringify(blockFile);
const next = JSON.stringify({ ...blockFile, name: 'Block, Ø14 “ear”' });
const oldVersion = versionOf(Buffer.from(old));
const nextVersion = versionOf(Buffer.from(next));
const files = [...Object.keys(jobFiles())].sort();

const block = (folder: string, suffix = ''): string => readFileSync(join(folder, `block.part.json${suffix}`), 'utf8');

describe('saving in the viewer', () => {
  it('writes the file in its place, byte for byte, and keeps the version before beside it', async () => {
    const { put, folder } = await viewing();
    const { status, text } = await put('block.part.json', next, oldVersion);
    expect({ status, ...JSON.parse(text) }).toEqual({ status: 200, version: nextVersion });
    expect(block(folder)).toBe(next);
    expect(block(folder, '.before')).toBe(old);
    expect(readdirSync(folder).sort()).toEqual([...files, 'block.part.json.before'].sort());
  });

  it('goes on from the version it answered, and keeps the last one before', async () => {
    const { put, folder } = await viewing();
    await put('block.part.json', next, oldVersion);
    const third = JSON.stringify({ ...blockFile, name: 'third' });
    expect((await put('block.part.json', third, nextVersion)).status).toBe(200);
    expect([block(folder), block(folder, '.before')]).toEqual([third, next]);
  });

  it('what is the same as on disk is saved, and costs no version before', async () => {
    const { put, folder } = await viewing();
    await put('block.part.json', next, oldVersion);
    expect((await put('block.part.json', next, nextVersion)).status).toBe(200);
    expect(block(folder, '.before')).toBe(old);
  });

  it('writes a part in a folder of its own, and one that is a link inside the job', async () => {
    const folder = folderWith(jobFiles({ fit: { fixed: 'parts/block.part.json', moving: 'link.part.json' } }));
    mkdirSync(join(folder, 'parts'));
    writeFileSync(join(folder, 'parts/block.part.json'), old);
    symlinkSync('block.part.json', join(folder, 'link.part.json'));
    const { put } = await viewing({ folder });
    expect((await put('parts/block.part.json', next, oldVersion)).status).toBe(200);
    expect((await put('link.part.json', next, oldVersion)).status).toBe(200);
    expect(readFileSync(join(folder, 'parts/block.part.json'), 'utf8')).toBe(next);
    expect(block(folder)).toBe(next);
    expect(fs.lstatSync(join(folder, 'link.part.json')).isSymbolicLink()).toBe(true);
  });

  it('leaves a private file private, and so the version before', async () => {
    const { put, folder } = await viewing();
    chmodSync(join(folder, 'block.part.json'), 0o600);
    await put('block.part.json', next, oldVersion);
    for (const suffix of ['', '.before']) {
      expect(statSync(join(folder, `block.part.json${suffix}`)).mode & 0o777).toBe(0o600);
    }
  });

  it('does not follow a link that stands where the version before goes', async () => {
    const { put, folder } = await viewing();
    const elsewhere = join(folderWith({ 'elsewhere.txt': 'mine' }), 'elsewhere.txt');
    symlinkSync(elsewhere, join(folder, 'block.part.json.before'));
    expect((await put('block.part.json', next, oldVersion)).status).toBe(200);
    expect(readFileSync(elsewhere, 'utf8')).toBe('mine');
    expect(block(folder, '.before')).toBe(old);
  });
});

describe('saving in the viewer is refused', () => {
  it('where the file has changed since, with its version now and nothing overwritten', async () => {
    const { put, folder } = await viewing();
    writeFileSync(join(folder, 'block.part.json'), 'changed by hand');
    const { status, text } = await put('block.part.json', next, oldVersion);
    expect({ status, ...JSON.parse(text) }).toMatchObject({
      status: 412,
      code: 'changed',
      version: versionOf(Buffer.from('changed by hand')),
    });
    expect(block(folder)).toBe('changed by hand');
    expect(existsSync(join(folder, 'block.part.json.before'))).toBe(false);
  });

  it('where the file is gone, which is not made again', async () => {
    const { put, folder } = await viewing();
    rmSync(join(folder, 'block.part.json'));
    const { status, text } = await put('block.part.json', next, oldVersion);
    expect({ status, version: JSON.parse(text).version }).toEqual({ status: 412, version: null });
    expect(existsSync(join(folder, 'block.part.json'))).toBe(false);
  });

  it.each(['*', oldVersion, `W/"${oldVersion}"`, '""'])(
    'where the version is not told as such: If-Match %s',
    async (ifMatch) => {
      const { put, folder } = await viewing();
      expect((await put('block.part.json', next, '', { 'If-Match': ifMatch })).status).toBe(412);
      expect(block(folder)).toBe(old);
    },
  );

  it('where no version is told, and for a file that would be new', async () => {
    const { get, folder } = await viewing();
    const bare = (name: string) =>
      get(`file/${name}`, { method: 'PUT', body: next, headers: { 'If-None-Match': '*' } });
    expect((await bare('block.part.json')).status).toBe(428);
    expect((await bare('new.part.json')).status).toBe(403);
    expect(readdirSync(folder).sort()).toEqual(files);
  });

  it.each(['', '{}', 'not json'])('where what is sent is no file of Fettle: %j', async (body) => {
    const { put, folder } = await viewing();
    expect((await put('block.part.json', body, oldVersion)).status).toBe(400);
    expect(block(folder)).toBe(old);
  });

  it('where the page goes away in the middle of sending', async () => {
    const { port, base, folder, get } = await viewing();
    await new Promise<void>((done) => {
      const socket = connect(port, '127.0.0.1', () => {
        socket.write(
          `PUT ${base}file/block.part.json HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nIf-Match: "${oldVersion}"\r\nContent-Length: ${next.length}\r\n\r\n${next.slice(0, -9)}`,
          () => socket.destroy(),
        );
      });
      socket.on('close', () => done());
    });
    expect((await get('versions')).status).toBe(200);
    expect(block(folder)).toBe(old);
    expect(readdirSync(folder).sort()).toEqual(files);
  });

  it.each([
    // the first of each is the version before being kept, the second the file itself
    ['openSync', 'EACCES', 1, 403, 'no leave to write'],
    ['openSync', 'EROFS', 2, 403, 'no leave to write'],
    ['writeFileSync', 'ENOSPC', 1, 507, 'no room left on the disk'],
    ['writeFileSync', 'ENOSPC', 2, 507, 'no room left on the disk'],
    ['writeFileSync', 'EDQUOT', 2, 507, 'no room left on the disk'],
    ['fsyncSync', 'EIO', 1, 500, 'a write that failed (EIO)'],
    ['fsyncSync', 'EIO', 2, 500, 'a write that failed (EIO)'],
    ['closeSync', 'EIO', 2, 500, 'a write that failed (EIO)'],
    ['renameSync', 'EACCES', 2, 403, 'no leave to write'],
    ['renameSync', 'EIO', 2, 500, 'a write that failed (EIO)'],
  ] as const)(
    'where %s fails with %s on call %d: %d, said plainly, the old file whole',
    async (at, code, nth, status, words) => {
      const { put, folder } = await viewing({ disk: failingDisk(at, code, nth) });
      const answered = await put('block.part.json', next, oldVersion);
      const { text, ...said } = JSON.parse(answered.text);
      expect({ status: answered.status, ...said }).toEqual({ status, code });
      expect(text).toMatch(/^block\.part\.json was not saved and is as it was: [^\n]+\.$/);
      expect(text).toContain(words);
      expect(text).not.toMatch(/made to fail|\bat /);
      expect(block(folder)).toBe(old);
      const beside = readdirSync(folder).filter((name) => !files.includes(name));
      expect(beside).toEqual(nth === 1 ? [] : ['block.part.json.before']);
      expect((await put('block.part.json', next, oldVersion)).status).toBe(200);
    },
  );

  it('where the disk breaks in a way nobody thought of, without a stack', async () => {
    const broken = {
      ...fs,
      openSync: () => {
        throw new TypeError('oops at cli/save.ts:1');
      },
    } as Disk;
    const { put, folder } = await viewing({ disk: broken });
    const { status, text } = await put('block.part.json', next, oldVersion);
    expect(status).toBe(500);
    expect(text).not.toMatch(/oops|\.ts:/);
    expect(block(folder)).toBe(old);
  });
});
