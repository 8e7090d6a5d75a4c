import { partEnding } from '../../src/files/file-endings.ts';
import type { Finding } from '../../src/files/finding.ts';
import type { PartDraft } from '../../src/files/job-file.ts';
import type { PartFile } from '../../src/files/part-file.ts';
import { readJson } from '../../src/files/read-json.ts';
import { decodedText } from '../../src/intake/decode-text.ts';
import { extentOf } from '../../src/intake/drawing-unit.ts';
import { importDrawing } from '../../src/intake/import-drawing.ts';
import { type ImportOptions, nothingSaid } from '../../src/intake/import-options.ts';
import { importedText } from '../../src/intake/import-text.ts';
import { soundPart } from '../../src/intake/sound-part.ts';
import { readDrawing } from '../../src/intake/sources.ts';
import { readPart } from '../../src/job/read-part.ts';
import { findingsText } from '../../src/words/finding-text.ts';

export interface FileToImport {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** What the part is called that outlines and holes go into; a part file brings a name of its own. */
  readonly partName: string;
  /** From where the part was seen, where its tracer has said so. */
  readonly viewedFrom?: 'face' | 'back';
  readonly options?: Partial<Omit<ImportOptions, 'name' | 'viewedFrom'>>;
}

/** What a file brings into a part, and what must be said of it; or what keeps it from being read. */
export type ImportedFile =
  | { readonly kind: 'part'; readonly part: PartDraft; readonly text: string }
  /** A drawing that does not say in what unit, and what it measures. */
  | { readonly kind: 'unit-wanted'; readonly measures: string; readonly inPixels: boolean }
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

function outlinesFrom({ name, bytes, partName, viewedFrom, options }: FileToImport): ImportedFile {
  const drawing = readDrawing(name, bytes);
  if (!drawing.ok) return refused(drawing.findings);
  if (drawing.value.unit === null && options?.units == null && options?.dpi == null)
    return { kind: 'unit-wanted', measures: extentOf(drawing.value), inPixels: drawing.value.inPixels };
  const own = { name: partName, viewedFrom: viewedFrom ?? 'face' } as const;
  const imported = importDrawing(name, drawing.value, { ...nothingSaid, ...options, ...own });
  if (!imported.ok) return refused(imported.findings);
  const sound = soundPart(name, imported.value.part);
  if (!sound.ok && !isOnlyHoles(imported.value.part, sound.findings)) return refused(sound.findings);
  const { viewedFrom: _, ...unseen } = imported.value.part;
  const part = viewedFrom === undefined ? unseen : imported.value.part;
  return { kind: 'part', part, text: importedText(imported.value, name, own.name) };
}

/** A table of holes alone is no part yet, and brings what it has. */
const isOnlyHoles = ({ sections }: PartFile, findings: readonly Finding[]): boolean =>
  sections.length === 0 && findings.every(({ at }) => at === 'sections');
