import type { Edge } from '../../geometry/plane/edge.ts';
import { moveRegion } from '../../geometry/plane/loop.ts';
import { apply } from '../../geometry/plane/rigid.ts';
import type { Vec } from '../../geometry/plane/vec.ts';
import { figure, givenLength, inUnits } from '../../job/length-text.ts';
import type { Units } from '../../job/lengths.ts';
import type { Bench } from '../../markout/marking-out-bench.ts';
import { type Milling, type MillPass, onTable } from '../../markout/milling.ts';
import { shortName } from '../../words/names.ts';
import type { Scene } from '../scene/scene.ts';
import { csvOf } from './csv.ts';
import { colours, finished, holeLayers, outlines } from './markout-dxf.ts';
import { type Column, tableSheets } from './sheet-table.ts';
import { bandWords, templateWords } from './template-words.ts';

/** One place on a line of the cutter's middle, on the table of the machine. */
interface MillRow {
  readonly pass: number;
  /** Told once for each line; null where it was told. */
  readonly tipsOf: MillPass | null;
  readonly line: number;
  readonly point: number;
  readonly at: Vec;
  /** How it goes on to the next place; null at the end of a line. */
  readonly next: Edge | null;
}

/** Figures for a machine, to 0.01 mm or 0.0005 in. */
const machined = (mm: number, units: Units): string => figure(inUnits(mm, units), units === 'mm' ? 2 : 4);

function rowsOf({ passes, datum }: Milling): MillRow[] {
  return passes.flatMap((pass, p) =>
    pass.lines.flatMap((line, l) => {
      const edges = line.map((edge) => onTable(edge, datum));
      const places = [...edges.map(({ a }) => a), ...edges.slice(-1).map(({ b }) => b)];
      return places.map(
        (at, i): MillRow => ({
          pass: p + 1,
          tipsOf: i === 0 ? pass : null,
          line: l + 1,
          point: i + 1,
          at,
          next: edges[i] ?? null,
        }),
      );
    }),
  );
}

/** `20`, or `4, 8, 12`. */
const tipsText = ({ tipsMm }: MillPass, units: Units): string => tipsMm.map((mm) => machined(mm, units)).join(', ');

/** More than these are told by the first, the last of even steps, and the step: the sheet is not wide enough for all. */
const mostTips = 4;

/** `20`, `4, 8, 12`, or `1 to 19 every 1, 19.5`: a ball goes down by even steps, but for the last. */
function tipsInShort(pass: MillPass, units: Units): string {
  const { tipsMm } = pass;
  const [first = 0, second = 0] = tipsMm;
  if (tipsMm.length <= mostTips) return tipsText(pass, units);
  const isEven = (mm: number, i: number): boolean => Math.abs(mm - first - i * (second - first)) < hairMm;
  const even = tipsMm.filter(isEven);
  const rest = tipsMm.filter((mm, i) => !isEven(mm, i)).map((mm) => machined(mm, units));
  const steps = `${machined(first, units)} to ${machined(even.at(-1) ?? 0, units)} every ${machined(second - first, units)}`;
  return [steps, ...rest].join(', ');
}

const hairMm = 1e-6;

const columnsIn = (units: Units, tipsIn: (pass: MillPass, units: Units) => string): Column<MillRow>[] => {
  const ofArc =
    (say: (arc: Edge & { readonly kind: 'arc' }) => string) =>
    ({ next }: MillRow) =>
      next?.kind === 'arc' ? say(next) : '';
  return [
    { heading: ['', 'pass'], of: ({ pass }) => String(pass), bold: true },
    { heading: ['', 'line'], of: ({ line }) => String(line) },
    { heading: ['', 'point'], of: ({ point }) => String(point) },
    { heading: ['', 'X'], of: ({ at }) => machined(at.x, units), bold: true },
    { heading: ['', 'Y'], of: ({ at }) => machined(at.y, units), bold: true },
    {
      heading: ['to the', 'next'],
      of: ({ next }) =>
        next === null ? 'end' : next.kind === 'line' ? 'line' : next.sweepRad > 0 ? 'arc left' : 'arc right',
    },
    { heading: ['arc', 'radius'], of: ofArc(({ radius }) => machined(radius, units)) },
    { heading: ['middle', 'X'], of: ofArc(({ centre }) => machined(centre.x, units)) },
    { heading: ['', 'Y'], of: ofArc(({ centre }) => machined(centre.y, units)) },
    { heading: ['tip', 'from face'], of: ({ tipsOf }) => (tipsOf === null ? '' : tipsIn(tipsOf, units)), isName: true },
  ];
};

