import { trialEnding } from '../../src/files/file-endings.ts';
import type { Reading } from '../../src/files/finding.ts';
import type { JobFile } from '../../src/files/job-file.ts';
import { fieldOf, listOf, textOf } from '../../src/files/raw-value.ts';
import type { HomeTexts } from '../heavy/home-texts.ts';
import type { OpenedFile, OpenedJob, OpenedTrial } from '../heavy/opened-job.ts';

/** Whether the files the job was opened from are still as this page last read or wrote them. */
export type HomeState = 'same' | 'changed-on-disk';

/** A file that was not saved, and is on the disk as it was. */
export type SaveFailure =
  | { readonly file: string; readonly why: 'changed-on-disk' | 'unreachable' }
  | { readonly file: string; readonly why: 'refused'; readonly said: string };

/** How saving went; a part or a picture that only a job file can hold is not lost, but not in these files. */
export interface HomeSaveResult {
  readonly saved: readonly string[];
  readonly notSaved: readonly SaveFailure[];
  readonly onlyInJob: readonly string[];
  readonly moreInJob: boolean;
}

/** The files that the page's own server opened, on this machine's disk. */
export interface Home {
  /** The file that was opened: a job, or a fit. */
  readonly open: string;
  readonly opened: Reading<OpenedJob>;
  state(): HomeState;
  /** Saves in place whatever was changed here; a file that was changed on the disk too is left as it is. */
  save(job: JobFile): Promise<HomeSaveResult>;
  /** Saves over what was changed on the disk: the builder has been asked. */
  saveOver(job: JobFile): Promise<HomeSaveResult>;
  /** Reads the files anew; what is there is then what this page goes by. Null where the server does not answer. */
  reload(): Promise<Reading<OpenedJob> | null>;
  /** Looks whether anything was changed on the disk. */
  look(): Promise<HomeState>;
}

type Ask = (address: string, options?: RequestInit) => Promise<Response>;

interface Standing extends OpenedFile {
  readonly version: string;
}

const readAnew: RequestInit = { cache: 'no-store' };

/** What reads files as a job, and writes a job as files; elsewhere, since both may be large. */
export interface JobFiles {
  opened(files: readonly OpenedFile[], present: JobFile | null): Promise<Reading<OpenedJob>>;
  homeTexts(job: JobFile, open: string, served: readonly string[], trial: OpenedTrial | null): Promise<HomeTexts>;
}

/** The files behind a page that is served; null where it was opened from a disk, or nothing is open. */
export async function findHome(reader: JobFiles, ask: Ask = fetch, protocol = location.protocol): Promise<Home | null> {
  const found = /^https?:$/.test(protocol) ? await askedJob(ask) : null;
  return found === null ? null : homeOf(found.open, found.files, reader, ask);
}

