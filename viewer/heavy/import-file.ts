import { partEnding } from '../../src/files/file-endings.ts';
import type { Finding } from '../../src/files/finding.ts';
import type { PartDraft } from '../../src/files/job-file.ts';
import type { PartFile } from '../../src/files/part-file.ts';
import { readJson } from '../../src/files/read-json.ts';
import { decodedText } from '../../src/intake/decode-text.ts';
import { importDrawing } from '../../src/intake/import-drawing.ts';
import { type ImportOptions, nothingSaid } from '../../src/intake/import-options.ts';
import { importText } from '../../src/intake/import-text.ts';
import { soundPart } from '../../src/intake/sound-part.ts';
import { readDrawing } from '../../src/intake/sources.ts';
import { readPart } from '../../src/job/read-part.ts';
import { findingsText } from '../../src/words/finding-text.ts';

export interface FileToImport {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** From where the part was seen, where its tracer has said so. */
  readonly viewedFrom?: 'face' | 'back';
  readonly options?: Partial<Omit<ImportOptions, 'name' | 'viewedFrom'>>;
}

/** What a file brings into a part, and what must be said of it; or what keeps it from being read. */
export type ImportedFile =
  | { readonly kind: 'part'; readonly part: PartDraft; readonly text: string }
  | { readonly kind: 'findings'; readonly findings: readonly Finding[]; readonly text: string };

/** Reads a part file whole, or the outlines and holes of a table or drawing (CSV, DXF, SVG). */
export const importFile = (file: FileToImport): ImportedFile =>
  file.name.toLowerCase().endsWith(partEnding) ? wholePart(file) : outlinesFrom(file);

const refused = (findings: readonly Finding[]): ImportedFile => ({
  kind: 'findings',
  findings,
  text: findingsText(findings),
});

function wholePart({ name, bytes }: FileToImport): ImportedFile {
  const text = decodedText(bytes);
  const reading = readPart(name, text, 'fixed');
  const json = readJson(name, text);
  if (!reading.ok || !json.ok) return refused([reading, json].flatMap((read) => (read.ok ? [] : read.findings)));
  // what has no findings is a part as it stands
  return { kind: 'part', part: json.value as PartFile, text: '' };
}

function outlinesFrom({ name, bytes, viewedFrom, options }: FileToImport): ImportedFile {
  const drawing = readDrawing(name, bytes);
  if (!drawing.ok) return refused(drawing.findings);
  const own = { name: name.replace(/\.[^.]*$/, ''), viewedFrom: viewedFrom ?? 'face' } as const;
  const imported = importDrawing(name, drawing.value, { ...nothingSaid, ...options, ...own });
  if (!imported.ok) return refused(imported.findings);
  const sound = soundPart(name, imported.value.part);
  if (!sound.ok) return refused(sound.findings);
  const { viewedFrom: _, ...unseen } = sound.value;
  const part = viewedFrom === undefined ? unseen : sound.value;
  return { kind: 'part', part, text: importText(imported.value, name, own.name) };
}
