import type { JobFile } from '../src/files/job-file.ts';
import type { LoopFile } from '../src/files/part-file.ts';
import type { Progress } from '../src/geometry/progress.ts';
import type { Units } from '../src/job/lengths.ts';
import type { MarkingRow } from '../src/markout/marking-row.ts';
import { Core } from './core.ts';
import type { FileToImport, ImportedFile } from './heavy/import-file.ts';
import type { PullAsked } from './heavy/pull.ts';
import type { PulledOutline } from './heavy/pull-outline.ts';
import type {
  Checked,
  MadeFile,
  Making,
  Planned,
  Question,
  Reply,
  SheetsShown,
  Stands,
  Way,
} from './heavy/questions.ts';
import type { PictureAsked, PictureSet } from './heavy/set-straight.ts';
import { changed, type History, redone, startingWith, undone } from './job/history.ts';
import { withoutPictures } from './job/picture-edits.ts';
import { preferredUnits, preferUnits } from './preferred-units.ts';
import { lastStop, type Stop, stopOf } from './way.ts';

export const stepNames = ['outlines', 'dowel-up', 'offer-up', 'grind', 'mark-out'] as const;
export type StepName = (typeof stepNames)[number];

/** What the page knows now; replaced whole at every change. */
export interface State {
  /** Null before a job is open. */
  readonly history: History<JobFile> | null;
  readonly step: StepName;
  readonly checked: Checked | null;
  readonly way: Way | null;
  readonly planned: Planned | null;
  /** What keeps the job from being worked out, in words; empty where nothing does. */
  readonly findings: string;
  readonly working: Progress | 'starting' | null;
  readonly failure: string;
  readonly notice: string;
  /** The part that is traced, by the name the job has it under. */
  readonly part: string;
  /** The photograph that is set straight now. */
  readonly picture: string | null;
  /** The place of the cut edge that was touched to be read. */
  readonly reading: MarkingRow | null;
  /** The unit chosen to read lengths in; null shows each file in its own. */
  readonly units: Units | null;
  /** Something the builder has to settle; null most of the time. */
  readonly asked: Asked | null;
}

/** A question with what can be done about it. */
export interface Asked {
  readonly text: string;
  readonly choices: readonly { readonly label: string; readonly choose: () => void }[];
}

const nothing: Pick<State, 'checked' | 'way' | 'planned'> = { checked: null, way: null, planned: null };

/** The job at hand, what the core says of it, and how both change. */
export class App {
  state: State = {
    history: null,
    step: 'outlines',
    ...nothing,
    findings: '',
    working: null,
    failure: '',
    notice: '',
    asked: null,
    units: preferredUnits(),
    reading: null,
    part: '',
    picture: null,
  };
  /** Where on the way in the moving part stands, in pieces of the curve; kept apart, since it changes with every drag. */
  place = 0;
  stands: Stands | null = null;
  readonly #work = new Core({ hurries: true });
  readonly #live = new Core({ hurries: false });
  readonly #photo = new Core({ hurries: false });
  readonly #hearers = new Set<() => void>();
  readonly #placeHearers = new Set<() => void>();
  #liveHas: JobFile | null = null;

  get job(): JobFile | null {
    return this.state.history?.now ?? null;
  }

  /** Gives back how to stop hearing. */
  onChange(hear: () => void): () => void {
    this.#hearers.add(hear);
    return () => {
      this.#hearers.delete(hear);
    };
  }

  /** Gives back how to stop hearing. */
  onPlace(hear: () => void): () => void {
    this.#placeHearers.add(hear);
    return () => {
      this.#placeHearers.delete(hear);
    };
  }

  #set(change: Partial<State>): void {
    this.state = { ...this.state, ...change };
    for (const hear of this.#hearers) hear();
  }

  /** Opens a job in place of the one at hand. */
  open(job: JobFile, step: StepName): void {
    this.place = 0;
    this.stands = null;
    this.#set({ history: startingWith(job), step, ...nothing, part: job.fit.fixed, picture: null, notice: '' });
    this.#askAgain();
  }

  edit(change: (job: JobFile) => JobFile, gesture: string | null = null): void {
    if (this.state.history === null) return;
    this.#take(changed(this.state.history, change(this.state.history.now), gesture));
  }

  undo(): void {
    this.#take(this.state.history && undone(this.state.history));
  }

  redo(): void {
    this.#take(this.state.history && redone(this.state.history));
  }

