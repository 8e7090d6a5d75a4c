import type { JobFile, PartDraft } from '../src/files/job-file.ts';

/** A job on its way to another thread: each part one text, which is copied whole and not point by point. */
export type PackedJob = Omit<JobFile, 'parts'> & { readonly parts: Readonly<Record<string, string>> };

/** The texts that parts came in, for as long as those are in use. */
const texts = new WeakMap<PartDraft, string>();

export const packedPart = (part: PartDraft): string => texts.get(part) ?? JSON.stringify(part);

export function unpackedPart(text: string): PartDraft {
  const part: PartDraft = JSON.parse(text);
  texts.set(part, text);
  return part;
}

export const packed = (job: JobFile): PackedJob => ({ ...job, parts: eachOf(job.parts, packedPart) });

/** The job again; a part that was not packed stays as it is. */
export const unpacked = (job: PackedJob | JobFile): JobFile => ({
  ...job,
  parts: eachOf<string | PartDraft, PartDraft>(job.parts, (part) =>
    typeof part === 'string' ? unpackedPart(part) : part,
  ),
});

const eachOf = <A, B>(parts: Readonly<Record<string, A>>, make: (part: A) => B): Record<string, B> =>
  Object.fromEntries(Object.entries(parts).map(([name, part]) => [name, make(part)]));
