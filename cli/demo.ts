import { join, relative } from 'node:path';
import { Command } from 'commander';
import { checkText } from '../src/words/check-text.ts';
import { grindText, planLine } from '../src/words/grind-text.ts';
import { verdictLine } from '../src/words/verdict.ts';
import { drawingOf } from './draw.ts';
import { openJob } from './open-job.ts';
import { packageFolder } from './package-folder.ts';
import { save } from './save.ts';
import { print, printVerdictFirst } from './terminal.ts';

const fitName = 'profiles/marsh-carrier/transfer-case.fit.json';
const pictureName = 'fettle-demo.svg';

/** `fettle demo`: the worked example, checked, planned and drawn. */
export function demoCommand(): Command {
  return new Command('demo')
    .description('Checks, plans and draws the worked example: the transfer case of a marsh carrier on an iron four.')
    .addHelpText('after', '\nExample:\n  fettle demo')
    .action(demo);
}

function demo(): void {
  const fitFile = relative('.', join(packageFolder(), fitName));
  const { joint } = openJob(fitFile);
  const { check, plan, alternatives, svg } = drawingOf(joint);
  print(`$ fettle check ${fitFile}\n`);
  printVerdictFirst(checkText(joint, check), check.verdict);
  print(`\n$ fettle grind ${fitFile}\n`);
  printVerdictFirst(grindText(joint, plan, alternatives, check), plan.holds ? 'goes' : 'fouls');
  print(`\n$ fettle draw ${fitFile} -o ${pictureName}\n`);
  save(pictureName, svg);
  print(`${verdictLine(check)}\n${planLine(joint, plan)}\nThe drawing: open ${pictureName} in a browser.`);
}
