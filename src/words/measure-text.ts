import type { Clearance, RotatingResult, StrayedResult, WanderResult } from '../clearance/check-result.ts';
import type { Foul } from '../clearance/foul.ts';
import { givenLength, lengthText } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Joint } from '../joint/joint.ts';
import { columns, listed } from './layout.ts';
import { shortName } from './names.ts';
import { areaText, comparedText } from './units.ts';

type Measure = Pick<Clearance, 'state' | 'clearanceMm' | 'worstClearanceMm' | 'alongCrankMm'> & {
  readonly foul: Pick<Foul, 'areaMm2' | 'deepestMm'>;
};

interface Measures {
  readonly home: Measure;
  readonly wayIn: Measure | null;
  readonly rotating: readonly RotatingResult[];
  readonly wander: WanderResult | null;
}

/** The figures side by side: as traced, with the tracing error at its worst, and what was asked. */
export const measureLines = (joint: Joint, measured: Measures): string[] => columns(measureRows(joint, measured));

/** The same as cells: what, state, as traced, at worst, asked; headings first. */
export function measureRows(joint: Joint, { home, wayIn, rotating, wander }: Measures): string[][] {
  const { clearance, units } = joint.fit;
  const row = (name: string, measure: Measure, askedMm: number): string[] => [
    name,
    measure.state,
    clearanceText(measure, askedMm, units),
    worstText(measure, askedMm, units),
    givenLength(askedMm, units),
  ];
  return [
    ['', '', 'as traced', 'at worst', 'asked'],
    row('home', home, clearance.homeMm),
    ...(wayIn === null ? [] : [row('way in', wayIn, clearance.wayInMm)]),
    ...rotating.map((part) => rotatingRow(joint, part)),
    ...(wander === null ? [] : strayedRows(joint, wander)),
  ];
}

function strayedRows({ fit: { clearance, units } }: Joint, wander: WanderResult): string[][] {
  const row = (name: string, { state, clearanceMm, worstClearanceMm }: StrayedResult, askedMm: number): string[] => [
    name,
    state,
    strayedText(clearanceMm, askedMm, units),
    strayedText(worstClearanceMm, askedMm, units),
    givenLength(askedMm, units),
  ];
  return [
    row('way in, astray', wander, clearance.wayInMm),
    ...wander.rotating.map((strayed) =>
      row(`${shortName({ name: strayed.part })}, turning, astray`, strayed, clearance.rotatingMm),
    ),
  ];
}

function strayedText(mm: number | null, askedMm: number, units: Units): string {
  if (mm === null) return 'out of reach';
  return mm > 0 ? comparedText(mm, askedMm, units) : 'may touch';
}

function rotatingRow({ fit }: Joint, result: RotatingResult): string[] {
  const { rotatingMm } = fit.clearance;
  const name = `${shortName({ name: result.part })}, turning, to ${result.against} part`;
  return [name, result.state, clearanceText(result, rotatingMm, fit.units), '', givenLength(rotatingMm, fit.units)];
}

function clearanceText(
  measure: Pick<Measure, 'clearanceMm' | 'state'> & Partial<Pick<Measure, 'foul' | 'alongCrankMm'>>,
  askedMm: number,
  units: Units,
): string {
  const { clearanceMm, state, alongCrankMm, foul } = measure;
  if (clearanceMm === null) return 'out of reach';
  if (state === 'fouls' && alongCrankMm !== undefined && foul !== undefined) {
    if (alongCrankMm !== 0 && alongCrankMm !== null) return `${lengthText(alongCrankMm, units)} along the axis`;
    return foul.deepestMm === null ? 'right through' : `${lengthText(foul.deepestMm, units)} deep`;
  }
  const text = comparedText(clearanceMm, askedMm, units);
  return state === 'undecided' ? `at least ${text}` : text;
}

function worstText({ state, worstClearanceMm, alongCrankMm }: Measure, askedMm: number, units: Units): string {
  if (state === 'fouls') {
    return worstClearanceMm === null || alongCrankMm !== 0 ? '' : `${lengthText(0 - worstClearanceMm, units)} deep`;
  }
  return worstClearanceMm === null ? '' : comparedText(worstClearanceMm, askedMm, units);
}

/** How much metal stands in the way, at home and on the way in. */
export const foulLines = (joint: Joint, measured: Pick<Measures, 'home' | 'wayIn'>): string[] =>
  listed(foulTexts(joint, measured));

export function foulTexts({ fit: { units } }: Joint, { home, wayIn }: Pick<Measures, 'home' | 'wayIn'>): string[] {
  return [
    ...(home.state === 'fouls' ? [`At home ${foulText(home, units)}.`] : []),
    ...(wayIn?.state === 'fouls' ? [`On the way in ${foulText(wayIn, units)}.`] : []),
  ];
}

function foulText({ foul: { areaMm2, deepestMm }, alongCrankMm }: Measure, units: Units): string {
  if (alongCrankMm !== null && alongCrankMm > 0) {
    return `sections pass one another end to end, ${lengthText(alongCrankMm, units)} apart along the axis, which is less than the depth margin`;
  }
  const deep =
    deepestMm === null ? 'a section has nothing left' : `${lengthText(deepestMm, units)} deep at the deepest`;
  return `${areaText(areaMm2, units)} of metal stand in the way, ${deep}`;
}
