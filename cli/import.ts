import { resolve } from 'node:path';
import { Command } from 'commander';
import { fileText } from '../src/files/file-text.ts';
import { importDrawing } from '../src/intake/import-drawing.ts';
import { importAnswer, importText } from '../src/intake/import-text.ts';
import { soundPart } from '../src/intake/sound-part.ts';
import { readDrawing } from '../src/intake/sources.ts';
import { exitCodes } from './exit.ts';
import { type ImportFlags, importRequest } from './import-flags.ts';
import { loadBytes } from './load-text.ts';
import { orFail } from './open-job.ts';
import { failWith } from './report-findings.ts';
import { save } from './save.ts';
import { endWith, printJson, printVerdictFirst } from './terminal.ts';

const more = `
Layers become sections. A layer's name may carry its depth: ribs@12-90, skirt@-44..0.
Circles on a layer called dowels, bolts, tapped, studs or bore become holes D1, B1, T1, S1, BORE1, from left to right.
Lengths are in the part's units: inch for a drawing in inches or feet, else mm.
Viewed from: "face" looking at the part's own mating face, "back" through the part from behind. Card on the face,
or the part face-down on a scanner's glass: face. The part stood face-down on paper and drawn round: back.

Exit code: 0 every line is in an outline, 1 gaps are left (the part holds what closes), 2 an input is wrong.

Examples:
  fettle import block.dxf --viewed-from face -o block.part.json
  fettle import case.svg --dpi 96 --viewed-from back --may-cut lips -o case.part.json
  fettle import ribs.csv --units mm --viewed-from face --got-by "feature list" -o ribs.part.json
  fettle import plate.dxf --viewed-from face --section plate --depth 0,12 --hole CRANK=bore@0,0 -o plate.part.json`;

const again = (value: string, before: readonly string[] = []): readonly string[] => [...before, value];

/** `fettle import FILE -o PART`: outlines from a drawing or a table into a part file. */
export function importCommand(): Command {
  return new Command('import')
    .description('Reads outlines and holes from CSV, DXF or SVG and writes them as a part file.')
    .argument('<file>', 'measured points (*.csv), or a drawing (*.dxf, *.svg)')
    .option('-o, --output <part>', 'the part file to write, *.part.json')
    .option('--viewed-from <side>', 'face or back: from where the outlines were seen')
    .option('--units <unit>', 'mm, cm, m, in or ft, where the file does not say')
    .option('--dpi <number>', 'pixels to the inch of an SVG that has no size on paper: 96, 90, 72')
    .option('--name <text>', "the part's name; default: the file's")
    .option('--layer <name>', 'read this layer only; may be repeated', again)
    .option('--section <name>', 'put all outlines into one section')
    .option('--depth <from,to>', 'depth of the sections that state none')
    .option('--dowels <layer>', 'its circles are dowels; may be repeated', again)
    .option('--bolts <layer>', 'its circles are bolt holes; may be repeated', again)
    .option('--tapped <layer>', 'its circles are tapped holes; may be repeated', again)
    .option('--hole <id=kind@x,y>', 'the smallest circle round (x, y) is this hole; may be repeated', again)
    .option('--may-cut <section>', 'a section that may be cut; may be repeated', again)
    .option('--join <gap>', 'close gaps up to this wide; default 0.5 mm')
    .option('--trace-error <limit>', '± limit of the outlines')
    .option('--got-by <text>', 'how they were got: rubbing, card, gasket, caliper, scan …')
    .option('--json', 'print what was done as JSON, alone on standard output')
    .addHelpText('after', more)
    .action(importFile);
}

function importFile(file: string, flags: ImportFlags): void {
  const { partFile, options } = orFail(importRequest(file, flags));
  if (resolve(file) === resolve(partFile)) {
    failWith([{ file, at: '--output', found: 'the file that is read', expected: 'another file to write' }]);
  }
  const drawing = orFail(readDrawing(file, orFail(loadBytes(file))));
  const imported = orFail(importDrawing(file, drawing, options));
  orFail(soundPart(file, imported.part));
  save(partFile, fileText(imported.part));
  const whole = imported.gaps.length + imported.branches.length === 0;
  if (flags.json) printJson(importAnswer(imported, partFile));
  else printVerdictFirst(importText(imported, file, partFile), whole ? 'goes' : 'too-close');
  endWith(whole ? exitCodes.meets : exitCodes.doesNotMeet);
}
