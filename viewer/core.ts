import type { Answered, Call } from './core.worker.ts';
import CoreWorker from './core.worker.ts?worker&inline';
import type { Question, Reply } from './heavy/questions.ts';

interface Asked {
  readonly question: Question;
  readonly onReply: (reply: Reply) => void;
  /** `failure` is empty where all went well; not called for a question that a newer one took the place of. */
  readonly onEnd: (failure: string) => void;
}

/**
 * Puts questions to a core off the page's own thread: one at work and one waiting at most, the newest wins, and what is at
 * work is dropped for it.
 */
export class Core {
  #worker: Worker | null = null;
  #running: (Asked & { readonly id: number }) | null = null;
  #waiting: Asked | null = null;
  #next = 1;
  /** Whether a newer question ends the one at work, or waits for it. */
  readonly #hurries: boolean;

  constructor({ hurries }: { readonly hurries: boolean }) {
    this.#hurries = hurries;
  }

  ask(question: Question, onReply: (reply: Reply) => void, onEnd: (failure: string) => void = () => {}): void {
    this.#waiting = { question, onReply, onEnd };
    if (this.#running === null) this.#start();
    else if (this.#hurries) this.#post({ drop: this.#running.id });
  }

  /** Ends the core; it starts anew with the next question. */
  close(): void {
    this.#worker?.terminate();
    this.#worker = null;
  }

  /** Drops what is at work and what waits. */
  drop(): void {
    this.#waiting = null;
    if (this.#running !== null) this.#post({ drop: this.#running.id });
    this.#running = this.#running && { ...this.#running, onReply: () => {}, onEnd: () => {} };
  }

  #start(): void {
    const asked = this.#waiting;
    this.#waiting = null;
    this.#running = asked && { ...asked, id: this.#next++ };
    if (this.#running !== null) this.#post({ id: this.#running.id, question: this.#running.question });
  }

  #post(call: Call): void {
    this.#worker ??= this.#made();
    this.#worker.postMessage(call);
  }

  #made(): Worker {
    const worker = new CoreWorker();
    worker.addEventListener('message', ({ data }: MessageEvent<Answered>) => this.#hear(data));
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      this.#worker?.terminate();
      this.#worker = null;
      this.#end(event.message || 'the core could not be started');
    });
    return worker;
  }

  #hear(answered: Answered): void {
    const running = this.#running;
    if (running === null || answered.id !== running.id) return;
    if ('end' in answered) this.#end(answered.end);
    // a newer question waits: what still comes of the old one is out of date
    else if (this.#waiting === null || !this.#hurries) running.onReply(answered.reply);
  }

  #end(failure: string): void {
    const ended = this.#running;
    const superseded = this.#waiting !== null;
    this.#running = null;
    if (!superseded) ended?.onEnd(failure);
    this.#start();
  }
}
