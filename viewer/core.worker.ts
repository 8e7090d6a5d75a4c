// before any schema is made
import './heavy/without-eval.ts';

import type { Reading } from '../src/files/finding.ts';
import type { JobFile } from '../src/files/job-file.ts';
import type { Progress } from '../src/geometry/progress.ts';
import { readTrialFile } from '../src/trial/read-trial.ts';
import { toldAtBench } from './heavy/at-bench.ts';
import { demoJob } from './heavy/demo-job.ts';
import { homeTexts } from './heavy/home-texts.ts';
import { importFile } from './heavy/import-file.ts';
import { make, sheetsToShow } from './heavy/make.ts';
import { type OpenedJob, openedJob } from './heavy/opened-job.ts';
import { pairedHoles } from './heavy/pair-holes.ts';
import { pull } from './heavy/pull.ts';
import type { Question, Reply } from './heavy/questions.ts';
import { setStraight } from './heavy/set-straight.ts';
import { carriedIn, foretoldIn, placeFound, trialTold } from './heavy/trial-told.ts';
import { metIn, waysTold } from './heavy/ways-told.ts';
import { standingAt, work } from './heavy/work.ts';
import { type PackedJob, packed, unpacked } from './packed.ts';
import { type Call, patched, type WorkerMessage } from './protocol.ts';

const post = (message: WorkerMessage): void => self.postMessage(message);
const dropped = new Set<number>();
let kept: JobFile | null = null;

self.addEventListener('message', ({ data }: MessageEvent<Call>) => {
  if ('drop' in data) {
    dropped.add(data.drop);
    return;
  }
  const { id, question, patch } = data;
  kept = patched(kept, patch);
  answer(id, question, kept)
    .then(
      // in one message: what a hand waits for at every move is told and ended at once
      (reply) => post(reply === null ? { id, end: '' } : { id, reply, end: '' }),
      (error: unknown) => post({ id, end: error instanceof Error ? error.message : String(error) }),
    )
    .finally(() => dropped.delete(id));
});

/** The last that is said to a question; null where that was said on the way, or where there is nothing to say. */
async function answer(id: number, question: Question, job: JobFile | null): Promise<Reply | null> {
  switch (question.kind) {
    case 'open':
      return { kind: 'opened', opened: opened(question) };
    case 'texts': {
      const { open, served, trial } = question;
      return { kind: 'texts', texts: homeTexts(unpacked(question.job), open, served, trial) };
    }
    case 'import':
      return { kind: 'imported', imported: importFile(question.file) };
    case 'set-picture':
      return { kind: 'picture-set', set: setStraight(question.asked) };
    case 'pull':
      return { kind: 'pulled', pulled: await pull(question.asked) };
    case 'bench':
      return { kind: 'bench-told', told: toldAtBench(question.asked) };
    case 'read-trial':
      return { kind: 'trial-read', read: readTrialFile(question.file.name, question.file.text) };
    default:
      return job === null ? null : answerOf(job, id, question);
  }
}

function opened({ files, present }: Extract<Question, { readonly kind: 'open' }>): Reading<OpenedJob<PackedJob>> {
  if (files === 'demo') return { ok: true, value: { job: packed(demoJob()), from: null, missing: [] } };
  const read = openedJob(files, present && unpacked(present));
  return read.ok ? { ok: true, value: { ...read.value, job: packed(read.value.job) } } : read;
}

type OfAJob = Extract<
  Question,
  {
    readonly kind:
      | 'work'
      | 'at'
      | 'make'
      | 'sheets'
      | 'pair-holes'
      | 'foretell'
      | 'trial'
      | 'place'
      | 'carry'
      | 'ways'
      | 'met';
  }
>;

async function answerOf(job: JobFile, id: number, question: OfAJob): Promise<Reply | null> {
  switch (question.kind) {
    case 'work':
      await drained(id, work(job, question.alternatives, question.from));
      return null;
    case 'at':
      return standingAt(job, question.leg, question.at);
    case 'pair-holes':
      return { kind: 'paired', proposed: pairedHoles(job) };
    case 'sheets':
      return drained(id, sheetsToShow(job, question.printing));
    case 'make':
      return drained(id, make(job, question.what, question.from, question.beside));
    case 'foretell':
      return { kind: 'foretold', texts: foretoldIn(job, question.units) };
    case 'trial':
      return { kind: 'trial-told', told: await drained(id, trialTold(job, question.trial, question.units)) };
    case 'place':
      return { kind: 'place-found', found: await drained(id, placeFound(job, question.go, question.pointed)) };
    case 'carry':
      return { kind: 'carried', carried: await drained(id, carriedIn(job, question.go, question.stopped)) };
    case 'ways':
      return { kind: 'ways-told', told: await drained(id, waysTold(job, question.turns, question.units)) };
    case 'met':
      return { kind: 'met', met: metIn(job, question.at) };
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
    if (dropped.has(id)) return null;
    since = performance.now();
  }
}

const messagesHeard = (): Promise<void> =>
  new Promise((go) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => go();
    port2.postMessage(null);
  });