async function homeOf(open: string, files: readonly Standing[], reader: JobFiles, ask: Ask): Promise<Home> {
  /** The version of each file on the disk as far as this page knows, and its text as this page would write it. */
  const versions = new Map<string, string>();
  const texts = new Map<string, string>();
  let trial: OpenedTrial | null = null;
  let state: HomeState = 'same';
  let turn: Promise<unknown> = Promise.resolve();
  // one thing after the other: a look in the middle of saving would take our own change for another's
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const next = turn.then(work);
    turn = next.catch(() => {});
    return next;
  };

  const take = async (standing: readonly Standing[]): Promise<Reading<OpenedJob>> => {
    state = 'same';
    versions.clear();
    texts.clear();
    const opened = await reader.opened(standing, null);
    trial = (opened.ok && opened.value.trial) || null;
    for (const { name, version } of standing) if (isOurs(name)) versions.set(name, version);
    if (opened.ok) for (const [name, text] of (await textsOf(opened.value.job)).texts) texts.set(name, text);
    return opened;
  };
  const textsOf = (job: JobFile): Promise<HomeTexts> => reader.homeTexts(job, open, [...versions.keys()], trial);
  /** Trial files that were not opened are left alone, whatever becomes of them. */
  const isOurs = (name: string): boolean => !name.endsWith(trialEnding) || name === trial?.name;

  const put = async (name: string, text: string): Promise<SaveFailure | null> => {
    const answer = await asked(ask, `file/${encodeURIComponent(name)}`, {
      method: 'PUT',
      headers: { 'If-Match': `"${versions.get(name)}"`, 'Content-Type': 'application/json' },
      body: text,
    });
    const version = textOf(answer?.body, 'version');
    if (answer === null) return { file: name, why: 'unreachable' };
    if (answer.status === 200 && version !== undefined) {
      versions.set(name, version);
      texts.set(name, text);
      return null;
    }
    if (answer.status === 412) return (await stands(name, text)) ? null : changed(name);
    return { file: name, why: 'refused', said: textOf(answer.body, 'text') ?? `${answer.status}` };
  };
  /** Whether the disk holds this very text already: a reply to an earlier save may have been lost on its way. */
  const stands = async (name: string, text: string): Promise<boolean> => {
    const there = (await askedJob(ask))?.files.find((file) => file.name === name);
    if (there === undefined || there.text !== text) return false;
    versions.set(name, there.version);
    texts.set(name, text);
    return true;
  };
  const changed = (file: string): SaveFailure => {
    state = 'changed-on-disk';
    return { file, why: 'changed-on-disk' };
  };

  const save = async (job: JobFile): Promise<HomeSaveResult> => {
    const made = await textsOf(job).catch((error: unknown) => String(error));
    if (typeof made === 'string')
      return { saved: [], notSaved: [{ file: open, why: 'refused', said: made }], onlyInJob: [], moreInJob: false };
    const { texts: wanted, onlyInJob, moreInJob } = made;
    const saved: string[] = [];
    const notSaved: SaveFailure[] = [];
    for (const [name, text] of wanted) {
      if (texts.get(name) === text) continue;
      const trouble = await put(name, text);
      if (trouble === null) saved.push(name);
      else notSaved.push(trouble);
    }
    return { saved, notSaved, onlyInJob, moreInJob };
  };
  const look = async (): Promise<HomeState> => {
    const answer = await asked(ask, 'versions', readAnew);
    if (answer?.status !== 200) return state;
    const same = [...versions].every(([name, version]) => fieldOf(answer.body, name) === version);
    state = same ? 'same' : 'changed-on-disk';
    return state;
  };
  /** What the disk holds now may be written over, wherever it is not what this page knows. */
  const takeVersions = async (): Promise<void> => {
    for (const { name, version } of (await askedJob(ask))?.files ?? []) {
      if (!isOurs(name)) continue;
      if (versions.get(name) !== version) texts.delete(name);
      versions.set(name, version);
    }
    state = 'same';
  };

  return {
    open,
    opened: await take(files),
    state: () => state,
    save: (job) => inTurn(() => save(job)),
    saveOver: (job) => inTurn(() => takeVersions().then(() => save(job))),
    reload: () =>
      inTurn(async () => {
        const found = await askedJob(ask);
        return found === null ? null : take(found.files);
      }),
    look: () => inTurn(look),
  };
}

/** How often a page that is looked at looks at the disk, ms. */
const lookEveryMs = 3000;

/** Looks at the disk while the page is looked at, and tells when that changes; the function given back ends it. */
export function watchHome(home: Home, onState: (state: HomeState) => void): () => void {
  let told = home.state();
  const look = async (): Promise<void> => {
    if (document.visibilityState !== 'visible') return;
    const state = await home.look();
    if (state !== told) onState(state);
    told = state;
  };
  const timer = setInterval(look, lookEveryMs);
  window.addEventListener('focus', look);
  document.addEventListener('visibilitychange', look);
  return () => {
    clearInterval(timer);
    window.removeEventListener('focus', look);
    document.removeEventListener('visibilitychange', look);
  };
}

/** What is open at the server; null where it is no server of ours, or nothing is. */
async function askedJob(ask: Ask): Promise<{ open: string; files: Standing[] } | null> {
  const answer = await asked(ask, 'job', readAnew);
  const open = answer?.status === 200 ? textOf(answer.body, 'open') : undefined;
  if (open === undefined) return null;
  const files = listOf(answer?.body, 'files').flatMap((file) => {
    const [name, text, version] = ['name', 'text', 'version'].map((key) => textOf(file, key));
    return name === undefined || text === undefined || version === undefined ? [] : [{ name, text, version }];
  });
  return { open, files };
}

/** An answer with its JSON; null where none came. */
async function asked(
  ask: Ask,
  address: string,
  options: RequestInit,
): Promise<{ status: number; body: unknown } | null> {
  try {
    const response = await ask(address, options);
    return { status: response.status, body: await response.json().catch(() => null) };
  } catch {
    return null;
  }
}
