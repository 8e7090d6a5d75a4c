import { Command } from 'commander';
import { drawFit } from '../src/drawing/fit/draw-fit.ts';
import type { DrawInput } from '../src/drawing/fit/draw-input.ts';
import { drawingSvg } from '../src/drawing/fit/drawing-svg.ts';
import type { PrintOptions } from '../src/drawing/pdf/pdf.ts';
import { joinlessMm } from '../src/drawing/scene/papers.ts';
import type { Joint } from '../src/joint/joint.ts';
import { analysisOf } from '../src/pipeline/analysis.ts';
import type { PlanResult } from '../src/plan/plan-result.ts';
import { counted } from '../src/words/layout.ts';
import { verdictLine } from '../src/words/verdict.ts';
import { openJob, orFail } from './open-job.ts';
import { type PrintFlags, printFlags, printOptions } from './print-flags.ts';
import { runShowingProgress } from './progress.ts';
import { save } from './save.ts';
import { asAsked, straightFlag } from './straight-flag.ts';
import { print } from './terminal.ts';

const examples = `
The drawing is at true scale in mm: print it at 100 %, then lay a rule on its scale bar.
Exit code: 0 the drawing was written, 2 an input is wrong.

Examples:
  fettle draw profiles/marsh-carrier/transfer-case.fit.json -o transfer-case.svg
  fettle draw profiles/starter-boss/starter.fit.json -o starter.pdf --paper a3`;

/** `fettle draw FIT -o FILE.svg`: the checked fit and its cut plan as one drawing. */
export function drawCommand(): Command {
  return new Command('draw')
    .description('Draws a fit at true scale: both parts, the way in, what is in the way and what must come off.')
    .argument('<fit>', 'the fit file, *.fit.json')
    .requiredOption('-o, --output <file>', 'the drawing to write, *.svg, or *.pdf to print in sheets')
    .option(...printFlags.paper)
    .option(...printFlags.bars)
    .option(...straightFlag)
    .addHelpText('after', examples)
    .action(draw);
}

interface DrawFlags extends PrintFlags {
  readonly output: string;
  readonly straight?: boolean;
}

async function draw(fitFile: string, { output, straight = false, ...flags }: DrawFlags): Promise<void> {
  const options = orFail(printOptions(fitFile, flags));
  const { svg, ...input } = drawingOf(asAsked(openJob(fitFile).joint, straight));
  const printed = output.toLowerCase().endsWith('.pdf') ? await printedOn(input, options) : null;
  save(output, printed?.content ?? svg);
  const sheets = printed === null ? '' : `, ${counted(printed.count, 'sheet')} of ${options.paper.name}`;
  print(`${verdictLine(input.check)}\nDrawn to ${output}${sheets}.`);
}

/** The drawing at true scale on as many sheets as it takes, to be joined. */
async function printedOn(
  input: DrawInput,
  options: PrintOptions,
): Promise<{ readonly content: Uint8Array; readonly count: number }> {
  const { pdfOf, sheetCount } = await import('../src/drawing/pdf/pdf.ts');
  const scene = drawFit(input, joinlessMm(options.paper));
  return { content: await pdfOf(scene.title, [scene], options), count: sheetCount([scene], options) };
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
