import { batch, computed, effect, type ReadonlySignal, untracked } from '@preact/signals';
import type { JobFile } from '../src/files/job-file.ts';
import type { MarkingRow } from '../src/markout/marking-row.ts';
import type { CheckReply, PlanReply, TrialTold, Way } from './heavy/questions.ts';
import type { History } from './job/history.ts';
import { Answers } from './state/answers.ts';
import { JobAtHand } from './state/job-at-hand.ts';
import { Notices } from './state/notices.ts';
import { Reader } from './state/reader.ts';
import type { StepName } from './state/step-names.ts';
import { type Want, wantsOf } from './words/wants.ts';

/** What the steps are shown; replaced whole whenever some of it changes, and by nothing else. */
export interface State {
  /** Null before a job is open. */
  readonly history: History<JobFile> | null;
  readonly checked: CheckReply | null;
  readonly way: Way | null;
  readonly planned: PlanReply | null;
  readonly part: string;
  readonly picture: string | null;
  readonly reading: MarkingRow | null;
  /** What the trial fits of the job say, as far as it was asked of the job as it is. */
  readonly trial: TrialTold | null;
  /** What each step needs next. */
  readonly wants: readonly Want[];
}

/** The page's state, each of it in one place, and what follows from what. */
export interface App {
  readonly job: JobAtHand;
  readonly answers: Answers;
  readonly reader: Reader;
  readonly notices: Notices;
  readonly state: ReadonlySignal<State>;
  /** Opens a job in place of the one at hand. */
  open(job: JobFile, step: StepName): void;
}

export function appOf(): App {
  const [job, answers, notices] = [new JobAtHand(), new Answers(), new Notices()];
  const reader = new Reader(answers);
  const work = (): void => {
    const now = job.now.peek();
    if (now !== null) answers.work(now, reader.step.peek() === 'grind');
  };
  effect(() => {
    if (job.history.value !== null) untracked(work);
  });
  effect(() => {
    if (reader.step.value === 'grind' && answers.lacksAlternatives.value) untracked(work);
  });
  effect(() => {
    const stop = reader.stop.value;
    const now = job.now.peek();
    if (stop !== null && now !== null) answers.stand(now, stop);
  });
  const state = computed(() => ({
    history: job.history.value,
    checked: reader.checked.value,
    way: answers.way.value,
    planned: answers.planned.value,
    part: reader.part.value,
    picture: reader.picture.value,
    reading: reader.reading.value,
    trial: job.now.value && answers.trial.toldOf(job.now.value),
    wants: job.now.value === null ? [] : wantsOf(job.now.value, answers.findings.value),
  }));
  const open = (opened: JobFile, step: StepName): void =>
    batch(() => {
      answers.forget();
      notices.tell('');
      notices.tellKeeping('');
      notices.tellRead('');
      reader.turnTo(step, opened.fit.fixed);
      job.open(opened);
    });
  return { job, answers, reader, notices, state, open };
}
