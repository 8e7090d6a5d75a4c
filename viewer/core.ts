import type { JobFile } from '../src/files/job-file.ts';
import type { Question, Reply } from './heavy/questions.ts';
import { type Call, laneOf, patchOf, type WorkerMessage } from './protocol.ts';

/** How a question ended; dropped is one that a newer one took the place of, or that nobody waits for any more. */
export type QuestionEnd = { readonly how: 'answered' | 'dropped' } | { readonly how: 'failed'; readonly why: string };

interface PendingQuestion {
  readonly lane: string;
  readonly question: Question;
  /** What it is asked of; null where it needs no job. */
  readonly job: JobFile | null;
  readonly onReply: (reply: Reply) => void;
  readonly end: (ended: QuestionEnd) => void;
  /** It was begun by a worker that had to be ended. */
  readonly isAgain: boolean;
}

/** How long a worker may take to let go of what was dropped before it is ended, ms. */
const patienceMs = 300;

const nobody: Pick<PendingQuestion, 'onReply' | 'end'> = { onReply: () => {}, end: () => {} };

/**
 * Puts questions to one worker off the page's own thread. Of a job it answers one after the other, in the order they
 * came; what needs no job need not wait. It keeps account of the job the worker has, and sends what is new. A worker that
 * does not let go of what was dropped is ended, and the next one is sent all.
 */
export class Core {
  #worker: Worker | null = null;
  #has: JobFile | null = null;
  #running: ReadonlyMap<number, PendingQuestion> = new Map();
  #waiting: readonly PendingQuestion[] = [];
  #next = 1;
  readonly #start: () => Worker;
  /** Whether a newer question ends the one of its lane at work, or waits for its answer. */
  readonly #hurries: boolean;

  constructor({ start, hurries }: { readonly start: () => Worker; readonly hurries: boolean }) {
    this.#start = start;
    this.#hurries = hurries;
  }

  /** Starts the worker before there is a question, so that the first does not wait for that. */
  wake(): void {
    this.#worker ??= this.#made();
  }

  ask(question: Question, job: JobFile | null, onReply: PendingQuestion['onReply']): Promise<QuestionEnd> {
    return new Promise((end) => {
      const lane = laneOf(question);
      if (this.#hurries) this.drop(lane);
      else this.#dropWaiting(lane);
      this.#waiting = [...this.#waiting, { lane, question, job, onReply, end, isAgain: false }];
      this.#goOn();
    });
  }

  /** Drops what is at work and what waits in a lane. */
  drop(lane: string): void {
    this.#dropWaiting(lane);
    for (const [id, asked] of this.#running) {
      if (asked.lane !== lane || asked.end === nobody.end) continue;
      this.#post({ drop: id });
      this.#running = new Map(this.#running).set(id, { ...asked, ...nobody });
      asked.end({ how: 'dropped' });
      this.#seeItLetGo(id);
    }
  }

  /** What is wanted still and was begun twice already is let finish, so that it is not begun for ever. */
  #seeItLetGo(id: number): void {
    setTimeout(() => {
      if (!this.#running.has(id)) return;
      const wanted = [...this.#running.values()].filter(({ end }) => end !== nobody.end);
      if (wanted.some(({ isAgain }) => isAgain)) return this.#seeItLetGo(id);
      this.#endWorker();
      this.#waiting = [...wanted.map((asked) => ({ ...asked, isAgain: true })), ...this.#waiting];
      this.#goOn();
    }, patienceMs);
  }

  #dropWaiting(lane: string): void {
    const dropped = this.#waiting.filter((asked) => asked.lane === lane);
    this.#waiting = this.#waiting.filter((asked) => asked.lane !== lane);
    for (const { end } of dropped) end({ how: 'dropped' });
  }

  #goOn(): void {
    for (const asked of this.#waiting) {
      const running = [...this.#running.values()];
      if (running.some(({ lane, job }) => lane === asked.lane || (job !== null && asked.job !== null))) continue;
      this.#waiting = this.#waiting.filter((other) => other !== asked);
      const id = this.#next++;
      this.#running = new Map(this.#running).set(id, asked);
      this.#post({ id, question: asked.question, patch: asked.job && patchOf(this.#has, asked.job) });
      this.#has = asked.job ?? this.#has;
    }
  }

  #post(call: Call): void {
    this.wake();
    this.#worker?.postMessage(call);
  }

  #made(): Worker {
    const worker = this.#start();
    worker.addEventListener('message', ({ data }: MessageEvent<WorkerMessage>) => this.#hear(data));
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      if (worker === this.#worker) this.#fail(event.message || 'the core could not be started');
    });
    return worker;
  }

  #hear(answered: WorkerMessage): void {
    const asked = this.#running.get(answered.id);
    if (asked === undefined) return;
    if (answered.reply !== undefined) asked.onReply(answered.reply);
    if (answered.end === undefined) return;
    this.#running = new Map([...this.#running].filter(([id]) => id !== answered.id));
    asked.end(answered.end === '' ? { how: 'answered' } : { how: 'failed', why: answered.end });
    this.#goOn();
  }

  /** Tells of a worker that broke. */
  #fail(why: string): void {
    const broken = [...this.#running.values()];
    this.#endWorker();
    for (const { end } of broken) end({ how: 'failed', why });
    this.#goOn();
  }

  /** Ends the worker with all it is at; the next question starts it anew, and is sent all of its job. */
  #endWorker(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#has = null;
    this.#running = new Map();
  }
}

interface LastReply {
  readonly reply: Reply | null;
  readonly wasDropped: boolean;
}

export const nothingSaid: LastReply = { reply: null, wasDropped: false };

/** The last that is said to a question; fails where the worker broke. */
export async function lastReply(core: Core, question: Question, job: JobFile | null): Promise<LastReply> {
  let last = nothingSaid;
  const ended = await core.ask(question, job, (reply) => {
    last = { reply, wasDropped: false };
  });
  if (ended.how === 'failed') throw new Error(ended.why);
  return ended.how === 'dropped' ? { reply: null, wasDropped: true } : last;
}
