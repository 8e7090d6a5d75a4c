/** A file's bytes as text in one of the encodings that the platform knows; unknown bytes become marks, never errors. */
export const decoded = (bytes: Uint8Array, encoding: string): string => new TextDecoder(encoding).decode(bytes);

/** Text as UTF-8, or as UTF-16 or Windows-1252 where the bytes say so: a mark at the start, bytes that are no UTF-8. */
export function decodedText(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return decoded(bytes, 'utf-16le');
  if (first === 0xfe && second === 0xff) return decoded(bytes, 'utf-16be');
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return decoded(bytes, 'windows-1252');
  }
}
