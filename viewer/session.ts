import { effect, untracked } from '@preact/signals';
import { jobEnding, partEnding, trialEnding } from '../src/files/file-endings.ts';
import type { JobFile } from '../src/files/job-file.ts';
import { vec } from '../src/geometry/plane/vec.ts';
import { findingsText, findingText } from '../src/words/finding-text.ts';
import type { App } from './app.ts';
import type { FileToImport, ImportedFile } from './heavy/import-file.ts';
import type { OpenedFile, OpenedJob } from './heavy/opened-job.ts';
import { type FileOnDisk, readChosen, saveJobFile } from './job/disk.ts';
import { findHome, type Home, type HomeSaveResult, watchHome } from './job/home.ts';
import { type Keeper, type Keeping, keeperOf } from './job/keeper.ts';
import { newJob } from './job/new-job.ts';
import { freshPictureId, withPicture } from './job/picture-edits.ts';
import { latestJob, newJobId, openJob, type StoredVersion } from './job/storage.ts';
import { type Hold, holdJob } from './job/tabs.ts';
import { withTrial } from './job/trial-edits.ts';
import { withImported } from './job/with-imported.ts';
import { broughtPicture, isPicture } from './steps/photo/add-picture.ts';
import { keepingWords } from './words/keeping.ts';
import { trialWords } from './words/trial.ts';
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
  /** Another tab has kept the job since: the next change begins a job of its own. */
  #elsewhere = false;

  constructor(app: App) {
    this.#app = app;
    effect(() => {
      const job = app.job.now.value;
      untracked(() => this.#keep(job));
    });
  }

  async begin(): Promise<void> {
    const given = document.getElementById('job')?.textContent;
    const file = { name: `${words.name}${jobEnding}`, text: given ?? '' };
    const held = given ? await this.#app.answers.opened([file], null) : null;
    if (held?.ok) return this.open(held.value.job, null);
    this.#home = await findHome(this.#app.answers);
    if (this.#home !== null) {
      watchHome(this.#home, (state) => {
        if (state === 'changed-on-disk') this.#askOfDisk();
      });
      return this.#take(this.#home.opened, this.#home.open);
    }
    const latest = await latestJob().catch(() => null);
    if (latest !== null && this.#app.job.now.value === null)
      await this.#adopt(latest.kept.id, latest.kept.job, latest.known);
  }

  /** Opens a job in place of the one at hand, to be kept as a job of its own. */
  async open(job: JobFile, from: string | null): Promise<void> {
    await this.#adopt(newJobId(), job, undefined, from);
    this.#keeper?.keep(job);
  }

  /** A worked job to look at. */
  async openDemo(): Promise<void> {
    await this.#take(await this.#app.answers.opened('demo', null), null);
  }

  async openFiles(files: Iterable<File>): Promise<void> {
    const chosen = await readChosen(files);
    if (!chosen.ok) return this.#app.notices.tell(findingsText(chosen.findings));
    const isTrial = ({ name }: OpenedFile): boolean => name.endsWith(trialEnding);
    const texts = chosen.value.texts.filter((file) => !isTrial(file));
    if (texts.length > 0) await this.#openTexts(texts);
    for (const file of chosen.value.texts.filter(isTrial)) await this.#bringTrial(file);
    for (const other of chosen.value.others)
      await (isPicture(other) ? this.#bringPicture(other) : this.#bringIn(other));
  }

  /** The outlines of a drawing or a table, into the part that is traced. */
  async #bringIn(file: File): Promise<void> {
    if (this.#app.job.now.value === null) await this.open(newJob(words.newParts), null);
    const name = this.#app.reader.part.value;
    const part = this.#app.job.now.value?.parts[name];
    if (part === undefined) return;
    await this.#bringInto(name, { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()), options: {} });
  }

  async #bringInto(name: string, file: Pick<FileToImport, 'name' | 'bytes' | 'options'>): Promise<void> {
    const job = this.#app.job.now.value;
    const part = job?.parts[name];
    if (job === null || part === undefined) return;
    const { axis } = job.fit;
    const about = job.fit.fixed === name && typeof axis !== 'string' ? vec(...axis) : vec(0, 0);
    const seen = part.viewedFrom === undefined ? {} : { viewedFrom: part.viewedFrom };
    const options = { ...file.options, proposeHoles: { axis: about } };
    const id = this.#id;
    const brought = await this.#app.answers.imported({ ...file, ...seen, partName: part.name, options });
    // what was changed of the part meanwhile stays; into another job it does not go
    const present = this.#id === id ? this.#app.job.now.value?.parts[name] : undefined;
    if (brought === null || present === undefined) return;
    if (brought.kind === 'unit-wanted') return this.#askUnit(name, file, brought);
    if (brought.kind === 'part') {
      const isPart = file.name.toLowerCase().endsWith(partEnding);
      const whole = withImported(present, isPart ? brought.part : { ...brought.part, name: present.name });
      if (whole === null) return this.#app.notices.tellRead(words.otherSide(file.name));
      this.#app.job.edit((now) => ({ ...now, parts: { ...now.parts, [name]: whole } }));
    }
    this.#app.reader.step.value = 'outlines';
    this.#app.notices.tellRead(brought.text);
  }

  /** A file without a unit is never guessed at. */
  #askUnit(
    name: string,
    { name: fileName, bytes }: Pick<FileToImport, 'name' | 'bytes'>,
    { measures, inPixels }: Extract<ImportedFile, { readonly kind: 'unit-wanted' }>,
  ): void {
    const choice = (label: string, options: NonNullable<FileToImport['options']>) => ({
      label,
      choose: () => this.#bringInto(name, { name: fileName, bytes, options }),
    });
    this.#app.notices.put(words.unitWanted(fileName, measures), [
      choice(words.inMm, { units: 'mm' }),
      choice(words.inInches, { units: 'in' }),
      ...(inPixels ? [96, 90].map((dpi) => choice(words.dotsAnInch(dpi), { dpi })) : []),
    ]);
  }

  /** A photograph, for the part that is traced; it is set straight next. */
  async #bringPicture(file: File): Promise<void> {
    if (this.#app.job.now.value === null) await this.open(newJob(words.newParts), null);
    const job = this.#app.job.now.value;
    if (job === null) return;
    const brought = await broughtPicture(job, this.#app.reader.part.value, file);
    if (!brought.ok) return this.#app.notices.tell(brought.text);
    const id = freshPictureId(job);
    this.#app.job.edit((now) => withPicture(now, id, brought.picture));
    this.#app.reader.step.value = 'outlines';
    this.#app.reader.picture.value = id;
  }

  /** Trial fits, into the job they are of. */
  async #bringTrial(file: OpenedFile): Promise<void> {
    if (this.#app.job.now.value === null) return this.#app.notices.tell(trialWords.noJob(file.name));
    const id = this.#id;
    const read = await this.#app.answers.trial.read(file);
    if (!read.ok) return this.#app.notices.tell(findingsText(read.findings));
    if (this.#id !== id) return;
    this.#app.job.edit((now) => withTrial(now, read.value));
    this.#app.reader.step.value = 'trial-fit';
  }

  async #openTexts(texts: readonly OpenedFile[]): Promise<void> {
    await this.#take(await this.#app.answers.opened(texts, this.#app.job.now.value), null);
  }

  async #take(opened: Home['opened'], from: string | null): Promise<void> {
    if (!opened.ok) return this.#app.notices.tell(findingsText(opened.findings));
    const { job, missing, trial }: OpenedJob = opened.value;
    await this.open(job, from ?? opened.value.from);
    const said = [
      ...(missing.length > 0 ? [keepingWords.missing(missing)] : []),
      ...(trial?.as === null ? [trialWords.notOpened(findingText(trial.fault))] : []),
    ];
    if (said.length > 0) this.#app.notices.tell(said.join(' '));
  }

  async #adopt(id: string, job: JobFile, known?: StoredVersion, openedFrom: string | null = null): Promise<void> {
    this.#hold?.release();
    this.#id = id;
    this.#kept = job;
    this.#elsewhere = false;
    this.#keeper = this.#keeperOf(id, known, openedFrom);
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

  #keeperOf(id: string, known?: StoredVersion, openedFrom: string | null = null): Keeper {
    return keeperOf({
      id,
      titleOf: ({ fit }) => fit.title ?? '',
      openedFrom,
      ...(known === undefined ? {} : { known }),
      onKeeping: (keeping) => this.#tellKeeping(keeping),
    });
  }

  #keep(job: JobFile | null): void {
    if (job === null || job === this.#kept) return;
    this.#kept = job;
    this.#app.notices.tell('');
    // what another tab holds is left to it: from here on this is a job of its own
    if (this.#hold?.held() === 'elsewhere' || this.#elsewhere) {
      this.#elsewhere = false;
      this.#hold?.release();
      this.#hold = null;
      this.#keeper = this.#keeperOf(newJobId());
    }
    this.#keeper?.keep(job);
  }

  #tellKeeping(keeping: Keeping): void {
    if (keeping.state === 'kept') this.#hold?.tellKept();
    if (keeping.state === 'cannot-keep') {
      this.#elsewhere = keeping.why === 'kept-elsewhere';
      this.#app.notices.put(keepingWords.keeping(keeping), [
        { label: keepingWords.retry, choose: () => this.#keeper?.retry() },
        { label: words.saveAsJob, choose: () => this.saveAsJob() },
      ]);
    } else this.#app.notices.tellKeeping(keepingWords.keeping(keeping));
  }

  #askToTakeOver(): void {
    const choose = async (): Promise<void> => {
      await this.#hold?.takeOver();
      const latest = await openJob(this.#id);
      if (latest !== null) await this.#adopt(this.#id, latest.kept.job, latest.known);
    };
    this.#app.notices.put(keepingWords.elsewhere, [{ label: keepingWords.takeOver, choose }]);
  }

  /** Saves in place where the page has its files, else as one job file. */
  async save(): Promise<void> {
    const job = this.#app.job.now.value;
    if (job === null) return;
    if (this.#home !== null) this.#tellHome(await this.#home.save(job));
    else await this.saveAsJob();
  }

  async saveAsJob(): Promise<void> {
    const job = this.#app.job.now.value;
    if (job === null) return;
    const saved = await saveJobFile(job, this.#file);
    if (saved.how === 'written') this.#file = saved.file;
    this.#app.notices.tell(keepingWords.saved(saved));
  }

  #tellHome(saved: HomeSaveResult): void {
    const said = keepingWords.savedHome(saved);
    this.#app.notices.tell(said === '' ? words.nothingToSave : said);
    if (saved.notSaved.some(({ why }) => why === 'changed-on-disk')) this.#askOfDisk();
    else if (saved.onlyInJob.length > 0 || saved.moreInJob)
      this.#app.notices.put(said, [{ label: words.saveAsJob, choose: () => this.saveAsJob() }]);
  }

  #askOfDisk(): void {
    this.#app.notices.put(keepingWords.changedOnDisk, [
      {
        label: keepingWords.reload,
        choose: async () => {
          const read = await this.#home?.reload();
          if (read) await this.#take(read, this.#home?.open ?? null);
        },
      },
      {
        label: keepingWords.saveOver,
        choose: async () => {
          const job = this.#app.job.now.value;
          if (job !== null && this.#home !== null) this.#tellHome(await this.#home.saveOver(job));
        },
      },
    ]);
  }
}
