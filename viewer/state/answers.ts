import { batch, computed, signal } from '@preact/signals';
import type { TravelCurve } from '../../src/clearance/travel-curve.ts';
import type { SeenFrom } from '../../src/drawing/fit/side-profile.ts';
import type { SvgNode } from '../../src/drawing/svg/svg-marks.ts';
import type { Finding, Reading } from '../../src/files/finding.ts';
import type { JobFile } from '../../src/files/job-file.ts';
import type { LoopFile } from '../../src/files/part-file.ts';
import type { Progress } from '../../src/geometry/progress.ts';
import { Core, lastReply, nothingSaid } from '../core.ts';
import CoreWorker from '../core.worker.ts?worker&inline';
import type { HomeTexts } from '../heavy/home-texts.ts';
import type { FileToImport, ImportedFile } from '../heavy/import-file.ts';
import type { OpenedFile, OpenedJob, OpenedTrial } from '../heavy/opened-job.ts';
import type { ProposedPairs } from '../heavy/pair-holes.ts';
import type { FaceSections } from '../heavy/pictures-of.ts';
import type { PullInput } from '../heavy/pull.ts';
import type { PulledOutline } from '../heavy/pull-outline.ts';
import type {
  BesideAnswers,
  CheckReply,
  MadeReply,
  Making,
  PlanReply,
  Printing,
  Reply,
  SheetsReply,
  StandReply,
  Way,
} from '../heavy/questions.ts';
import type { PictureInput, PictureSet } from '../heavy/set-straight.ts';
import { amended } from '../job/part-edits.ts';
import { packed, unpacked } from '../packed.ts';
import type { Stop } from '../way.ts';
import { wantsOf } from '../words/wants.ts';
import { AtBench } from './at-bench.ts';
import { EveryWay } from './every-way.ts';
import { TrialFits } from './trial-fits.ts';

const start = (): Worker => new CoreWorker();