  #take(history: History<JobFile> | null): void {
    if (history === null || history === this.state.history) return;
    const same = isSameAsked(history.now, this.job);
    this.#set({ history });
    if (same) return;
    this.#forgetStanding();
    this.#askAgain();
  }

  goTo(step: StepName): void {
    const wantsMore = step === 'grind' && this.state.planned?.alternatives === null;
    this.#set({ step });
    if (wantsMore) this.#askAgain();
  }

  /** Stops what the core is at; what it has said stays. */
  halt(): void {
    this.#work.drop();
    this.#set({ working: null });
  }

  /** Puts something to the builder; a choice takes the question away. */
  put(text: string, choices: Asked['choices']): void {
    const settled = (choose: () => void) => () => {
      this.#set({ asked: null });
      choose();
    };
    this.#set({ asked: { text, choices: choices.map(({ label, choose }) => ({ label, choose: settled(choose) })) } });
  }

  /** Shows lengths in one unit, or each file's in its own; the files stay as they are. */
  readLengthsIn(units: Units | null): void {
    preferUnits(units);
    const { checked } = this.state;
    this.#set({ units, checked: checked && readIn(checked, units ?? this.job?.fit.units ?? 'mm') });
    for (const hear of this.#placeHearers) hear();
  }

  trace(part: string): void {
    this.#set({ part });
  }

  /** Begins to set a photograph straight; null: it is done. */
  straighten(picture: string | null): void {
    this.#set({ picture });
  }

  read(reading: MarkingRow | null): void {
    this.#set({ reading });
  }

  tell(notice: string): void {
    this.#set({ notice });
  }

  #askAgain(): void {
    const { job } = this;
    if (job === null) return;
    this.#set({ working: 'starting', failure: '' });
    const alternatives = this.state.step === 'grind';
    this.#work.ask(
      { kind: 'work', job: withoutPictures(job), alternatives },
      (reply) => this.#hear(reply),
      (failure) => this.#set({ working: null, failure }),
    );
  }

  #hear(reply: Reply): void {
    switch (reply.kind) {
      case 'progress':
        this.#set({ working: reply.progress });
        return;
      case 'findings':
        this.#set({ ...nothing, findings: reply.text });
        return;
      case 'checked': {
        const first = this.state.checked === null;
        // what was drawn of the old job's cut stays until the new one is known, its curve does not
        const checked = readIn(reply, this.state.units ?? reply.joint.fit.units);
        this.#set({ checked, findings: '', ...(reply.joint.fit.legs.length === 0 ? { way: null } : {}) });
        if (first) this.moveTo(Number.POSITIVE_INFINITY);
        return;
      }
      case 'way': {
        const wasHome = this.state.way === null || this.place >= lastStop(this.state.way);
        this.#set({ way: reply });
        this.moveTo(wasHome ? Number.POSITIVE_INFINITY : this.place);
        return;
      }
      case 'planned':
        this.#set({ planned: reply, reading: null });
        return;
      case 'stands':
      case 'imported':
      case 'made':
      case 'sheets':
      case 'picture-set':
      case 'pulled':
        return;
    }
  }

  /** Moves the moving part to a place of the way in; what is proved of it there comes as soon as it is known. */
  moveTo(place: number): void {
    const { way } = this.state;
    this.place = way === null ? 0 : Math.min(lastStop(way), Math.max(0, place));
    const stop = this.stop;
    if (stop !== null) this.#askStanding(stop);
    for (const hear of this.#placeHearers) hear();
  }

  get stop(): Stop | null {
    const { way, checked } = this.state;
    return way === null || checked === null ? null : stopOf(way, checked.joint.fit.legs, this.place);
  }

  /** What is proved of where the moving part stands now; null until the answer is there. */
  get proved(): Stands | null {
    const { stop, stands } = this;
    return stop !== null && stands?.leg === stop.leg && stands.at === stop.at ? stands : null;
  }

  /** What was proved was of another job. */
  #forgetStanding(): void {
    this.stands = null;
    for (const hear of this.#placeHearers) hear();
  }

  #askStanding({ leg, at }: Stop): void {
    const { job } = this;
    if (job === null) return;
    this.#live.ask({ kind: 'at', job: this.#liveHas === job ? null : withoutPictures(job), leg, at }, (reply) => {
      if (reply.kind !== 'stands') return;
      this.#liveHas = job;
      if (!isSameAsked(job, this.job)) return;
      this.stands = reply;
      for (const hear of this.#placeHearers) hear();
    });
  }

  /** What a file of outlines brings; null where the core broke. */
  async imported(file: FileToImport): Promise<ImportedFile | null> {
    const reply = await answered({ kind: 'import', file }).catch(() => null);
    return reply?.kind === 'imported' ? reply.imported : null;
  }

  /** Asks how a photograph lies; only the newest question is answered. */
  setStraight(asked: PictureAsked, hear: (set: PictureSet) => void): void {
    this.#photo.ask({ kind: 'set-picture', asked }, (reply) => {
      if (reply.kind === 'picture-set') hear(reply.set);
    });
  }

  /** An outline on the edges of a photograph; null where it cannot be looked for there. */
  async pulled(asked: PullAsked): Promise<PulledOutline<LoopFile> | null> {
    const reply = await answered({ kind: 'pull', asked }).catch(() => null);
    return reply?.kind === 'pulled' ? reply.pulled : null;
  }

  /** Files of one kind; nothing where the job does not come to it. */
  async make(what: Making): Promise<readonly MadeFile[]> {
    const reply =
      this.job === null
        ? null
        : await answered({ kind: 'make', job: what.as === 'report' ? this.job : withoutPictures(this.job), what });
    return reply?.kind === 'made' ? reply.files : [];
  }

  /** The sheets to mark out by; null where the job does not come to it. */
  async sheets(): Promise<SheetsShown | null> {
    const reply = this.job === null ? null : await answered({ kind: 'sheets', job: withoutPictures(this.job) });
    return reply?.kind === 'sheets' ? reply : null;
  }
}

/** Whether two jobs ask the same; pictures, and lines that are not closed, change no answer. */
const isSameAsked = (a: JobFile, b: JobFile | null): boolean => a.fit === b?.fit && a.parts === b.parts;

/** What was checked, its lengths to be said in a unit; all of it is worked out in millimetres. */
const readIn = (checked: Checked, units: Units): Checked => {
  const { joint } = checked;
  return { ...checked, joint: { ...joint, fit: { ...joint.fit, units } } };
};

/** The last that a core of its own says to a question; null where it says nothing. */
function answered(question: Question): Promise<Reply | null> {
  return new Promise((give, fail) => {
    let last: Reply | null = null;
    const core = new Core({ hurries: true });
    core.ask(
      question,
      (reply) => {
        last = reply;
      },
      (failure) => {
        core.close();
        if (failure === '') give(last);
        else fail(new Error(failure));
      },
    );
  });
}
