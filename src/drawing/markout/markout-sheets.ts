import type { Bench } from '../../markout/marking-out-bench.ts';
import { swingGauge } from '../../markout/marking-out-swing.ts';
import { millingOf } from '../../markout/milling.ts';
import { axisName, shortName } from '../../words/names.ts';
import type { Scene } from '../scene/scene.ts';
import { type BridgeGauge, bridgeGauges, bridgeScene, noBridgeWords } from './bridge-gauge.ts';
import { faceTemplate, startsAtFace } from './face-template.ts';
import { markingCsv } from './marking-csv.ts';
import { tableScenes } from './marking-table.ts';
import { bridgeDxf, markoutDxf, profileDxf, swingDxf } from './markout-dxf.ts';
import { millingCsv, millingDxf, millingScenes } from './milling-sheet.ts';
import { pictureScenes } from './numbered-picture.ts';
import { plateScene, profileGauges, profileScene } from './profile-gauge.ts';
import { stripScene, stripsOf } from './side-strip.ts';
import { swingPieces, swingPlate } from './swing-gauge.ts';
import { bandWords } from './template-words.ts';

/** One thing to mark out or to make, in all the forms it is given in. */
export interface MarkoutSheet {
  /** A file name without its ending. */
  readonly name: string;
  /** What it is for, in a sentence. */
  readonly purpose: string;
  /** Its drawings: for paper that carries its own check bars, or with bars of their own. */
  readonly scenes: (withBars: boolean) => readonly Scene[];
  /** Its outlines as a DXF file. */
  readonly dxf: string | null;
  /** Its figures as CSV. */
  readonly csv: string | null;
}

/** Everything there is to mark out a plan with, and why some of it is not made. */
export interface Markout {
  readonly sheets: readonly MarkoutSheet[];
  readonly notMade: readonly string[];
}

/**
 * The marking-out table, templates and gauges of a plan, looking at the face of the part that is cut; where both are,
 * those of each part are its own and carry its name.
 */
export function markoutOf(benches: readonly Bench[]): Markout {
  const made = benches.map(ofBench);
  return { sheets: made.flatMap(({ sheets }) => sheets), notMade: made.flatMap(({ notMade }) => notMade) };
}

function ofBench(bench: Bench): Markout {
  if (bench.bands.length === 0) return { sheets: [], notMade: [] };
  const made = [
    table(bench),
    face(bench),
    ...profiles(bench),
    ...bridges(bench),
    strips(bench),
    swing(bench),
    mill(bench),
  ];
  const sheets = made.filter((one): one is MarkoutSheet => typeof one !== 'string').map(drawnOnce);
  const notMade = made.filter((one) => typeof one === 'string');
  const part = bench.both ? `${shortName(bench.present)}: ` : '';
  return {
    sheets: sheets.map((sheet) => ({ ...sheet, name: nameOf(sheet.name, bench), purpose: part + sheet.purpose })),
    notMade: notMade.map((words) => part + words),
  };
}

/** A sheet is looked at, counted, printed alone and with all others: drawn once. */
function drawnOnce(sheet: MarkoutSheet): MarkoutSheet {
  const drawn = new Map<boolean, readonly Scene[]>();
  const scenes = (withBars: boolean): readonly Scene[] => {
    const known = drawn.get(withBars) ?? sheet.scenes(withBars);
    drawn.set(withBars, known);
    return known;
  };
  return { ...sheet, scenes };
}

/** A sheet of one of two parts has the part's name before its own; both may have the same. */
function nameOf(name: string, { both, cut, joint, mirrored }: Bench): string {
  const [own, other] = cut === 'fixed' ? [joint.fixed, joint.moving] : [joint.moving, joint.fixed];
  const slugs = [own, other].map((part) => slug(shortName(part)));
  const part = slugs[0] === slugs[1] || slugs[0] === '' ? cut : slugs[0];
  return `${both ? `${part}-` : ''}${name}${mirrored ? '-mirrored' : ''}`;
}

