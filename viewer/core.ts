import type { Question, Reply } from './core.worker.ts';
import CoreWorker from './core.worker.ts?worker&inline';

/** Puts questions to the core, off the page's own thread; a new question ends the one before it. */
export class Core {
  #worker: Worker | null = null;

  /** Asks, and hands on every reply and anything that breaks. */
  ask(question: Question, onReply: (reply: Reply) => void, onFailure: (why: string) => void): void {
    this.#worker?.terminate();
    const worker = new CoreWorker();
    worker.addEventListener('message', ({ data }: MessageEvent<Reply>) => onReply(data));
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      onFailure(event.message);
    });
    worker.postMessage(question);
    this.#worker = worker;
  }
}
