/** What a photograph's EXIF says of how it was held and taken; what it does not say, or says wrongly, is null. */
export interface ExifTags {
  /** 1–8, as CIPA DC-008 (EXIF) tag 0x0112 counts them. */
  readonly orientation: number | null;
  /** The focal length that sees as much on a 36 × 24 mm frame, mm: tag 0xA405. */
  readonly focal35Mm: number | null;
}

export const noExif: ExifTags = { orientation: null, focal35Mm: null };

const orientationTag = 0x0112;
const exifDirectoryTag = 0x8769;
const focal35Tag = 0xa405;

/** Reads the tags of a TIFF block, which is what an EXIF segment holds behind its name; either byte order. */
export function exifTags(tiff: Uint8Array): ExifTags {
  const view = new DataView(tiff.buffer, tiff.byteOffset, tiff.byteLength);
  const littleEndian = tiff[0] === 0x49 && tiff[1] === 0x49;
  const bigEndian = tiff[0] === 0x4d && tiff[1] === 0x4d;
  if (tiff.length < 8 || !(littleEndian || bigEndian) || view.getUint16(2, littleEndian) !== 42) return noExif;
  const first = directory(view, view.getUint32(4, littleEndian), littleEndian);
  const inner = directory(view, first.get(exifDirectoryTag) ?? 0, littleEndian);
  const orientation = first.get(orientationTag) ?? 0;
  return {
    orientation: orientation >= 1 && orientation <= 8 ? orientation : null,
    focal35Mm: inner.get(focal35Tag) || null,
  };
}

/** The whole numbers of a directory by their tags; entries of other kinds, and all beyond the end, are passed over. */
function directory(view: DataView, at: number, littleEndian: boolean): ReadonlyMap<number, number> {
  const values = new Map<number, number>();
  if (at < 8 || at + 2 > view.byteLength) return values;
  const entries = view.getUint16(at, littleEndian);
  for (let entry = at + 2; entry < at + 2 + 12 * entries && entry + 12 <= view.byteLength; entry += 12) {
    const kind = view.getUint16(entry + 2, littleEndian);
    const tag = view.getUint16(entry, littleEndian);
    if (kind === 3) values.set(tag, view.getUint16(entry + 8, littleEndian));
    if (kind === 4) values.set(tag, view.getUint32(entry + 8, littleEndian));
  }
  return values;
}
