import { spawnSync } from 'node:child_process';
import { crc32, inflateRawSync } from 'node:zlib';

/** A file in a zip, as the zip's directory tells of it. */
interface Unzipped {
  readonly name: string;
  readonly data: Uint8Array;
  /** Days and halves of a minute since 1980 as they stand there, years in the upper bits. */
  readonly stamp: number;
}

/**
 * The files in a zip, by its directory, each held against its sum and its size; read by Node's own zlib and shares
 * nothing with what writes zips. Source: PKWARE's APPNOTE 6.3, sections 4.3.7, 4.3.12 and 4.3.16, from memory.
 */
export function unzipped(zip: Buffer): Unzipped[] {
  const end = zip.lastIndexOf('PK\x05\x06', undefined, 'latin1');
  if (end < 0) throw new Error('no zip: it has no directory');
  const count = zip.readUInt16LE(end + 10);
  let at = zip.readUInt32LE(end + 16);
  return Array.from({ length: count }, () => {
    if (zip.toString('latin1', at, at + 4) !== 'PK\x01\x02') throw new Error(`no entry at ${at}`);
    const u16 = (offset: number): number => zip.readUInt16LE(at + offset);
    const u32 = (offset: number): number => zip.readUInt32LE(at + offset);
    const [method, packedBytes, bytes, nameBytes] = [u16(10), u32(20), u32(24), u16(28)];
    const name = zip.toString(u16(8) & 0x800 ? 'utf8' : 'latin1', at + 46, at + 46 + nameBytes);
    const local = u32(42);
    const from = local + 30 + zip.readUInt16LE(local + 26) + zip.readUInt16LE(local + 28);
    const packed = zip.subarray(from, from + packedBytes);
    const data = method === 0 ? packed : inflateRawSync(packed);
    if (data.byteLength !== bytes || crc32(data) !== u32(16))
      throw new Error(`${name} does not come out as it went in`);
    const stamp = u32(12);
    at += 46 + nameBytes + u16(30) + u16(32);
    return { name, data, stamp };
  });
}

/** Whether Info-ZIP's unzip is here to take zips apart as well. */
export const hasUnzip = spawnSync('unzip', ['-v'], { stdio: 'ignore' }).status === 0;
