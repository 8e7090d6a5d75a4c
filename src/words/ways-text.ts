import type { CheckResult } from '../clearance/check-result.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import { givenLength, lengthText } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Joint } from '../joint/joint.ts';
import type { WayOrigin } from '../ways/cheapest/candidates.ts';
import type { CutWay, WayCut } from '../ways/cheapest/cheapest-ways.ts';
import type { Corridor, Window } from '../ways/corridors.ts';
import type { WaysResult } from '../ways/find-ways.ts';
import type { MapStrip } from '../ways/turn-map.ts';
import type { TurnRange } from '../ways/turns.ts';
import type { WayPlace } from '../ways/way-along.ts';
import { checkCautions, grindCautions } from './cautions.ts';
import { againstTexts } from './hindrance-text.ts';
import { columns, inWords, listed, paragraph, sentence, wrapped } from './layout.ts';
import { shortName, titleOf } from './names.ts';
import { clockText, rangeText, turnRange } from './places.ts';
import { reasonText } from './reasons.ts';
import { comparedText, degreesOf, massText, turnText, volumeText } from './units.ts';
import { forgivenText, strayedTexts } from './wander-text.ts';

/** Every way in as a builder reads it: whether one needs no cutting, which is the widest, and what the others cost. */
export function waysText(joint: Joint, ways: WaysResult): string {
  return [
    ...wrapped(waysLine(joint, ways), ''),
    titleOf(joint),
    ...paragraph('The widest way in', listed(widestTexts(joint, ways))),
    ...paragraph(
      'Ways to come home without touching',
      ways.corridors.flatMap((corridor) => corridorLines(joint, corridor)),
    ),
    ...paragraph('What a way in would cost', costLines(joint, ways)),
    ...paragraph('Carried aside at first', listed(liftTexts(joint, ways))),
    ...paragraph('The map', mapLines(joint, ways)),
    ...paragraph('What this rests on', listed(groundTexts(joint, ways))),
    ...paragraph('Next', listed(nextTexts(joint, ways))),
    ...paragraph('Take care', listed(ways.cheapest === null ? checkCautions(joint) : grindCautions(joint))),
    '',
  ].join('\n');
}

/** What was found, the verdict first, then what the widest way keeps and forgives. */
export const wayFound = (joint: Joint, ways: WaysResult): [string, ...string[]] => [
  waysLine(joint, ways),
  ...widestTexts(joint, ways),
];

/** What was found, in one line, the verdict first. */
export function waysLine(joint: Joint, ways: WaysResult): string {
  const { units } = joint.fit;
  const { exists, widest, check, reason, askedMm, asked } = ways;
  if (reason === 'no-depths') return 'UNDECIDED: metal without a depth may be met at every stand-off. State depths.';
  if (reason !== null) return `UNDECIDED: ${reasonText(reason)}.`;
  if (exists === true && widest !== null) {
    return `A WAY WITHOUT CUTTING: ${wayText(widest.way, units)}; ${closestText(widest.clearanceMm, check, units)}.`;
  }
  if (ways.lifts?.way != null) {
    const { positions, check: lifted } = ways.lifts.way;
    const closest = closestText(lifted.wayIn?.clearanceMm ?? null, lifted, units);
    return `A WAY WITHOUT CUTTING, CARRIED ASIDE AT FIRST: ${wayText(positions, units)}; ${closest}. About the axis alone there is none.`;
  }
  if (isLost(ways) && widest !== null)
    return `UNDECIDED: ${wayText(widest.way, units)} needs no cutting where nobody strays from it; within the wander asked it keeps less than was asked, and no other way was looked at so.`;
  if (exists === null)
    return 'UNDECIDED: where nobody has traced, metal may stand in every way that keeps the clearance asked.';
  const none = `NO WAY WITHOUT CUTTING: none of turning and sliding within ${turnRange(asked.fromRad, asked.toRad)} keeps all that was asked (${givenLength(askedMm, units)} on the way in)`;
  return `${none}; ${widestKeeps(ways, units)}${cheapestPhrase(ways, units)}.`;
}

/** What a way without cutting keeps, and whether at worst too. */
function closestText(clearanceMm: number | null, check: CheckResult | null, units: Units): string {
  const near = clearanceMm === null ? 'nothing comes near' : `${lengthText(clearanceMm, units)} at the closest`;
  return `${near}${check?.verdict === 'goes' ? '' : '; as traced: the tracing error could eat it up'}`;
}

function widestKeeps({ widest, askedMm }: WaysResult, units: Units): string {
  if (widest === null) return 'metal meets metal on every one';
  return widest.clearanceMm === null
    ? 'though nothing comes near'
    : `the widest keeps ${comparedText(widest.clearanceMm, askedMm, units)}`;
}

function cheapestPhrase({ cheapest }: WaysResult, units: Units): string {
  const [best] = cheapest?.ways ?? [];
  if (best === undefined || isUncured(best)) return '; no cut of what is offered cures it';
  return `; the cheapest cut takes ${amountText(best, units)}${best.holds ? '' : ', and does not hold'}`;
}

