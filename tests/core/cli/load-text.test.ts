import { symlinkSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { largestFileBytes, loadText } from '../../../cli/load-text.ts';
import { folderWith } from '../../support/temp-folder.ts';

const foundIn = (file: string): string | undefined => {
  const reading = loadText(file);
  return reading.ok ? undefined : reading.findings[0]?.found;
};

const textOf = (bytes: Uint8Array): string => {
  const reading = loadText(join(folderWith({ 'a.json': bytes }), 'a.json'));
  return reading.ok ? reading.value : `refused: ${reading.findings[0]?.found}`;
};

describe('loading a text file', () => {
  it('reads UTF-8, with and without its mark', () => {
    expect(textOf(new TextEncoder().encode('Ø14 “ear”'))).toBe('Ø14 “ear”');
    expect(textOf(new TextEncoder().encode('\ufeff{}'))).toBe('{}');
  });

  it('reads UTF-16 as Windows writes it', () => {
    expect(textOf(new Uint8Array(Buffer.from('\ufeff{"Ø":1}', 'utf16le')))).toBe('{"Ø":1}');
  });

  it('refuses bytes that are no text', () => {
    expect(textOf(new Uint8Array([0x7b, 0xff, 0xc0, 0x80]))).toContain('bytes that are no text');
  });

  it('says what stands in the way of reading', () => {
    const folder = folderWith({ 'inside/a.json': '{}' });
    symlinkSync('round.json', join(folder, 'round.json'));
    expect(foundIn(join(folder, 'none.json'))).toBe('no such file');
    expect(foundIn(join(folder, 'inside/a.json/b.json'))).toBe('no such file');
    expect(foundIn(join(folder, 'inside'))).toBe('a folder');
    expect(foundIn(join(folder, 'round.json'))).toBe('a link that leads back to itself');
    expect(foundIn(join(folder, 'x'.repeat(300)))).toBe('a name too long for the disk');
    expect(foundIn(`${folder}/nul\0.json`)).toContain('unreadable');
    expect(foundIn('/dev/zero')).toBe('a device or pipe');
  });

  it('refuses a file past the limit without reading it', () => {
    const file = join(folderWith({ 'huge.json': '' }), 'huge.json');
    truncateSync(file, largestFileBytes + 1);
    expect(foundIn(file)).toBe('65 MB');
  });
});
