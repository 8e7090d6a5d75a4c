import type { Clearance } from '../../clearance/check-result.ts';
import { vec } from '../../geometry/plane/vec.ts';
import { givenLength, lengthText } from '../../job/length-text.ts';
import type { Units } from '../../job/lengths.ts';
import type { Joint } from '../../joint/joint.ts';
import { alternativeTexts } from '../../words/alternative-text.ts';
import { checkCautions, grindCautions } from '../../words/cautions.ts';
import { groundsOf } from '../../words/check-text.ts';
import { partText, viewedFromText } from '../../words/part-text.ts';
import { rangeText, turnRange } from '../../words/places.ts';
import { uncuredLines, wallLines } from '../../words/plan-text.ts';
import { areaText } from '../../words/units.ts';
import { strayedTexts } from '../../words/wander-text.ts';
import { bandsOf, type DrawInput } from '../fit/draw-input.ts';
import { layer, text, viewOf } from './marks.ts';
import type { TextMark, View } from './scene.ts';
import type { Sizes } from './sizes.ts';
import { wrapText } from './text-size.ts';

const lineHeight = 1.28;
const gapAfter = 0.35;

interface Note {
  readonly words: string;
  readonly bold?: boolean;
}

/** What one has to know to use the drawing: figures, the parts and how they were seen, what is proved, cautions. */
export function notes(input: DrawInput, widthMm: number, sizes: Sizes): View {
  const { textMm } = sizes;
  let y = 0;
  const marks: TextMark[] = [];
  for (const { words, bold = false } of notesOf(input)) {
    if (bold) y -= 0.4 * textMm;
    for (const row of wrapText(words, textMm, widthMm, bold)) {
      marks.push(text(vec(0, y), row, textMm, { bold }));
      y -= lineHeight * textMm;
    }
    y -= gapAfter * textMm;
  }
  return viewOf('notes', [layer('text', marks)]);
}

function notesOf(input: DrawInput): Note[] {
  const { joint, check, plan } = input;
  const cuts = bandsOf(plan).length > 0;
  const cautions = cuts ? grindCautions(joint) : checkCautions(joint);
  return [
    ...wayIn(joint),
    ...planNotes(input),
    ...alternativeNotes(input),
    { words: 'Viewed from', bold: true },
    { words: viewedFromText(joint) },
    { words: partText('Fixed', joint.fixed) },
    { words: partText('Moving', joint.moving) },
    { words: 'What it rests on', bold: true },
    ...groundsOf(joint, check).map((words) => ({ words })),
    { words: 'Take care', bold: true },
    ...cautions.map((words) => ({ words })),
  ];
}

/** The verdict's figures, a sentence each. */
export function figuresOf({ joint, check }: DrawInput): string[] {
  const { units, clearance } = joint.fit;
  const { home, wayIn, rotating, wander } = check;
  const close = rotating.filter(({ clearanceMm }) => clearanceMm !== null && clearanceMm < clearance.rotatingMm);
  const row = (name: string, measure: MeasureFigures, askedMm: number): string =>
    `${name}: ${measureText(measure, units)}; asked ${givenLength(askedMm, units)}.`;
  return [
    row('Home', home, clearance.homeMm),
    ...(wayIn === null ? [] : [row('Way in', wayIn, clearance.wayInMm)]),
    ...close.map((part) =>
      row(`${part.part} to the ${part.against} part`, { ...part, worstClearanceMm: null }, clearance.rotatingMm),
    ),
    ...strayedTexts({ wander }, units),
  ];
}

/** Walls behind the cut and what the plan leaves in the way. */
function planNotes({ joint, plan }: DrawInput): Note[] {
  if (plan === null) return [];
  const lines = [...wallLines(joint, plan), ...uncuredLines(joint, plan)];
  return lines.length === 0 ? [] : [{ words: 'Walls, and what is left', bold: true }, ...sentencesOf(lines)];
}

/** What else would give where the plan does not hold. */
function alternativeNotes({ joint, alternatives }: DrawInput): Note[] {
  const texts = alternativeTexts(joint, alternatives);
  return texts.length === 0
    ? []
    : [{ words: 'What else would give', bold: true }, ...texts.map((words) => ({ words }))];
}

/** The sentences of a list laid out for a terminal. */
const sentencesOf = (lines: readonly string[]): Note[] =>
  lines
    .join('\n')
    .split(/^ *- /m)
    .map((words) => ({ words: words.replace(/\s+/g, ' ').trim() }))
    .filter(({ words }) => words !== '');

/** Of rotating parts no foul is measured. */
type MeasureFigures = Pick<Clearance, 'state' | 'clearanceMm' | 'worstClearanceMm'> & Partial<Pick<Clearance, 'foul'>>;

function measureText({ state, clearanceMm, worstClearanceMm, foul }: MeasureFigures, units: Units): string {
  if (clearanceMm === null) return 'never near';
  if (state === 'fouls') {
    if (foul === undefined) return 'fouls';
    const { areaMm2, deepestMm } = foul;
    const deep = deepestMm === null ? 'a section has nothing left' : `up to ${lengthText(deepestMm, units)} deep`;
    return `fouls, ${areaText(areaMm2, units)} in the way, ${deep}`;
  }
  const traced = `${state}, ${state === 'undecided' ? 'at least ' : ''}${lengthText(clearanceMm, units)} as traced`;
  if (worstClearanceMm === null) return traced;
  return `${traced}, ${lengthText(worstClearanceMm, units).replace('-', '−')} with every tracing error against you`;
}

function wayIn({ fit: { legs, units } }: Joint): Note[] {
  const words = legs.map(
    ({ from, to }, i) =>
      `leg ${i + 1}: turn ${turnRange(from.turnRad, to.turnRad)}, stand-off ${rangeText(from.standOffMm, to.standOffMm, units)}`,
  );
  return words.length === 0 ? [] : [{ words: `Way in, ${words.join('; ')}.` }];
}
