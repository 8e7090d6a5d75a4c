import type { JobFile, PictureFile } from '../../../src/files/job-file.ts';
import { mostCharacters } from '../../../src/files/read-json.ts';
import { type NewPicture, picturesIn } from '../../job/picture-edits.ts';
import { photoWords as words } from '../../words/photo.ts';
import { loadedPicture } from './loaded-picture.ts';

/** Of the characters that a job file may have, these are left to everything but its pictures. */
const lettersKept = 4 * 1024 * 1024;

/** Four letters hold three bytes. */
const mostBytes = Math.floor(((mostCharacters - lettersKept) / 4) * 3);

/** Whether a file is brought as a picture, and not as outlines. */
export const isPicture = ({ name, type }: File): boolean =>
  (type.startsWith('image/') && type !== 'image/svg+xml' && !type.endsWith('dxf')) ||
  /\.(jpe?g|png|webp|heic|heif|avif|gif|tiff?|bmp)$/i.test(name);

/** A picture a job has room for, or in words why it is not taken. */
export type PictureLoad =
  | { readonly ok: true; readonly picture: NewPicture }
  | { readonly ok: false; readonly text: string };

/** Reads a picture for a part of a job; what it is, its bytes say, not its name. */
export async function broughtPicture(job: JobFile, part: string, file: File): Promise<PictureLoad> {
  const { name } = file;
  const left = mostBytes - picturesIn(job).reduce((sum, { data }) => sum + (data.length / 4) * 3, 0);
  if (file.size > left) return { ok: false, text: words.tooLarge(name, file.size, left, mostBytes) };
  const bytes = new Uint8Array(await file.arrayBuffer());
  const mediaType = typeOf(bytes);
  if (mediaType === null) return { ok: false, text: words.notAPicture(name) };
  const picture = { part, name, mediaType, data: base64Of(bytes) };
  return (await loadedPicture(picture)) === null ? { ok: false, text: words.unreadable(name) } : { ok: true, picture };
}

/** By the first bytes: JPEG (ITU-T T.81), PNG (ISO/IEC 15948), WebP (RFC 9649). */
function typeOf(bytes: Uint8Array): PictureFile['mediaType'] | null {
  const begins = (...start: readonly number[]): boolean => start.every((byte, i) => bytes[i] === byte);
  if (begins(0xff, 0xd8, 0xff)) return 'image/jpeg';
  if (begins(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'image/png';
  const isWebp = begins(0x52, 0x49, 0x46, 0x46) && [0x57, 0x45, 0x42, 0x50].every((byte, i) => bytes[8 + i] === byte);
  return isWebp ? 'image/webp' : null;
}

/** As many bytes at a time as a call takes arguments; a multiple of three, so that the pieces join. */
const atOnce = 3 * 8192;

function base64Of(bytes: Uint8Array): string {
  const pieces: string[] = [];
  for (let i = 0; i < bytes.length; i += atOnce)
    pieces.push(btoa(String.fromCharCode(...bytes.subarray(i, i + atOnce))));
  return pieces.join('');
}
