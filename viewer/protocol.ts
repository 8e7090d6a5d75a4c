import type { JobFile } from '../src/files/job-file.ts';
import type { Question, Reply } from './heavy/questions.ts';
import { packedPart, unpackedPart } from './packed.ts';

/**
 * What comes in at a worker: a question with its number, and what of the job has changed since the last one; or the
 * number of a question that is no longer wanted.
 */
export type Call =
  | { readonly id: number; readonly question: Question; readonly patch: JobPatch | null }
  | { readonly drop: number };

/**
 * What goes out: replies, and the end of each question, answered or dropped, with its last reply where there is one; an
 * end that is not empty says what went wrong.
 */
export type WorkerMessage =
  | { readonly id: number; readonly reply: Reply; readonly end?: string }
  | { readonly id: number; readonly reply?: never; readonly end: string };

/** How a job came to be another; only of what answers are made from. */
export interface JobPatch {
  /** Left out where it is as it was. */
  readonly fit?: JobFile['fit'];
  /** By name every part there is now, as its text, null where it is as it was; left out where all are. */
  readonly parts?: Readonly<Record<string, string | null>>;
}

/** What a worker that has a job must be sent to have the next one; null where it is the same to it. */
export function patchOf(had: JobFile | null, { fit, parts }: JobFile): JobPatch | null {
  if (fit === had?.fit && parts === had.parts) return null;
  const changed = Object.entries(parts).map(([name, part]) => {
    const isSame = had?.parts[name] === part;
    return [name, isSame ? null : packedPart(part)] as const;
  });
  return {
    ...(fit === had?.fit ? {} : { fit }),
    ...(parts === had?.parts ? {} : { parts: Object.fromEntries(changed) }),
  };
}

/** The job after a patch: what is as it was is the very same object, so that what was worked out of it still holds. */
export function patched(had: JobFile | null, patch: JobPatch | null): JobFile | null {
  if (patch === null) return had;
  const fit = patch.fit ?? had?.fit;
  const parts = patch.parts === undefined ? had?.parts : partsAfter(had?.parts ?? {}, patch.parts);
  if (fit === undefined || parts === undefined) throw new Error('a job must be sent whole before it is changed');
  return { format: 'fettle-job/1', fit, parts };
}

function partsAfter(had: JobFile['parts'], now: NonNullable<JobPatch['parts']>): JobFile['parts'] {
  const parts = Object.entries(now).map(
    ([name, part]) => [name, part === null ? had[name] : unpackedPart(part)] as const,
  );
  return Object.fromEntries(parts.flatMap(([name, part]) => (part === undefined ? [] : [[name, part]])));
}

/** A newer question takes the place of an older one in its lane, and of no other: each file and output has one of its own. */
export function laneOf(question: Question): string {
  switch (question.kind) {
    case 'make':
      return `make ${question.what.as} ${question.what.paper}`;
    case 'import':
      return `import ${question.file.name}`;
    case 'bench':
      return `bench ${question.asked.what}`;
    default:
      return question.kind;
  }
}
