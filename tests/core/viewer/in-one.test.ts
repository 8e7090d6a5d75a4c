import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { inOne } from '../../../viewer/heavy/in-one.ts';
import type { HandedFile, MadeFile } from '../../../viewer/heavy/questions.ts';
import { folderWith } from '../../support/temp-folder.ts';
import { hasUnzip, unzipped } from '../../support/unzipped.ts';

const file = (name: string, data: MadeFile['data']): MadeFile => ({ name, mediaType: 'text/plain', data });

const zipOf = (...files: readonly MadeFile[]): HandedFile & { readonly bytes: Buffer } => {
  const handed = inOne(files, 'some.zip');
  if (handed === null) throw new Error('several files are a zip');
  return { ...handed, bytes: Buffer.from(handed.data) };
};

/** Words over and over, and bytes without order. */
const words = 'the line to grind to\n'.repeat(200);
const noise = Uint8Array.from({ length: 5000 }, (_, i) => (i * 2654435761) >>> 13);

describe('what one tap gives', () => {
  it('is a single file as it is, and nothing where nothing was made', () => {
    const single = file('all-sheets.pdf', noise);
    expect(inOne([single], 'some.zip')).toEqual({ ...single, holds: [] });
    expect(inOne([], 'some.zip')).toBeNull();
  });

  it('is a zip of several, in their order, that gives each back byte for byte', () => {
    const { name, mediaType, holds, bytes } = zipOf(
      file('b.dxf', words),
      file('ä—漢.csv', 'µ;1\n'),
      file('c.pdf', noise),
    );
    expect([name, mediaType]).toEqual(['some.zip', 'application/zip']);
    expect(holds).toEqual(['b.dxf', 'ä—漢.csv', 'c.pdf']);
    expect(unzipped(bytes).map((one) => [one.name, Buffer.from(one.data)])).toEqual([
      ['b.dxf', Buffer.from(words)],
      ['ä—漢.csv', Buffer.from('µ;1\n')],
      ['c.pdf', Buffer.from(noise)],
    ]);
    expect(bytes.byteLength).toBeLessThan(noise.byteLength + 1000);
  });

  it('gives files back that are too large to be packed tightly', () => {
    const large = words.repeat(800);
    expect(unzipped(zipOf(file('a', large), file('b', noise)).bytes).map(({ data }) => data.byteLength)).toEqual([
      large.length,
      noise.length,
    ]);
  });

  it('writes none over another of the same name, nor of one that differs in capitals alone', () => {
    const { holds, bytes } = zipOf(file('a.dxf', '1'), file('A.dxf', '2'), file('a-2.dxf', '3'), file('a.dxf', '4'));
    expect(holds).toEqual(['a.dxf', 'A-2.dxf', 'a-2-2.dxf', 'a-3.dxf']);
    expect(unzipped(bytes).map(({ data }) => String(data))).toEqual(['1', '2', '3', '4']);
  });

  describe('at any time, anywhere', () => {
    afterEach(() => {
      vi.useRealTimers();
      vi.unstubAllEnvs();
    });

    it('is of the same bytes, of the first day a zip can name', () => {
      const first = zipOf(file('a', words), file('b', noise)).bytes;
      vi.useFakeTimers({ now: new Date('2031-07-05T03:04:05Z') });
      for (const [zone, offset] of [
        ['Pacific/Kiritimati', -840],
        ['America/Los_Angeles', 420],
      ] as const) {
        vi.stubEnv('TZ', zone);
        expect(new Date().getTimezoneOffset()).toBe(offset);
        expect(zipOf(file('a', words), file('b', noise)).bytes.equals(first)).toBe(true);
      }
      // year 0, month 1, day 1, at midnight
      expect(unzipped(first).map(({ stamp }) => stamp)).toEqual([(1 << 21) | (1 << 16), (1 << 21) | (1 << 16)]);
    });
  });

  it.skipIf(!hasUnzip)('passes the test of unzip, which takes the same files out; skipped where there is none', () => {
    const { bytes, holds } = zipOf(file('b.dxf', words), file('c.pdf', noise), file('B.dxf', 'other'));
    const folder = folderWith({ 'some.zip': bytes });
    const zip = join(folder, 'some.zip');
    expect(String(execFileSync('unzip', ['-t', zip]))).toContain('No errors detected');
    const contents = [Buffer.from(words), Buffer.from(noise), Buffer.from('other')];
    expect(holds.map((name) => execFileSync('unzip', ['-p', zip, name]))).toEqual(contents);
  });
});
