import type { JobFile } from '../../src/files/job-file.ts';
import { type PackedJob, packed, unpacked } from '../packed.ts';
import { picturesOf, resultOf, transact } from './database.ts';

/** A job as the browser keeps it; `savedAt` in ms since 1970. */
export interface KeptJob {
  readonly id: string;
  readonly title: string;
  readonly job: JobFile;
  readonly savedAt: number;
  /** The name of the file it was opened from; null where it was begun here. */
  readonly openedFrom: string | null;
}

/** A kept job without the job itself, for a list. */
export type KeptTitle = Omit<KeptJob, 'job'>;

/** What was last read or written of a job: which write it was, and the bytes of each picture then, by id. */
export interface StoredVersion {
  readonly write: string | null;
  readonly pictures: ReadonlyMap<string, string>;
}

/** Of a job that was never kept. */
export const neverStored: StoredVersion = { write: null, pictures: new Map() };

/** Another tab has kept this job since it was last read or written here; it was not written over. */
export class KeptElsewhere extends Error {}

/**
 * Where a job lies: without the bytes of its pictures, which are written once and not with every edit, and packed, since
 * copying it point by point would hold the hand up at every edit. Earlier pages kept it as it is.
 */
interface Row extends KeptTitle {
  readonly job: PackedJob | JobFile;
  readonly write: string;
}

export const newJobId = (): string => crypto.randomUUID();

/**
 * Puts a job on the disk, whole: resolves once it is there, to what is then known of it. Rejects with `KeptElsewhere`
 * where another write than the known one stands there, or with what the browser says; nothing is changed then.
 */
export async function writeJob(kept: KeptJob, known: StoredVersion): Promise<StoredVersion> {
  const write = crypto.randomUUID();
  const now: StoredVersion = { write, pictures: bytesOf(kept.job) };
  await transact('readwrite', async (jobs, pictures) => {
    const standing: Row | undefined = await resultOf(jobs.get(kept.id));
    // a job that was put out of the way meanwhile is no reason to lose what is here
    if (standing !== undefined && standing.write !== known.write) throw new KeptElsewhere();
    const before = standing === undefined ? neverStored.pictures : known.pictures;
    for (const [id, data] of now.pictures) if (before.get(id) !== data) pictures.put(data, [kept.id, id]);
    for (const id of before.keys()) if (!now.pictures.has(id)) pictures.delete([kept.id, id]);
    const row: Row = { ...kept, job: packed(withoutBytes(kept.job)), write };
    await resultOf(jobs.put(row));
  });
  if (known.write === null) askToStay();
  return now;
}

/** Asks the browser not to clear the storage away when its disk fills up; whatever it answers, the job is kept now. */
function askToStay(): void {
  navigator.storage?.persist?.().catch(() => {});
}

/** A kept job with the bytes of its pictures; null where there is none of that id. */
export function openJob(id: string): Promise<{ kept: KeptJob; known: StoredVersion } | null> {
  return transact('readonly', async (jobs, pictures) => {
    const row: Row | undefined = await resultOf(jobs.get(id));
    if (row === undefined) return null;
    const keys = (await resultOf(pictures.getAllKeys(picturesOf(id)))) as [string, string][];
    const bytes: string[] = await resultOf(pictures.getAll(picturesOf(id)));
    const known = { write: row.write, pictures: new Map(keys.map(([, picture], i) => [picture, bytes[i] ?? ''])) };
    const { write, ...kept } = row;
    return { kept: { ...kept, job: withBytes(unpacked(row.job), known.pictures) }, known };
  });
}

/** Every kept job, the latest first. */
export const listJobs = (): Promise<readonly KeptTitle[]> =>
  transact('readonly', async (jobs) => {
    const rows: Row[] = await resultOf(jobs.getAll());
    return rows.map(({ job, write, ...title }) => title).sort((a, b) => b.savedAt - a.savedAt);
  });

/** The job that was kept last. */
export async function latestJob(): ReturnType<typeof openJob> {
  const [latest] = await listJobs();
  return latest === undefined ? null : openJob(latest.id);
}

/** Takes a kept job off the disk, with its pictures. */
export const forget = (id: string): Promise<void> =>
  transact('readwrite', async (jobs, pictures) => {
    jobs.delete(id);
    await resultOf(pictures.delete(picturesOf(id)));
  });

const bytesOf = ({ pictures = [] }: JobFile): Map<string, string> =>
  new Map(pictures.map(({ id, data }) => [id, data]));

const withoutBytes = (job: JobFile): JobFile => withBytes(job, new Map());

function withBytes(job: JobFile, bytes: ReadonlyMap<string, string>): JobFile {
  if (job.pictures === undefined) return job;
  return { ...job, pictures: job.pictures.map((picture) => ({ ...picture, data: bytes.get(picture.id) ?? '' })) };
}
