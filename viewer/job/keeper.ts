import type { JobFile } from '../../src/files/job-file.ts';
import { KeptElsewhere, neverStored, type StoredVersion, writeJob } from './storage.ts';

/** Why a job cannot be kept in the browser. */
export type WhyNotKept = 'no-room' | 'not-allowed' | 'blocked' | 'kept-elsewhere' | 'broken';

/** How far the job on screen is on the disk; `savedAt` in ms since 1970, null where nothing was changed yet. */
export type Keeping =
  | { readonly state: 'kept'; readonly savedAt: number | null }
  | { readonly state: 'keeping' }
  | { readonly state: 'cannot-keep'; readonly why: WhyNotKept; readonly said: string };

/** Keeps one job as it changes. */
export interface Keeper {
  /** Takes the job as it is now; called at every change. */
  keep(job: JobFile): void;
  /** Tries again what could not be kept. */
  retry(): void;
  /** Resolves once nothing is being written, with how that ended. */
  settled(): Promise<Keeping>;
}

/** What a keeper is told of its job, and whom it tells. */
export interface KeeperOptions {
  readonly id: string;
  readonly titleOf: (job: JobFile) => string;
  readonly openedFrom: string | null;
  /** What `openJob` knew of it; nothing for a job that is new. */
  readonly known?: StoredVersion;
  readonly onKeeping: (keeping: Keeping) => void;
  /** Where it is written; the browser's own storage where not given. */
  readonly write?: typeof writeJob;
}

/**
 * Writes never overlap: one is under way, and one waits at most, the newest. What could not be written waits as well,
 * for the next change or for `retry`; the job itself stays with the page whatever happens here.
 */
export function keeperOf({ id, titleOf, openedFrom, onKeeping, known: from, write = writeJob }: KeeperOptions): Keeper {
  let known = from ?? neverStored;
  let waiting: JobFile | null = null;
  let running: Promise<void> | null = null;
  let keeping: Keeping = { state: 'kept', savedAt: null };

  const tell = (now: Keeping): void => {
    keeping = now;
    onKeeping(now);
  };
  const written = async (job: JobFile): Promise<Keeping> => {
    const savedAt = Date.now();
    try {
      known = await write({ id, title: titleOf(job), job, savedAt, openedFrom }, known);
      return { state: 'kept', savedAt };
    } catch (error) {
      return { state: 'cannot-keep', why: whyNotKept(error), said: String(error) };
    }
  };
  const writeAll = async (): Promise<void> => {
    for (let job = waiting; job !== null; job = waiting) {
      waiting = null;
      const ended = await written(job);
      if (waiting !== null) continue;
      if (ended.state === 'cannot-keep') waiting = job;
      running = null;
      return tell(ended);
    }
  };
  const retry = (): void => {
    if (running !== null || waiting === null) return;
    running = writeAll();
    tell({ state: 'keeping' });
  };
  return {
    keep(job) {
      waiting = job;
      retry();
    },
    retry,
    async settled() {
      while (running !== null) await running;
      return keeping;
    },
  };
}

/** What kept a write from being made, as the browser tells it. */
function whyNotKept(error: unknown): WhyNotKept {
  if (error instanceof KeptElsewhere) return 'kept-elsewhere';
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  return whyByName[name] ?? 'broken';
}

const whyByName: Readonly<Record<string, WhyNotKept>> = {
  QuotaExceededError: 'no-room',
  // private windows, storage switched off, a page that may have none, or no such thing in this browser
  SecurityError: 'not-allowed',
  InvalidStateError: 'not-allowed',
  NotAllowedError: 'not-allowed',
  ReferenceError: 'not-allowed',
  TimeoutError: 'blocked',
};
