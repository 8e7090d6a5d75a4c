import { type ExifTags, exifTags, noExif } from './exif-tags.ts';
import type { Orientation, PictureSize } from './orientation.ts';
import { found, type PhotoOutcome, refused } from './photo-fault.ts';

/** What the head of a JPEG says, without a pixel being unpacked. */
export interface JpegHead {
  /** As the pixels are stored, before they are turned upright. */
  readonly stored: PictureSize;
  /** 1 where the file does not say. */
  readonly orientation: Orientation;
  /** The focal length that sees as much on a 36 × 24 mm frame, mm; null where the file does not say. */
  readonly focal35Mm: number | null;
}

/** Reads size, orientation and focal length from a JPEG's bytes (ITU-T T.81 annex B for the markers). */
export function jpegHead(bytes: Uint8Array): PhotoOutcome<JpegHead> {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return refused({ code: 'not-a-jpeg' });
  let exif: ExifTags | null = null;
  for (const { marker, body } of segments(bytes)) {
    if (marker === 0xe1 && startsWithExif(body)) exif ??= exifTags(body.subarray(6));
    if (!isFrame(marker) || body.length < 5) continue;
    const [, high = 0, low = 0, wide = 0, narrow = 0] = body;
    const stored = { width: wide * 256 + narrow, height: high * 256 + low };
    if (stored.width === 0 || stored.height === 0) break;
    const { orientation, focal35Mm } = exif ?? noExif;
    return found({ stored, orientation: (orientation ?? 1) as Orientation, focal35Mm });
  }
  return refused({ code: 'no-picture-size' });
}

interface Segment {
  readonly marker: number;
  readonly body: Uint8Array;
}

/** The segments before the pixels; ends where the bytes make no more sense. */
function* segments(bytes: Uint8Array): Generator<Segment> {
  let at = 2;
  while (at + 4 <= bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1] as number;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    const size = (bytes[at + 2] as number) * 256 + (bytes[at + 3] as number);
    if (marker === 0xda || size < 2) return;
    yield { marker, body: bytes.subarray(at + 4, at + 2 + size) };
    at += 2 + size;
  }
}

const startsWithExif = (body: Uint8Array): boolean =>
  [0x45, 0x78, 0x69, 0x66, 0, 0].every((byte, i) => body[i] === byte);

/** A start of frame; three markers of the same row are tables. */
const isFrame = (marker: number): boolean => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
