import { readFileSync } from 'node:fs';
import { Command } from 'commander';
import { waysAnswer } from '../src/answers/ways.ts';
import type { Verdict } from '../src/clearance/check-result.ts';
import { turnMapSvg } from '../src/drawing/fit/turn-map-chart.ts';
import { fileText } from '../src/files/file-text.ts';
import type { Finding, Reading } from '../src/files/finding.ts';
import type { JobFile } from '../src/files/job-file.ts';
import { shown } from '../src/files/shown.ts';
import type { Joint } from '../src/joint/joint.ts';
import { readLength } from '../src/typed/typed-length.ts';
import { wrongValue } from '../src/typed/wrong-value.ts';
import { chosenWay } from '../src/ways/chosen-way.ts';
import { findWays, type WaysResult } from '../src/ways/find-ways.ts';
import { type Lift, leastStepMm, mostLiftMm } from '../src/ways/lifted/lift-grid.ts';
import { offerUpOf } from '../src/ways/offer-up.ts';
import { type TurnRange, usualTurns } from '../src/ways/turns.ts';
import { degreesOf } from '../src/words/units.ts';
import { waysText, wayText } from '../src/words/ways-text.ts';
import { type ExitCode, exitCodes } from './exit.ts';
import { type OpenedJob, openJob, orFail } from './open-job.ts';
import { runShowingProgress } from './progress.ts';
import { failWith } from './report-findings.ts';
import { save } from './save.ts';
import { endWith, printJson, printVerdictFirst, say } from './terminal.ts';
import { beforeSuffix } from './view/save-opened.ts';
import { wanderAsked } from './wander-flag.ts';

const examples = `
Turns are about the crank axis, in degrees, anticlockwise looking at the fixed part's mating face.
--lift is looked at in steps, where no way about the axis does: a way found so is proved, none found proves nothing.
Exit code: 0 a way keeps all that is asked without cutting, 1 none does, 3 undecided, 2 an input is wrong.

Examples:
  fettle ways profiles/marsh-carrier/transfer-case.fit.json
  fettle ways profiles/marsh-carrier/transfer-case.fit.json --from 0 --to 45
  fettle ways profiles/marsh-carrier/transfer-case.fit.json --from 0 --to 45 --lift 30
  fettle ways profiles/starter-boss/starter.fit.json -o ways.svg`;

/** `fettle ways FIT`: whether any way of turning and sliding needs no cutting, and if none, what the cheapest costs. */
export function waysCommand(): Command {
  return new Command('ways')
    .description('Looks at every way in of turning about the crank and sliding: is there one that needs no cutting?')
    .argument('<fit>', 'the fit file, *.fit.json')
    .option('--from <deg>', 'the least turn that there is room for', String(degreesOf(usualTurns.fromRad)))
    .option('--to <deg>', 'the greatest turn that there is room for', String(degreesOf(usualTurns.toRad)))
    .option(
      '--wander <how>',
      'how far one may stray while steering, in place of what the fit says: turn=1,standOff=2,shift=1,tilt=0.5',
    )
    .option('--lift <length>', 'how far it may be lifted or carried aside, any way, before it goes over onto the axis')
    .option('--lift-step <length>', 'how finely that is looked at; default a third of it')
    .option('--json', 'print the answer as JSON, alone on standard output')
    .option('-o, --output <file>', 'draw the map of turns and stand-offs, *.svg')
    .option('--write', 'put the way found into the fit; the file before stays beside it')
    .addHelpText('after', examples)
    .action(ways);
}

interface WaysFlags {
  readonly from: string;
  readonly to: string;
  readonly wander?: string;
  readonly lift?: string;
  readonly liftStep?: string;
  readonly json?: boolean;
  readonly output?: string;
  readonly write?: boolean;
}

function ways(fitFile: string, flags: WaysFlags): void {
  const { from, to, wander, json = false, output, write = false } = flags;
  const asked = turnsAsked(fitFile, from, to);
  const lift = orFail(liftAsked(flags));
  const job = openJob(fitFile);
  const joint = wander === undefined ? job.joint : astray(job.joint, fitFile, wander);
  const result = runShowingProgress(findWays(joint, asked, lift));
  if (json) printJson(waysAnswer(joint, result));
  else printVerdictFirst(waysText(joint, result), verdicts[outcomeOf(result)]);
  if (output !== undefined) {
    save(output, turnMapSvg(joint, result));
    say(`The map is drawn to ${output}.`);
  }
  if (write) writeWay(fitFile, job, result);
  endWith(codes[outcomeOf(result)]);
}

