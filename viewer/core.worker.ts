// before any schema is made
import './heavy/without-eval.ts';

import type { Reading } from '../src/files/finding.ts';
import type { JobFile } from '../src/files/job-file.ts';
import type { Progress } from '../src/geometry/progress.ts';
import { readTrialFile } from '../src/trial/read-trial.ts';
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
      () => post({ id, end: '' }),
      (error: unknown) => post({ id, end: error instanceof Error ? error.message : String(error) }),
    )
    .finally(() => dropped.delete(id));
});

async function answer(id: number, question: Question, job: JobFile | null): Promise<void> {
  switch (question.kind) {
    case 'open':
      post({ id, reply: { kind: 'opened', opened: opened(question) } });
      return;
    case 'texts': {
      const { open, served, trial } = question;
      post({ id, reply: { kind: 'texts', texts: homeTexts(unpacked(question.job), open, served, trial) } });
      return;
    }
    case 'import':
      post({ id, reply: { kind: 'imported', imported: importFile(question.file) } });
      return;
    case 'set-picture':
      post({ id, reply: { kind: 'picture-set', set: setStraight(question.asked) } });
      return;
    case 'pull':
      post({ id, reply: { kind: 'pulled', pulled: await pull(question.asked) } });
      return;
    case 'read-trial':
      post({ id, reply: { kind: 'trial-read', read: readTrialFile(question.file.name, question.file.text) } });
      return;
    default:
      if (job !== null) await answerOf(job, id, question);
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

async function answerOf(job: JobFile, id: number, question: OfAJob): Promise<void> {
  switch (question.kind) {
    case 'work':
      await drained(id, work(job, question.alternatives, question.from));
      return;
    case 'at': {
      const stands = standingAt(job, question.leg, question.at);
      if (stands !== null) post({ id, reply: stands });
      return;
    }
    case 'pair-holes':
      post({ id, reply: { kind: 'paired', proposed: pairedHoles(job) } });
      return;
    case 'sheets': {
      const shown = await drained(id, sheetsToShow(job, question.printing));
      if (shown !== null) post({ id, reply: shown });
      return;
    }
    case 'make': {
      const made = await drained(id, make(job, question.what, question.from, question.beside));
      if (made !== null) post({ id, reply: await made });
      return;
    }
    case 'foretell':
      post({ id, reply: { kind: 'foretold', texts: foretoldIn(job, question.units) } });
      return;
    case 'trial':
      post({
        id,
        reply: { kind: 'trial-told', told: await drained(id, trialTold(job, question.trial, question.units)) },
      });
      return;
    case 'place':
      post({
        id,
        reply: { kind: 'place-found', found: await drained(id, placeFound(job, question.go, question.pointed)) },
      });
      return;
    case 'carry':
      post({
        id,
        reply: { kind: 'carried', carried: await drained(id, carriedIn(job, question.go, question.stopped)) },
      });
      return;
    case 'ways':
      post({
        id,
        reply: { kind: 'ways-told', told: await drained(id, waysTold(job, question.turns, question.units)) },
      });
      return;
    case 'met':
      post({ id, reply: { kind: 'met', met: metIn(job, question.at) } });
      return;
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
