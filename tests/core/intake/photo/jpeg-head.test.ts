import exifr from 'exifr';
import { encode } from 'jpeg-js';
import { describe, expect, it } from 'vitest';
import { jpegHead } from '../../../../src/intake/photo/jpeg-head.ts';
import { type Orientation, toStored, toUpright, uprightSize } from '../../../../src/intake/photo/orientation.ts';
import { faultsOf, settled } from '../../../support/plate.ts';
import { Random } from '../../../support/random.ts';

const stored = { width: 40, height: 30 };
const plain = new Uint8Array(encode({ ...stored, data: new Uint8Array(4 * 40 * 30) }, 50).data);
const orientations: readonly Orientation[] = [1, 2, 3, 4, 5, 6, 7, 8];

/** A JPEG with an EXIF segment put in behind its first marker. */
function withExif(orientation: number, focal35Mm: number, littleEndian: boolean): Uint8Array {
  const tiff = new DataView(new ArrayBuffer(56));
  const put16 = (at: number, value: number) => tiff.setUint16(at, value, littleEndian);
  const put32 = (at: number, value: number) => tiff.setUint32(at, value, littleEndian);
  const entry = (at: number, tag: number, kind: number, value: number) => {
    put16(at, tag);
    put16(at + 2, kind);
    put32(at + 4, 1);
    if (kind === 3) put16(at + 8, value);
    else put32(at + 8, value);
  };
  tiff.setUint16(0, littleEndian ? 0x4949 : 0x4d4d);
  put16(2, 42);
  put32(4, 8);
  put16(8, 2);
  entry(10, 0x0112, 3, orientation);
  entry(22, 0x8769, 4, 38);
  put16(38, 1);
  entry(40, 0xa405, 3, focal35Mm);
  const body = [...new TextEncoder().encode('Exif\0\0'), ...new Uint8Array(tiff.buffer)];
  return new Uint8Array([0xff, 0xd8, 0xff, 0xe1, 0, body.length + 2, ...body, ...plain.subarray(2)]);
}

describe("a JPEG's head", () => {
  it.each(orientations.flatMap((orientation) => [true, false].map((little) => [orientation, little] as const)))(
    'says orientation %i, little-endian %s, as another reader says it',
    async (orientation, littleEndian) => {
      const bytes = withExif(orientation, 27, littleEndian);
      expect(settled(jpegHead(bytes))).toEqual({ stored, orientation, focal35Mm: 27 });
      expect(await exifr.orientation(bytes)).toBe(orientation);
    },
  );

  it('without EXIF, or with an orientation that there is none of, the picture lies as it is stored', () => {
    expect(settled(jpegHead(plain))).toEqual({ stored, orientation: 1, focal35Mm: null });
    expect(settled(jpegHead(withExif(9, 0, true)))).toEqual({ stored, orientation: 1, focal35Mm: null });
  });

  it('what is no JPEG is refused, and so is one that ends before its size', () => {
    expect(faultsOf(jpegHead(new TextEncoder().encode('GIF89a')))).toEqual([{ code: 'not-a-jpeg' }]);
    expect(faultsOf(jpegHead(new Uint8Array()))).toEqual([{ code: 'not-a-jpeg' }]);
    expect(faultsOf(jpegHead(plain.subarray(0, 30)))).toEqual([{ code: 'no-picture-size' }]);
  });

  it('bytes cut short or changed at random are read or refused, never thrown at', () => {
    const whole = withExif(6, 27, false);
    const random = new Random(5);
    for (let go = 0; go < 3000; go += 1) {
      const bytes = whole.slice(0, random.whole(2, 300));
      for (let k = 0; k < 3; k += 1) bytes[random.whole(2, bytes.length - 1)] = random.whole(0, 255);
      const outcome = jpegHead(bytes);
      if (outcome.ok) expect(outcome.value.orientation).toBeOneOf([...orientations]);
      else expect(outcome.faults).toHaveLength(1);
    }
  });
});

describe('orientation', () => {
  // CIPA DC-008, tag 0x0112: the side of the upright picture on which the stored row 0 and column 0 lie
  const sides: Record<Orientation, readonly [string, string]> = {
    1: ['top', 'left'],
    2: ['top', 'right'],
    3: ['bottom', 'right'],
    4: ['bottom', 'left'],
    5: ['left', 'top'],
    6: ['right', 'top'],
    7: ['right', 'bottom'],
    8: ['left', 'bottom'],
  };

  it.each(orientations)('%i puts row 0 and column 0 on the sides the standard names', (orientation) => {
    const { width, height } = uprightSize(orientation, stored);
    const sideOf = (p: { x: number; y: number }) => {
      const gaps = { left: p.x, right: width - p.x, top: p.y, bottom: height - p.y };
      return Object.entries(gaps).flatMap(([side, gap]) => (Math.abs(gap - 0.5) < 1e-12 ? [side] : []));
    };
    const row0 = toUpright(orientation, stored, { x: stored.width / 2, y: 0.5 });
    const column0 = toUpright(orientation, stored, { x: 0.5, y: stored.height / 2 });
    expect([sideOf(row0), sideOf(column0)]).toEqual(sides[orientation].map((side) => [side]));
  });

  it.each(orientations)('%i is undone, and carries centres of pixels onto centres of pixels', (orientation) => {
    for (const p of [
      { x: 0.5, y: 0.5 },
      { x: 39.5, y: 0.5 },
      { x: 12.5, y: 29.5 },
    ]) {
      const upright = toUpright(orientation, stored, p);
      expect([upright.x % 1, upright.y % 1]).toEqual([0.5, 0.5]);
      expect(toStored(orientation, stored, upright)).toEqual(p);
    }
  });
});