const astray = (joint: Joint, file: string, asked: string): Joint => ({
  ...joint,
  fit: { ...joint.fit, wander: orFail(wanderAsked(file, asked, joint.fit.units)) },
});

type Outcome = 'exists' | 'none' | 'undecided';

function outcomeOf(ways: WaysResult): Outcome {
  if (ways.exists === true || ways.lifts?.way != null) return 'exists';
  return ways.exists === null ? 'undecided' : 'none';
}

const codes: Readonly<Record<Outcome, ExitCode>> = {
  exists: exitCodes.meets,
  none: exitCodes.doesNotMeet,
  undecided: exitCodes.undecided,
};

const verdicts: Readonly<Record<Outcome, Verdict>> = { exists: 'goes', none: 'fouls', undecided: 'undecided' };

/** How far aside, and how finely; null where nothing is asked of it. */
function liftAsked({ lift, liftStep }: WaysFlags): Reading<Lift | null> {
  if (lift === undefined)
    return liftStep === undefined
      ? { ok: true, value: null }
      : wrongValue('--lift', 'nothing', 'how far it may be carried aside, such as 30');
  const most = readLength('--lift', lift, 'more than 0');
  if (!most.ok) return most;
  const mostMm = most.value;
  if (mostMm > mostLiftMm) return wrongValue('--lift', shown(lift), `no more than ${mostLiftMm} mm aside`);
  if (liftStep === undefined) return { ok: true, value: { mostMm, stepMm: mostMm / 3 } };
  const step = readLength('--lift-step', liftStep, 'more than 0');
  if (!step.ok) return step;
  const leastMm = leastStepMm(mostMm);
  return step.value >= leastMm && step.value <= mostMm
    ? { ok: true, value: { mostMm, stepMm: step.value } }
    : wrongValue('--lift-step', shown(liftStep), `${Math.ceil(100 * leastMm) / 100} to ${mostMm} mm`);
}

const mostTurnDeg = 180;

function turnsAsked(file: string, from: string, to: string): TurnRange {
  const findings: Finding[] = [];
  const degreesIn = (at: string, text: string, least: number, most: number): number => {
    const value = text.trim() === '' ? Number.NaN : Number(text);
    if (!(value >= least && value <= most))
      findings.push({
        file,
        at,
        found: shown(text),
        expected: `a turn in degrees from ${least} to ${most}: home is among the turns`,
      });
    return (value * Math.PI) / 180;
  };
  const asked = { fromRad: degreesIn('--from', from, -mostTurnDeg, 0), toRad: degreesIn('--to', to, 0, mostTurnDeg) };
  if (findings.length > 0) failWith(findings);
  if (asked.fromRad === asked.toRad)
    failWith([{ file, at: '--from and --to', found: 'no turn but home', expected: 'two turns that differ' }]);
  return asked;
}

/** Puts the way into the fit; only that changes, and the bytes before are kept. */
function writeWay(fitFile: string, { joint, whole }: OpenedJob, result: WaysResult): void {
  const way = chosenWay(result);
  if (way === null)
    failWith([
      {
        file: fitFile,
        at: 'offerUp',
        found: 'no way to put there',
        expected: 'a way that clears, or a cut of what is offered that does',
      },
    ]);
  const before = readFileSync(fitFile);
  const changed = withWay(whole, joint, way);
  save(fitFile + beforeSuffix, before);
  save(fitFile, fileText(isWholeJob(before.toString('utf8')) ? changed : changed.fit));
  say(`${fitFile}: the way in is now ${wayText(way, joint.fit.units)}. As it was: ${fitFile}${beforeSuffix}.`);
}

const isWholeJob = (text: string): boolean => JSON.parse(text).format === 'fettle-job/1';

const withWay = (whole: JobFile, { fit }: Joint, way: Parameters<typeof offerUpOf>[0]): JobFile => ({
  ...whole,
  fit: { ...whole.fit, offerUp: offerUpOf(way, fit.units) },
});