/** What is asked of the two workers, and what they said last. */
export class Answers {
  readonly checked = signal<CheckReply | null>(null);
  readonly way = signal<Way | null>(null);
  /** The clearance along the way in with the plan's cut made; null where nothing is cut, or it is not known. */
  readonly wayAfter = signal<TravelCurve | null>(null);
  /** The room the moving part swings through, for drawing. */
  readonly room = signal<readonly SvgNode[]>([]);
  /** The sections on the face in every fineness there is so far, coarsest first. */
  readonly sections = signal<readonly FaceSections[]>([]);
  readonly planned = signal<PlanReply | null>(null);
  /** What was proved last of where the moving part stands. */
  readonly stands = signal<StandReply | null>(null);
  /** What keeps the job from being worked out. */
  readonly findings = signal<readonly Finding[]>([]);
  readonly failure = signal('');
  readonly working = signal<Progress | 'starting' | null>(null);
  readonly isWorking = computed(() => this.working.value !== null);
  /** The plan is made, does not hold, and what else would give was not looked for. */
  readonly lacksAlternatives = computed(() => !this.isWorking.value && this.planned.value?.alternatives === null);
  /** All that takes long: work on the job, files in and out. */
  readonly #long = new Core({ start, hurries: true });
  /** What the hand waits for while it moves; an answer that is nearly there still shows the way. */
  readonly #live = new Core({ start, hurries: false });
  readonly trial = new TrialFits(this.#live, this.#long);
  readonly everyWay = new EveryWay(this.#live, this.#long);
  readonly atBench = new AtBench(this.#live);
  /** The side a job was first seen from; an edit does not turn it round, nor does what is made of it. */
  #seenFrom: SeenFrom | null = null;
  #asked: { readonly job: JobFile; readonly alternatives: boolean } | null = null;

  /** Makes ready for questions. */
  wake(): void {
    for (const core of [this.#live, this.#long]) core.wake();
  }

  /** What was said was of another job. */
  forget(): void {
    this.#asked = null;
    this.#seenFrom = null;
    this.stands.value = null;
    this.findings.value = [];
    this.trial.forget();
    this.everyWay.forget();
    this.#sayNothing();
  }

  #sayNothing(): void {
    batch(() => {
      this.checked.value = null;
      this.way.value = null;
      this.wayAfter.value = null;
      this.room.value = [];
      this.sections.value = [];
      this.planned.value = null;
    });
  }

  /** Asks all there is to say of a job as it is now, where that was not asked already. */
  work(job: JobFile, alternatives: boolean): void {
    const isSame = isSameAsked(job, this.#asked?.job);
    if (isSame && (!alternatives || this.#asked?.alternatives)) return;
    this.#asked = { job, alternatives };
    batch(() => {
      this.working.value = 'starting';
      this.failure.value = '';
      if (!isSame) this.stands.value = null;
    });
    this.#long
      .ask({ kind: 'work', alternatives, from: this.#seenFrom }, job, (reply) => this.#hear(reply))
      .then((ended) => {
        if (ended.how === 'dropped') return;
        if (ended.how === 'failed') this.failure.value = ended.why;
        this.working.value = null;
      });
  }

  /** Stops work on the job; what has been said stays. */
  halt(): void {
    this.#long.drop('work');
    this.working.value = null;
  }

  #hear(reply: Reply): void {
    batch(() => {
      switch (reply.kind) {
        case 'progress':
          this.working.value = reply.progress;
          return;
        case 'findings':
          this.findings.value = reply.findings;
          this.#sayNothing();
          return;
        case 'checked':
          // what was drawn of the old job's cut stays until the new one is known, its curve does not
          this.checked.value = reply;
          this.wayAfter.value = null;
          this.#seenFrom = reply.pictures.seenFrom;
          this.sections.value = reply.pictures.sections;
          this.findings.value = [];
          if (reply.joint.fit.legs.length === 0) this.way.value = null;
          return;
        case 'way':
          this.way.value = reply;
          return;
        case 'room':
          this.room.value = reply.room;
          return;
        case 'finer':
          this.sections.value = [...this.sections.value, reply.sections];
          return;
        case 'way-after':
          this.wayAfter.value = reply.curve;
          return;
        case 'planned':
          this.planned.value = reply;
          return;
      }
    });
  }

  /** Asks what is proved of a place of the way in; it is told as soon as it is known. */
  stand(job: JobFile, { leg, at }: Stop): void {
    this.#live.ask({ kind: 'at', leg, at }, job, (reply) => {
      if (reply.kind === 'stands' && isSameAsked(job, this.#asked?.job)) this.stands.value = reply;
    });
  }

  /** Which holes of the two parts come together; null where none do, or the same was asked again meanwhile. */
  async pairedHoles(job: JobFile): Promise<ProposedPairs | null> {
    const { reply } = await lastReply(this.#live, { kind: 'pair-holes' }, job).catch(() => nothingSaid);
    return reply?.kind === 'paired' ? reply.proposed : null;
  }

  /** Files of Fettle as a job, or the worked one. */
  async opened(files: readonly OpenedFile[] | 'demo', present: JobFile | null): Promise<Reading<OpenedJob>> {
    const asked = { kind: 'open', files, present: present && packed(present) } as const;
    const { reply } = await lastReply(this.#live, asked, null).catch(() => nothingSaid);
    if (reply?.kind !== 'opened') return { ok: false, findings: [notOpened] };
    const { opened } = reply;
    return opened.ok ? { ok: true, value: { ...opened.value, job: unpacked(opened.value.job) } } : opened;
  }

  /** A job as the text of each file it was opened from. */
  async homeTexts(
    job: JobFile,
    open: string,
    served: readonly string[],
    trial: OpenedTrial | null,
  ): Promise<HomeTexts> {
    const { reply } = await lastReply(this.#live, { kind: 'texts', job: packed(job), open, served, trial }, null);
    if (reply?.kind !== 'texts') throw new Error('nothing was written');
    return reply.texts;
  }

  /** What a file of outlines brings; null where the core broke. */
  async imported(file: FileToImport): Promise<ImportedFile | null> {
    const { reply } = await lastReply(this.#long, { kind: 'import', file }, null).catch(() => nothingSaid);
    return reply?.kind === 'imported' ? reply.imported : null;
  }

  /** Asks how a photograph lies. */
  setStraight(asked: PictureInput, hear: (set: PictureSet) => void): void {
    this.#live.ask({ kind: 'set-picture', asked }, null, (reply) => {
      if (reply.kind === 'picture-set') hear(reply.set);
    });
  }

  /** An outline on the edges of a photograph; null where it cannot be looked for there. */
  async pulled(asked: PullInput): Promise<PulledOutline<LoopFile> | null> {
    const { reply } = await lastReply(this.#live, { kind: 'pull', asked }, null).catch(() => nothingSaid);
    return reply?.kind === 'pulled' ? reply.pulled : null;
  }

  /** What there is of one kind; null where the same was asked again meanwhile. Fails where the job does not come to it. */
  async make(job: JobFile, what: Making): Promise<MadeReply | null> {
    const { pictures, openRuns, records } = job;
    const beside = what.as === 'report' ? amended<BesideAnswers>({}, { pictures, openRuns, records }) : {};
    const { reply, wasDropped } = await lastReply(
      this.#long,
      { kind: 'make', what, from: this.#seenFrom, beside },
      job,
    );
    if (wasDropped) return null;
    if (reply?.kind === 'findings') throw new Error(wantsOf(job, reply.findings)[0]?.text);
    return reply?.kind === 'made' ? reply : { kind: 'made', file: null };
  }

  /** The sheets to mark out by; null where the job does not come to it. */
  async sheets(job: JobFile, printing: Omit<Printing, 'paper'>): Promise<SheetsReply | null> {
    const { reply } = await lastReply(this.#long, { kind: 'sheets', printing }, job);
    return reply?.kind === 'sheets' ? reply : null;
  }

  /** Nobody looks at the sheets any more. */
  leaveSheets(): void {
    this.#long.drop('sheets');
  }
}

const notOpened: Finding = { file: '', at: '', found: 'a page that lost what it read', expected: 'the files again' };

/** Whether two jobs ask the same; pictures, and lines that are not closed, change no answer. */
const isSameAsked = (a: JobFile, b: JobFile | undefined): boolean => a.fit === b?.fit && a.parts === b.parts;
