import type { Reading } from '../../files/finding.ts';
import { decoded } from '../decode-text.ts';

const binaryMark = 'AutoCAD Binary DXF';
/** The header stands first; its two lines that matter here come early in it. */
const headerBytes = 65536;

/** Code pages by the name DXF gives them, where it is not `ANSI_` and the Windows number. */
const codePages: Readonly<Record<string, string>> = {
  ANSI_932: 'shift_jis',
  ANSI_936: 'gbk',
  ANSI_949: 'euc-kr',
  ANSI_950: 'big5',
};

/**
 * The text of a DXF file. Files of the 2007 version (AC1021) and later are UTF-8; older ones are in the code page
 * their header names, Windows-1252 where it names none that is known. Binary DXF is refused.
 */
export function dxfText(file: string, bytes: Uint8Array): Reading<string> {
  const start = decoded(bytes.subarray(0, headerBytes), 'windows-1252');
  if (start.startsWith(binaryMark)) {
    const expected = 'a DXF file in ASCII: save it as "ASCII DXF", R12 or later';
    return { ok: false, findings: [{ file, at: '', found: 'a binary DXF file', expected }] };
  }
  const text = decoded(bytes, encodingOf(start));
  // \U+00E9 is how older versions write letters outside their code page
  return {
    ok: true,
    value: text.replace(/\\U\+([0-9a-fA-F]{4})/g, (_, hex) => String.fromCharCode(Number.parseInt(hex, 16))),
  };
}

function encodingOf(header: string): string {
  const version = /\$ACADVER\s+1\s+AC(\d{4})/.exec(header)?.[1];
  if (version !== undefined && Number(version) >= 1021) return 'utf-8';
  const page = /\$DWGCODEPAGE\s+3\s+(\S+)/i.exec(header)?.[1]?.toUpperCase() ?? '';
  const windows = /^ANSI_(125[0-8]|874)$/.exec(page)?.[1];
  return windows === undefined ? (codePages[page] ?? 'windows-1252') : `windows-${windows}`;
}
