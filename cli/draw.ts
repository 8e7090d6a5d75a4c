import { Command } from 'commander';
import type { DrawInput } from '../src/drawing/fit/draw-input.ts';
import { drawingSvg } from '../src/drawing/fit/drawing-svg.ts';
import type { Joint } from '../src/joint/joint.ts';
import { analysisOf } from '../src/pipeline/analysis.ts';
import type { PlanResult } from '../src/plan/plan-result.ts';
import { verdictLine } from '../src/words/verdict.ts';
import { openJob } from './open-job.ts';
import { runShowingProgress } from './progress.ts';
import { save } from './save.ts';
import { asAsked, straightFlag } from './straight-flag.ts';
import { print } from './terminal.ts';

const examples = `
The drawing is at true scale in mm: print it at 100 %, then lay a rule on its scale bar.
Exit code: 0 the drawing was written, 2 an input is wrong.

Examples:
  fettle draw profiles/marsh-carrier/transfer-case.fit.json -o transfer-case.svg
  fettle draw profiles/starter-boss/starter.fit.json -o starter.svg`;

/** `fettle draw FIT -o FILE.svg`: the checked fit and its cut plan as one drawing. */
export function drawCommand(): Command {
  return new Command('draw')
    .description('Draws a fit at true scale: both parts, the way in, what is in the way and what must come off.')
    .argument('<fit>', 'the fit file, *.fit.json')
    .requiredOption('-o, --output <file>', 'the drawing to write, *.svg')
    .option(...straightFlag)
    .addHelpText('after', examples)
    .action(draw);
}

function draw(fitFile: string, { output, straight = false }: { output: string; straight?: boolean }): void {
  const { check, svg } = drawingOf(asAsked(openJob(fitFile).joint, straight));
  save(output, svg);
  print(`${verdictLine(check)}\nDrawn to ${output}.`);
}

/** A joint checked, planned and drawn. */
export function drawingOf(joint: Joint): DrawInput & { readonly plan: PlanResult; readonly svg: string } {
  const found = analysisOf(joint);
  const check = runShowingProgress(found.check());
  const plan = runShowingProgress(found.plan());
  const alternatives = runShowingProgress(found.alternatives());
  const input = { joint, check, plan, alternatives, room: runShowingProgress(found.room()) };
  return { ...input, svg: drawingSvg(input) };
}
