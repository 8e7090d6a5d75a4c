import { type Check, checkJoint } from '../src/clearance/check.ts';
import { checkFacts } from '../src/clearance/check-facts.ts';
import { drawFit } from '../src/drawing/draw-fit.ts';
import { roomToDraw } from '../src/drawing/draw-input.ts';
import type { Scene } from '../src/drawing/scene.ts';
import type { Progress } from '../src/geometry/progress.ts';
import type { CutPlan } from '../src/grind/cut-plan.ts';
import { planCut } from '../src/grind/plan-cut.ts';
import { planFacts } from '../src/grind/plan-facts.ts';
import type { Joint } from '../src/joint/joint.ts';
import { placeJob } from '../src/joint/place-job.ts';
import type { Verdict } from '../src/model/check-answer.ts';
import type { Finding, Reading } from '../src/model/finding.ts';
import { readJob } from '../src/model/read-job.ts';
import { checkText } from '../src/words/check-text.ts';
import { findingsText } from '../src/words/finding-text.ts';
import { grindText, planLine } from '../src/words/grind-text.ts';
import { verdictLine } from '../src/words/verdict.ts';

/** A fit and every file opened with it, by name. */
export interface Question {
  readonly fitFile: string;
  readonly files: ReadonlyMap<string, string>;
}

export type Reply =
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'findings'; readonly text: string }
  | ({ readonly kind: 'answer' } & Answer);

export interface Answer {
  readonly verdict: Verdict;
  readonly verdictLine: string;
  readonly planLine: string;
  readonly text: string;
  readonly scene: Scene;
}

const reply = (message: Reply): void => self.postMessage(message);

self.addEventListener('message', ({ data }: MessageEvent<Question>) => reply(answerTo(data)));

function answerTo({ fitFile, files }: Question): Reply {
  const job = readJob(fitFile, (path) => opened(files, path));
  const joint = job.ok ? placeJob(job.value) : job;
  if (!joint.ok) return { kind: 'findings', text: findingsText(joint.findings) };
  const check = run(checkJoint(joint.value));
  const plan = run(planCut(joint.value));
  return { kind: 'answer', ...answerOf(joint.value, check, plan) };
}

function answerOf(joint: Joint, check: Check, plan: CutPlan): Answer {
  const texts = [
    checkText(joint, check.answer, checkFacts(joint, check.answer)),
    grindText(joint, plan.answer, planFacts(plan.answer)),
  ];
  return {
    verdict: check.answer.verdict,
    verdictLine: verdictLine(check.answer),
    planLine: planLine(joint, plan.answer),
    text: texts.join('\n\n'),
    scene: drawFit({ joint, check, plan, room: roomToDraw(joint) }),
  };
}

/** A browser tells a file's name but not its folder. */
function opened(files: ReadonlyMap<string, string>, path: string): Reading<string> {
  const text = files.get(path.split('/').at(-1) ?? path);
  if (text !== undefined) return { ok: true, value: text };
  const finding: Finding = { file: path, at: '', found: 'not among the files opened', expected: 'opened with the fit' };
  return { ok: false, findings: [finding] };
}

function run<T>(job: Generator<Progress, T>): T {
  for (;;) {
    const step = job.next();
    if (step.done) return step.value;
    reply({ kind: 'progress', progress: step.value });
  }
}
