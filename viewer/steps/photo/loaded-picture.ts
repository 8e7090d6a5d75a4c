import type { PictureFile } from '../../../src/files/job-file.ts';
import type { PictureSize } from '../../../src/intake/photo/orientation.ts';

/** A picture ready to be shown. */
export interface LoadedPicture {
  readonly blob: Blob;
  /** Of the blob, good as long as the page is. */
  readonly url: string;
  /** Upright, as the browser shows it: it turns the picture as its file says. */
  readonly size: PictureSize;
  /** The first bytes, where a JPEG keeps what its camera said. */
  readonly head: Uint8Array;
}

/** A JPEG may keep a small picture of itself before its size. */
const headBytes = 512 * 1024;

const loading = new Map<string, Promise<LoadedPicture | null>>();

/** Opens a picture once a page; null where the browser cannot show it. */
export function loadedPicture({ mediaType, data }: Pick<PictureFile, 'mediaType' | 'data'>) {
  const known = loading.get(data);
  if (known !== undefined) return known;
  const opening = openPicture(bytesOf(data), mediaType);
  loading.set(data, opening);
  return opening;
}

async function openPicture(bytes: Uint8Array<ArrayBuffer>, type: string): Promise<LoadedPicture | null> {
  const blob = new Blob([bytes], { type });
  const url = URL.createObjectURL(blob);
  const image = new Image();
  image.src = url;
  try {
    await image.decode();
  } catch {
    URL.revokeObjectURL(url);
    return null;
  }
  const size = { width: image.naturalWidth, height: image.naturalHeight };
  return { blob, url, size, head: bytes.slice(0, headBytes) };
}

function bytesOf(base64: string): Uint8Array<ArrayBuffer> {
  const letters = atob(base64);
  const bytes = new Uint8Array(letters.length);
  for (let i = 0; i < letters.length; i++) bytes[i] = letters.charCodeAt(i);
  return bytes;
}