function table(bench: Bench): MarkoutSheet {
  const rows = bench.table;
  return {
    name: 'marking-out',
    purpose: 'the table of places, where they are on the casting, and the casting with every line of the cut',
    scenes: (withBars) => [...tableScenes(bench, rows, withBars), ...pictureScenes(bench, withBars)],
    dxf: markoutDxf(bench),
    csv: markingCsv(rows, bench.present, bench.joint),
  };
}

function face(bench: Bench): MarkoutSheet | string {
  if (!bench.bands.some(startsAtFace)) {
    const bands = bench.bands.map((band) => bandWords(band, bench)).join('; ');
    return `No face template: no cut begins at the face (${bands}), and paper laid on the face cannot mark what does not.`;
  }
  return {
    name: 'face-template',
    purpose: 'paper to lay on the face and prick through',
    scenes: (withBars) => [faceTemplate(bench, withBars)],
    dxf: null,
    csv: null,
  };
}

function profiles(bench: Bench): (MarkoutSheet | string)[] {
  const gauges = profileGauges(bench);
  const without = bench.bands.filter((band) => !gauges.some((gauge) => gauge.band === band));
  return [
    ...gauges.map(
      (gauge, i): MarkoutSheet => ({
        name: `profile-gauge-${i + 1}-${slug(gauge.band.section.id) || 'section'}`,
        purpose: `ply to slide into the cut in ${bandWords(gauge.band, bench)}: the outline to leave`,
        scenes: (withBars) => [
          profileScene(bench, gauge, withBars),
          ...(gauge.plate === null ? [] : [plateScene(bench, gauge, gauge.plate, withBars)]),
        ],
        dxf: profileDxf(bench, gauge),
        csv: null,
      }),
    ),
    ...without.map(
      (band) =>
        `No profile gauge for ${bandWords(band, bench)}: no edge of that cut can be reached straight from outside.`,
    ),
  ];
}

function bridges(bench: Bench): (MarkoutSheet | string)[] {
  return bridgeGauges(bench).flatMap((gauge, i) => [
    ...(gauge.pieces.length === 0 ? [] : [bridgeSheet(bench, gauge, i + 1)]),
    ...noBridgeWords(bench, gauge),
  ]);
}

const bridgeSheet = (bench: Bench, gauge: BridgeGauge, count: number): MarkoutSheet => ({
  name: `bridge-gauge-${count}-${slug(gauge.band.section.id) || 'section'}`,
  purpose: `ply that stands on the face astride ${bandWords(gauge.band, bench)}: how high it may still stand`,
  scenes: (withBars) => [bridgeScene(bench, gauge, withBars)],
  dxf: bridgeDxf(bench, gauge),
  csv: null,
});

/** Letters a file may have in its name on any disk. */
const slug = (words: string): string =>
  words
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 30);

function strips(bench: Bench): MarkoutSheet | string {
  const all = stripsOf(bench);
  if (all.length === 0) return 'No side strip: the cut takes off no stretch of the outside that paper could lie on.';
  return {
    name: 'side-strips',
    purpose: 'paper to wrap along the side, edge on the face, with take-off figures',
    scenes: (withBars) => [stripScene(bench, all, withBars)],
    dxf: null,
    csv: null,
  };
}

function mill(bench: Bench): MarkoutSheet | string {
  const milling = millingOf(bench);
  if ('why' in milling) return `No lines for the milling machine: ${milling.why}.`;
  return {
    name: 'milling',
    purpose: 'where the middle of the cutter goes on a milling machine, set up from two holes',
    scenes: (withBars) => millingScenes(bench, milling, withBars),
    dxf: millingDxf(bench, milling),
    csv: millingCsv(bench, milling),
  };
}

function swing(bench: Bench): MarkoutSheet | string {
  const reading = swingGauge(bench);
  if ('why' in reading) return `No swing gauge: ${reading.why}.`;
  const { gauge } = reading;
  return {
    name: 'swing-gauge',
    purpose: `ply that swings about ${axisName(bench.joint)} as the part goes in, to prove the cut by hand`,
    scenes: (withBars) => [swingPieces(bench, gauge, withBars), swingPlate(bench, gauge, withBars)],
    dxf: swingDxf(bench, gauge),
    csv: null,
  };
}