/** The table of places for the cutter's middle, as many sheets as it takes. */
export function millingScenes(bench: Bench, milling: Milling, withBars: boolean): Scene[] {
  const { units } = bench.joint.fit;
  const steps = millingSteps(bench, milling);
  return tableSheets(
    (sheet) => templateWords(bench, `For the milling machine${sheet}`, steps),
    columnsIn(units, tipsInShort),
    rowsOf(milling),
    withBars,
  );
}

function millingSteps(bench: Bench, { datum, cutter, passes }: Milling): string[] {
  const { units } = bench.joint.fit;
  const { origin, along, place } = datum;
  const far = apply(place, along.at);
  const keptOff = passes.flatMap(({ isKeptOff }, i) => (isKeptOff ? [i + 1] : []));
  return [
    `Set it up with the mating face of ${shortName(bench.present)} up and square to the spindle: X 0, Y 0 in the middle of ${origin.id}, X toward ${along.id}, which then stands at X ${machined(far.x, units)}. Lengths in ${units}.`,
    `X and Y are for the middle of a ${cutter.nose}-nosed cutter of radius ${givenLength(cutter.radiusMm, units)}; "tip" is how deep from the face its end goes. That finishes the planned edge: what stands outside it is roughed off first. Never past the last line.`,
    'Lines run with the metal that stays on their left; which way they are run is yours to choose, and so are feeds and speeds. An arc to the left turns anticlockwise.',
    `Passes: ${passes.map(({ band }, i) => `${i + 1}: ${bandWords(band, bench)}`).join('; ')}.`,
    'Only the casting as traced was looked at: not clamps, nor the spindle, nor what nobody traced.',
    ...(keptOff.length === 0
      ? []
      : [
          `Metal that stays keeps the cutter off part of the edge in pass ${keptOff.join(', ')}: that is left to the hand.`,
        ]),
  ];
}

/** The same table as a CSV file, in the units of the fit. */
export function millingCsv(bench: Bench, milling: Milling): string {
  const { units } = bench.joint.fit;
  const columns = columnsIn(units, tipsText).map(({ heading: [over, under], of }) => ({
    heading: `${over} ${under}`.trim(),
    of,
  }));
  return csvOf(columns, rowsOf(milling));
}

/** The lines of the cutter's middle, the planned edge and the casting, on the table of the machine. */
export function millingDxf(bench: Bench, { passes, datum }: Milling): string {
  const there = (loops: Parameters<typeof moveRegion>[0]) => moveRegion(loops, datum.place);
  const { sections, holes } = bench.present;
  return finished(
    bench,
    [
      ...passes.map(({ lines }, i) => ({
        name: `PASS-${i + 1}`,
        colour: colours.red,
        shapes: lines.map((line) => ({ kind: 'run' as const, edges: line.map((edge) => onTable(edge, datum)) })),
      })),
      outlines('RELIEF', colours.green, there(bench.bands.flatMap(({ relief }) => relief))),
      outlines('PART', colours.black, there(sections.flatMap(({ loops }) => loops))),
      ...holeLayers(holes.map((hole) => ({ ...hole, at: apply(datum.place, hole.at) }))),
    ],
    passes.map((pass, i) => `PASS-${i + 1}: ${bandWords(pass.band, bench)}, tip ${tipsText(pass, 'mm')} from face`),
    { origin: `the middle of ${datum.origin.id} is at 0, 0, X runs to ${datum.along.id}` },
  );
}
