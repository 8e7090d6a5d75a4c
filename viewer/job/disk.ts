import { fileText } from '../../src/files/file-text.ts';
import type { Finding, Reading } from '../../src/files/finding.ts';
import type { JobFile } from '../../src/files/job-file.ts';
import { mostCharacters } from '../../src/files/read-json.ts';
import type { OpenedFile } from '../heavy/opened-job.ts';
import type { MadeFile } from '../heavy/questions.ts';
import { jobFileName } from './job-file-name.ts';

/** Files that were chosen or dropped: those of Fettle as texts, and the others as they are (drawings, pictures). */
export interface ChosenFiles {
  readonly texts: readonly OpenedFile[];
  readonly others: readonly File[];
}

/** A file on this machine that may be written again without asking, where the browser has such a thing. */
export type FileOnDisk = FileSystemFileHandle;

/** How saving a job as a file ended; whatever it was, the job on screen is as it was. */
export type SaveResult =
  /** Written, and closed without fault. */
  | { readonly how: 'written'; readonly name: string; readonly file: FileOnDisk }
  /** Handed to the browser as a download; what becomes of it the page is not told. */
  | { readonly how: 'downloaded'; readonly name: string }
  | { readonly how: 'called-off' }
  | { readonly how: 'too-large' }
  | { readonly how: 'failed'; readonly said: string };

/** Reads the files of Fettle among those chosen; one that cannot be read is a finding. */
export async function readChosen(files: Iterable<File>): Promise<Reading<ChosenFiles>> {
  const all = [...files];
  const ours = all.filter(({ name }) => name.endsWith('.json'));
  const read = await Promise.all(ours.map(textOf));
  const findings = read.flatMap((text) => (text.ok ? [] : text.findings));
  if (findings.length > 0) return { ok: false, findings };
  const texts = read.flatMap((text) => (text.ok ? [text.value] : []));
  return { ok: true, value: { texts, others: all.filter((file) => !ours.includes(file)) } };
}

async function textOf(file: File): Promise<Reading<OpenedFile>> {
  const refused = (found: string, expected: string): Reading<never> => ({
    ok: false,
    findings: [{ file: file.name, at: '', found, expected } satisfies Finding],
  });
  // a character takes four bytes at most
  if (file.size > 4 * mostCharacters) return refused(`${file.size} bytes`, `at most ${mostCharacters} characters`);
  try {
    return { ok: true, value: { name: file.name, text: await file.text() } };
  } catch (error) {
    return refused(`a file that could not be read (${nameOf(error)})`, 'a file that may be read, and is not moved');
  }
}

/** The text of a job file; null where it would be larger than what can be opened again. */
export function jobText(job: JobFile): string | null {
  const text = fileText(job);
  return text.length <= mostCharacters ? text : null;
}

/**
 * Saves a job as one file: into `file` where it was saved before, else where the builder says, else as a download.
 * A file that stood there is only replaced by a whole one.
 */
export async function saveJobFile(job: JobFile, file: FileOnDisk | null = null): Promise<SaveResult> {
  const text = jobText(job);
  if (text === null) return { how: 'too-large' };
  try {
    const chosen = file ?? (await pick(jobFileName(job)));
    if (chosen !== null) return await write(text, chosen);
    const name = jobFileName(job);
    download({ name, mediaType: 'application/json', data: text });
    return { how: 'downloaded', name };
  } catch (error) {
    return nameOf(error) === 'AbortError' ? { how: 'called-off' } : { how: 'failed', said: String(error) };
  }
}

interface WithPicker {
  readonly showSaveFilePicker?: (options: object) => Promise<FileOnDisk>;
}

async function pick(suggestedName: string): Promise<FileOnDisk | null> {
  const { showSaveFilePicker } = window as WithPicker;
  const types = [{ accept: { 'application/json': ['.json'] } }];
  return (await showSaveFilePicker?.({ id: 'fettle', suggestedName, types })) ?? null;
}

async function write(text: string, file: FileOnDisk): Promise<SaveResult> {
  // the browser writes beside the file, and puts that in its place only when it is closed
  const stream = await file.createWritable();
  try {
    await stream.write(text);
    await stream.close();
  } catch (error) {
    await stream.abort().catch(() => {});
    // an end of the writing is no wish of the builder's
    return { how: 'failed', said: String(error) };
  }
  return { how: 'written', name: file.name, file };
}

/** Hands a file to the browser as a download. */
export function download({ name, mediaType, data }: MadeFile): void {
  const address = URL.createObjectURL(new Blob([data], { type: mediaType }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // the browser fetches it after this; a minute is more than it takes
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

const nameOf = (error: unknown): string => (error instanceof Error ? error.name : String(error));
