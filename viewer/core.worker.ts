import type { Progress } from '../src/geometry/progress.ts';
import { importFile } from './heavy/import-file.ts';
import { make, sheetsToShow } from './heavy/make.ts';
import { pull } from './heavy/pull.ts';
import type { Question, Reply } from './heavy/questions.ts';
import { setStraight } from './heavy/set-straight.ts';
import { standingAt, work } from './heavy/work.ts';

/** What comes in: a question with its number, or the number of one that is no longer wanted. */
export type Call = { readonly id: number; readonly question: Question } | { readonly drop: number };

/** What goes out: replies, and the end of each question, answered or dropped. */
export type Answered = { readonly id: number; readonly reply: Reply } | { readonly id: number; readonly end: string };

const post = (message: Answered): void => self.postMessage(message);
const dropped = new Set<number>();

self.addEventListener('message', ({ data }: MessageEvent<Call>) => {
  if ('drop' in data) dropped.add(data.drop);
  else
    answer(data.id, data.question).then(
      () => post({ id: data.id, end: '' }),
      (error: unknown) => post({ id: data.id, end: error instanceof Error ? error.message : String(error) }),
    );
});

async function answer(id: number, question: Question): Promise<void> {
  switch (question.kind) {
    case 'work':
      await drained(id, work(question.job, question.alternatives));
      return;
    case 'at': {
      const stands = standingAt(question.job, question.leg, question.at);
      if (stands !== null) post({ id, reply: stands });
      return;
    }
    case 'import':
      post({ id, reply: { kind: 'imported', imported: importFile(question.file) } });
      return;
    case 'sheets': {
      const shown = await drained(id, sheetsToShow(question.job));
      if (shown !== null) post({ id, reply: shown });
      return;
    }
    case 'set-picture':
      post({ id, reply: { kind: 'picture-set', set: setStraight(question.asked) } });
      return;
    case 'pull':
      post({ id, reply: { kind: 'pulled', pulled: await pull(question.asked) } });
      return;
    case 'make': {
      const made = await drained(id, make(question.job, question.what));
      if (made !== null) post({ id, reply: await made });
      return;
    }
  }
}

/** How long the core works before it listens for what came in meanwhile, ms. */
const stretchMs = 40;

/** Runs a long job to its end, listening between its steps; null where it was dropped. */
async function drained<T>(id: number, job: Generator<Progress | Reply, T>): Promise<T | null> {
  let since = performance.now();
  for (;;) {
    const step = job.next();
    if (step.done) return step.value;
    if ('kind' in step.value) post({ id, reply: step.value });
    if (performance.now() - since < stretchMs) continue;
    if (!('kind' in step.value)) post({ id, reply: { kind: 'progress', progress: step.value } });
    await messagesHeard();
    if (dropped.delete(id)) return null;
    since = performance.now();
  }
}

const messagesHeard = (): Promise<void> =>
  new Promise((go) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => go();
    port2.postMessage(null);
  });
