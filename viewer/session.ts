import type { JobFile } from '../src/model/job-file.ts';
import { readJobFile } from '../src/model/read-job-file.ts';
import { findingsText } from '../src/words/finding-text.ts';
import type { App } from './app.ts';
import { type FileOnDisk, readChosen, type Saved, saveJobFile } from './job/disk.ts';
import { findHome, type Home, type HomeSaved, watchHome } from './job/home.ts';
import { jobFileName } from './job/job-file-name.ts';
import { type Keeper, type Keeping, keeperOf } from './job/keeper.ts';
import { type OpenedFile, type OpenedJob, openedJob } from './job/opened-job.ts';
import { type Known, latestJob, newJobId, openJob } from './job/storage.ts';
import { type Hold, holdJob } from './job/tabs.ts';
import { words } from './words.ts';

/**
 * Where the job at hand lives: in this browser at every change, in the files it was opened from when it is saved. It opens
 * what the page was given, else what the server opened, else what was kept last.
 */
export class Session {
  readonly #app: App;
  #id = '';
  #keeper: Keeper | null = null;
  #hold: Hold | null = null;
  #home: Home | null = null;
  #file: FileOnDisk | null = null;
  #kept: JobFile | null = null;

  constructor(app: App) {
    this.#app = app;
    app.onChange(() => this.#keep());
  }

  async begin(): Promise<void> {
    const given = document.getElementById('job')?.textContent;
    const held = given ? readJobFile(words.name, given) : null;
    if (held?.ok) return this.open(held.value, null);
    this.#home = await findHome();
    if (this.#home !== null) {
      watchHome(this.#home, (state) => {
        if (state === 'changed-on-disk') this.#askOfDisk();
      });
      return this.#take(this.#home.opened, this.#home.open);
    }
    const latest = await latestJob().catch(() => null);
    if (latest !== null && this.#app.job === null) await this.#adopt(latest.kept.id, latest.kept.job, latest.known);
  }

  /** Opens a job in place of the one at hand, to be kept as a job of its own. */
  async open(job: JobFile, from: string | null): Promise<void> {
    await this.#adopt(newJobId(), job, undefined, from);
    this.#keeper?.keep(job);
  }

  async openFiles(files: Iterable<File>): Promise<void> {
    const chosen = await readChosen(files);
    if (!chosen.ok) return this.#app.tell(findingsText(chosen.findings));
    if (chosen.value.texts.length > 0) await this.#openTexts(chosen.value.texts);
  }

  async #openTexts(texts: readonly OpenedFile[]): Promise<void> {
    await this.#take(openedJob(texts, this.#app.job), null);
  }

  async #take(opened: Home['opened'], from: string | null): Promise<void> {
    if (!opened.ok) return this.#app.tell(findingsText(opened.findings));
    const { job, missing }: OpenedJob = opened.value;
    await this.open(job, from ?? opened.value.from);
    if (missing.length > 0) this.#app.tell(words.stillWanted(missing.join(', ')));
  }

  async #adopt(id: string, job: JobFile, known?: Known, openedFrom: string | null = null): Promise<void> {
    this.#hold?.release();
    this.#id = id;
    this.#kept = job;
    this.#keeper = keeperOf({
      id,
      titleOf: ({ fit }) => fit.title ?? '',
      openedFrom,
      ...(known === undefined ? {} : { known }),
      onKeeping: (keeping) => this.#tellKeeping(keeping),
    });
    this.#app.open(
      job,
      Object.values(job.parts).every(({ sections }) => sections.length > 0) ? 'offer-up' : 'outlines',
    );
    this.#hold = await holdJob(id, {
      onHeld: (held) => {
        if (held === 'elsewhere') this.#askToTakeOver();
      },
      onKept: () => {},
      beforeGiving: () => this.#keeper?.settled() ?? Promise.resolve(),
    });
    if (this.#hold.held() === 'elsewhere') this.#askToTakeOver();
  }

  #keep(): void {
    const { job } = this.#app;
    if (job === null || job === this.#kept || this.#hold?.held() === 'elsewhere') return;
    this.#kept = job;
    this.#keeper?.keep(job);
  }

  #tellKeeping(keeping: Keeping): void {
    if (keeping.state === 'kept') this.#hold?.tellKept();
    this.#app.tell(
      keeping.state === 'cannot-keep'
        ? words.cannotKeep[keeping.why]
        : keeping.state === 'keeping'
          ? words.keeping
          : words.kept,
    );
  }

  #askToTakeOver(): void {
    const choose = async (): Promise<void> => {
      await this.#hold?.takeOver();
      const latest = await openJob(this.#id);
      if (latest !== null) await this.#adopt(this.#id, latest.kept.job, latest.known);
    };
    this.#app.put(words.elsewhere, [{ label: words.takeOver, choose }]);
  }

  /** Saves in place where the page has its files, else as one job file. */
  async save(): Promise<void> {
    const { job } = this.#app;
    if (job === null) return;
    if (this.#home !== null) this.#tellHome(await this.#home.save(job));
    else await this.saveAsJob();
  }

  async saveAsJob(): Promise<void> {
    const { job } = this.#app;
    if (job === null) return;
    const saved = await saveJobFile(job, this.#file);
    if (saved.how === 'written') this.#file = saved.file;
    this.#app.tell(savedWords(saved, job));
  }

  #tellHome({ saved, notSaved, onlyInJob, moreInJob }: HomeSaved): void {
    const troubles = notSaved.map((trouble) =>
      words.notSaved(
        trouble.file,
        trouble.why === 'refused'
          ? trouble.said
          : trouble.why === 'unreachable'
            ? words.unreachable
            : words.changedOnDisk,
      ),
    );
    const more = onlyInJob.length > 0 || moreInJob ? [words.onlyInJob] : [];
    this.#app.tell([...(troubles.length > 0 ? troubles : [words.saved(saved.join(', '))]), ...more].join(' '));
    if (notSaved.some(({ why }) => why === 'changed-on-disk')) this.#askOfDisk();
    else if (more.length > 0)
      this.#app.put(words.onlyInJob, [{ label: words.saveAsJob, choose: () => this.saveAsJob() }]);
  }

  #askOfDisk(): void {
    this.#app.put(words.changedOnDisk, [
      {
        label: words.loadDisk,
        choose: async () => {
          const read = await this.#home?.reload();
          if (read) await this.#take(read, this.#home?.open ?? null);
        },
      },
      {
        label: words.saveOver,
        choose: async () => {
          const { job } = this.#app;
          if (job !== null && this.#home !== null) this.#tellHome(await this.#home.saveOver(job));
        },
      },
    ]);
  }
}

function savedWords(saved: Saved, job: JobFile): string {
  switch (saved.how) {
    case 'written':
      return words.saved(saved.name);
    case 'downloaded':
      return words.downloaded(saved.name);
    case 'called-off':
      return '';
    case 'too-large':
      return words.tooLarge;
    case 'failed':
      return words.notSaved(jobFileName(job), saved.said);
  }
}
