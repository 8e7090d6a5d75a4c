import { Command } from 'commander';
import { choicesAnswer } from '../src/answers/choices.ts';
import { grindAnswer } from '../src/answers/grind.ts';
import type { Verdict } from '../src/clearance/check-result.ts';
import { type Analysis, analysisOf } from '../src/pipeline/analysis.ts';
import type { PlanResult } from '../src/plan/plan-result.ts';
import { verifyPlan } from '../src/plan/verify/verify-plan.ts';
import { choicesText } from '../src/words/choices-text.ts';
import { afterPlanText, planText } from '../src/words/grind-text.ts';
import { reportVerification } from './doubts.ts';
import { type ExitCode, exitCodes } from './exit.ts';
import { openJob } from './open-job.ts';
import { runShowingProgress } from './progress.ts';
import { asAsked, straightFlag } from './straight-flag.ts';
import { endWith, print, printJson, printVerdictFirst } from './terminal.ts';

const examples = `
Exit code: 0 the plan holds, with --choices one of them; 1 it does not, 3 undecided, 2 an input is wrong.

Examples:
  fettle grind profiles/marsh-carrier/transfer-case.fit.json
  fettle grind profiles/starter-boss/starter.fit.json --straight
  fettle grind profiles/starter-boss/starter.fit.json --choices
  fettle grind profiles/starter-boss/starter.fit.json --json > plan.json`;

/** `fettle grind FIT`: the least metal to take off, or why there is no such plan. */
export function grindCommand(): Command {
  return new Command('grind')
    .description('Plans the least cut that gives the clearance asked, and checks again what it leaves.')
    .argument('<fit>', 'the fit file, *.fit.json')
    .option(...straightFlag)
    .option('--choices', 'in its stead: which part, or both, and which of some cutters, side by side')
    .option('--json', 'print the plan as JSON, alone on standard output')
    .option('--verify', 'measure the plan again by other means, and say on standard error what came of it')
    .addHelpText('after', examples)
    .action(grind);
}

interface GrindOptions {
  readonly straight?: boolean;
  readonly choices?: boolean;
  readonly json?: boolean;
  readonly verify?: boolean;
}

function grind(fitFile: string, { straight = false, choices = false, ...options }: GrindOptions): void {
  const found = analysisOf(asAsked(openJob(fitFile).joint, straight));
  if (choices) tellChoices(found, options);
  else tellPlan(found, options);
}

type Told = Pick<GrindOptions, 'json' | 'verify'>;

function tellPlan(found: Analysis, { json = false, verify = false }: Told): void {
  const { joint } = found;
  const plan = runShowingProgress(found.plan());
  if (!json) printVerdictFirst(planText(joint, plan), colouredAs(plan));
  const alternatives = runShowingProgress(found.alternatives());
  if (json) printJson(grindAnswer(joint, plan, runShowingProgress(found.tables()), alternatives));
  else print(afterPlanText(joint, plan, alternatives, runShowingProgress(found.check())));
  if (verify) reportVerification(runShowingProgress(verifyPlan(joint, plan)));
  endWith(exitCodeOf(plan));
}

function tellChoices(found: Analysis, { json = false, verify = false }: Told): void {
  const { joint } = found;
  const choices = runShowingProgress(found.choices());
  const holds = [...choices.parts, ...choices.cutters].some((choice) => choice.holds);
  if (json) printJson(choicesAnswer(joint, choices));
  else printVerdictFirst(choicesText(joint, choices), colouredAs({ holds, reason: choices.reason }));
  if (verify) reportVerification(runShowingProgress(verifyPlan(joint, runShowingProgress(found.plan()))));
  if (choices.reason !== null) endWith(exitCodes.undecided);
  else endWith(holds ? exitCodes.meets : exitCodes.doesNotMeet);
}

/** The verdict in whose colour a plan is told. */
export const colouredAs = ({ holds, reason }: Pick<PlanResult, 'holds' | 'reason'>): Verdict =>
  reason === null ? (holds ? 'goes' : 'fouls') : 'undecided';

export function exitCodeOf({ holds, reason, afterCut: { home, wayIn, wander } }: PlanResult): ExitCode {
  if (reason !== null) return exitCodes.undecided;
  if (holds) return exitCodes.meets;
  return [home, wayIn, wander, ...(wander?.rotating ?? [])].some((measure) => measure?.state === 'undecided')
    ? exitCodes.undecided
    : exitCodes.doesNotMeet;
}
