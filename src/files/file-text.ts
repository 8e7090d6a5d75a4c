import type { FitFile } from './fit-file.ts';
import type { JobFile, PartDraft } from './job-file.ts';
import { jsonText } from './json-text.ts';
import type { StackFile } from './stack-file.ts';
import type { TrialFile } from './trial-file.ts';

type File = PartDraft | FitFile | JobFile | TrialFile | StackFile;

/** The `$id` of the JSON Schema of each kind of file: a name for it, and no address. */
export const schemaIds: Readonly<Record<File['format'], string>> = {
  'fettle-part/1': 'urn:fettle:part:1',
  'fettle-fit/1': 'urn:fettle:fit:1',
  'fettle-job/1': 'urn:fettle:job:1',
  'fettle-trial/1': 'urn:fettle:trial:1',
  'fettle-stack/1': 'urn:fettle:stack:1',
};

/** A file as it is written: its `$schema` first, the one it came with where it came with one. */
export const fileText = (file: File): string => jsonText({ $schema: schemaIds[file.format], ...file });