/** A way about the axis, as it is gone. */
export function wayText(way: readonly WayPlace[], units: Units): string {
  const [start, ...rest] = way;
  if (start === undefined) return '';
  const steps = rest.map((point, i) => {
    const before = way[i] as WayPlace;
    if (isAside(before) && !isAside(point)) return 'there over onto the axis';
    if (point.standOffMm === 0)
      return before.turnRad === 0 ? 'slide home' : `slide home, turning to ${turnText(point.turnRad)}`;
    if (point.standOffMm === before.standOffMm) return `there turn to ${turnText(point.turnRad)}`;
    return `slide to ${givenLength(roundedMm(point.standOffMm), units)}`;
  });
  const turned = start.turnRad === 0 ? 'straight' : `turned ${turnText(start.turnRad)}`;
  return `${isAside(start) ? `${asideText(start.shift, units)}, ` : ''}${turned}, ${steps.join(', ')}`;
}

const isAside = ({ shift }: WayPlace): boolean => shift !== undefined && (shift.x !== 0 || shift.y !== 0);

/** How far aside, and where to. */
function asideText({ x, y }: Vec = { x: 0, y: 0 }, units: Units): string {
  return `carried ${givenLength(roundedMm(Math.hypot(x, y)), units)} toward ${clockText(degreesOf(Math.atan2(y, x)))}`;
}

const roundedMm = (mm: number): number => Math.round(mm * 100) / 100;

/** Whether the way found keeps what was asked only where nobody strays from it. */
export const isLost = ({ exists, check }: WaysResult): boolean => exists === null && check?.wander?.decides === true;

function wanderTexts({ fit }: Joint, { forgives, check }: WaysResult): string[] {
  const { units } = fit;
  return [
    ...(forgives === null ? [] : [forgivenText(forgives, units)]),
    ...(check === null ? [] : strayedTexts(check, units)),
  ];
}

function widestTexts(joint: Joint, ways: WaysResult): string[] {
  const { widest, check } = ways;
  const { units } = joint.fit;
  if (widest === null) return [];
  const { clearanceMm, boundMm, way } = widest;
  if (clearanceMm === null) return [`${wayText(way, units)}: nothing comes near.`];
  const worst = check?.wayIn?.worstClearanceMm ?? null;
  const atWorst = worst === null ? '' : `, ${lengthText(worst, units)} with every tracing error against you`;
  const home = check?.home.clearanceMm ?? null;
  return [
    `${sentence(wayText(way, units))} keeps ${lengthText(clearanceMm, units)} as traced${atWorst}.`,
    `No way keeps more than ${(clearanceMm + boundMm).toFixed(4)} mm${home !== null && clearanceMm + boundMm >= home ? ', since that is what there is at home' : ''}.`,
    ...wanderTexts(joint, ways),
  ];
}

const corridorLines = ({ fit: { units } }: Joint, { clearanceMm, way, windows }: Corridor): string[] => [
  ...listed([
    `${clearanceMm === null ? 'Nothing comes near' : `${lengthText(clearanceMm, units)} at most`}: ${wayText(way, units)}.`,
  ]),
  ...columns(windows.map((window) => ['    ', ...windowCells(window, units)])),
];

const windowCells = ({ fromMm, toMm, turns }: Window, units: Units): string[] => [
  `stand-off ${rangeText(fromMm, toMm, units)}`,
  `turned ${turnRange(turns.fromRad, turns.toRad)}`,
];

const isUncured = ({ against }: WayCut): boolean => against.some(({ code }) => code === 'uncured');

function amountText({ volumeMm3, massG }: WayCut, units: Units): string {
  if (massG !== null) return massText(massG);
  return volumeMm3 === null ? 'metal that has no depth stated' : volumeText(volumeMm3, units);
}

const names: Readonly<Record<WayOrigin, string>> = {
  found: 'found',
  'the-fit': 'as the fit asks',
  'straight-in': 'straight in',
};

const originText = ({ of, also }: CutWay): string => inWords([of, ...also].map((origin) => names[origin]));

function costLines({ fit: { units } }: Joint, { cheapest }: WaysResult): string[] {
  if (cheapest === null) return [];
  const rows = cheapest.ways.map((way) => cutText(way, `${wayText(way.way, units)} (${originText(way)})`, units));
  const { lowerBoundMm3 } = cheapest;
  const bound =
    lowerBoundMm3 === null
      ? 'No way that goes inward all the time with three turns or fewer spares what is not offered.'
      : `No way that goes inward all the time with three turns or fewer, and spares what is not offered, takes off less than ${volumeText(lowerBoundMm3, units)} for the clearance alone.`;
  return listed([...rows, bound]);
}

/** What a cut takes, along which way, and whether it holds. */
function cutText(cut: WayCut, way: string, units: Units): string {
  const against = isUncured(cut) ? ['not to be had by cutting what is offered'] : againstTexts(cut.against, units);
  const verdict = cut.holds ? 'holds' : `does not hold: ${inWords(against)}`;
  return `${isUncured(cut) ? '' : `${amountText(cut, units)}: `}${way}. ${sentence(verdict)}.`;
}

/** What carrying it aside at first came to, and what was looked at for that. */
function liftTexts({ fit: { units, engagesAtMm } }: Joint, { lifts }: WaysResult): string[] {
  if (lifts === null) return [];
  const onShaft =
    engagesAtMm === null
      ? ['No input shaft is stated, so that none holds it on the axis: give "inputShaft" if there is one.']
      : [];
  const { lift, shifts, way, cut } = lifts;
  const looked = `Looked at: ${shifts} places up to ${givenLength(roundedMm(lift.mostMm), units)} aside, ${givenLength(roundedMm(lift.stepMm), units)} apart`;
  if (way !== null) {
    const worstMm = way.check.wayIn?.worstClearanceMm ?? null;
    const atWorst =
      worstMm === null ? '' : ` With every tracing error against you it keeps ${lengthText(worstMm, units)}.`;
    return [
      `${sentence(wayText(way.positions, units))}.${atWorst}`,
      `${looked}, the nearest first; others were not.`,
      ...onShaft,
    ];
  }
  const none = `${looked}: none shows a way without cutting. Between them nothing is known.`;
  if (cut === null) return [none];
  return [cutText(cut, wayText(cut.positions, units), units), none, ...onShaft];
}

/** The strips from the outside in, those with nothing in the way told together. */
function mapLines({ fit: { units } }: Joint, { strips, asked }: WaysResult): string[] {
  if (strips.length === 0) return [];
  const rows = mergedStrips(strips).map(({ fromMm, toMm, free, onDowels }) => [
    `stand-off ${rangeText(fromMm, toMm, units)}`,
    onDowels ? (free.some(holdsHome) ? 'on the dowels, free' : 'on the dowels, blocked') : freeText(free, asked),
  ]);
  return columns(rows);
}

const holdsHome = ({ fromRad, toRad }: TurnRange): boolean => fromRad <= 0 && toRad >= 0;

function freeText(free: readonly TurnRange[], asked: TurnRange): string {
  if (free.length === 0) return 'no turn is free';
  const all = free[0]?.fromRad === asked.fromRad && free[0]?.toRad === asked.toRad;
  return all ? 'every turn is free' : `free: ${free.map(({ fromRad, toRad }) => turnRange(fromRad, toRad)).join(', ')}`;
}

interface TextStrip {
  readonly fromMm: number;
  readonly toMm: number;
  readonly onDowels: boolean;
  readonly free: readonly TurnRange[];
}

function mergedStrips(strips: readonly MapStrip[]): TextStrip[] {
  const merged: TextStrip[] = [];
  for (const { strip, free } of strips.toReversed()) {
    const last = merged.at(-1);
    const { fromMm, toMm, onDowels } = strip;
    if (last !== undefined && last.onDowels === onDowels && isSame(last.free, free, onDowels))
      merged[merged.length - 1] = { ...last, fromMm };
    else merged.push({ fromMm, toMm, onDowels, free });
  }
  return merged;
}

/** On the dowels it matters only whether home is free. */
const isSame = (a: readonly TurnRange[], b: readonly TurnRange[], onDowels: boolean): boolean =>
  onDowels
    ? a.some(holdsHome) === b.some(holdsHome)
    : a.length === b.length && a.every((range, i) => range.fromRad === b[i]?.fromRad && range.toRad === b[i]?.toRad);

export function groundTexts({ fixed, moving }: Joint, { reason, asked, lifts }: WaysResult): string[] {
  if (reason !== null) return [];
  const untold = [fixed, moving].filter(({ traced }) => traced === null).map(shortName);
  return [
    `Proved both ways for the outlines as traced: every turn within ${turnRange(asked.fromRad, asked.toRad)} at every stand-off, with the moving part on the axis.${lifts === null ? ' Lifting it aside was not looked at.' : ''}`,
    ...(untold.length === 0
      ? []
      : [
          `What was traced of ${inWords(untold)} is taken as complete: turned otherwise, metal may pass that nobody thought to trace.`,
        ]),
    'Nothing is known of what stands round the castings: whether vehicle, hoist and shaft leave room to turn it so is for you to see.',
  ];
}

function nextTexts({ fit }: Joint, { exists, cheapest, reason, lifts }: WaysResult): string[] {
  if (reason !== null) return [`Check it first: fettle check ${fit.file}`];
  if (exists === true || lifts?.way != null)
    return [
      `Put the way into the fit: fettle ways ${fit.file} --write`,
      'Then offer it up that way by hand, with modelling clay where it is closest.',
    ];
  if (cheapest === null) return [];
  return [
    ...(lifts === null ? [`See whether lifting it past helps: fettle ways ${fit.file} --lift 30`] : []),
    `Put the cheapest of these ways into the fit, then plan it: fettle ways ${fit.file} --write && fettle grind ${fit.file}`,
  ];
}
