import type { CheckAnswer, FirstTouch, HomeAnswer, InstallAnswer } from '../answers/check-answer.ts';
import type { CheckFacts } from '../clearance/check-facts.ts';
import { lengthText } from '../job/length-text.ts';
import type { Joint } from '../joint/joint.ts';
import { columns, indent, inWords, wrapped } from './layout.ts';
import { shortName } from './names.ts';
import { depthOf, depthText, placeText, rangeText, turnRange } from './places.ts';
import { degreesText } from './units.ts';

type Pair = Pick<FirstTouch, 'fixedSection' | 'movingSection'>;
type Point = readonly [number, number];
type Moment = Pick<FirstTouch, 'leg' | 'turnDeg' | 'standOffMm'>;

const deeper = `${indent}${indent}`;

/** Where it stops going in, and what a rule shows there. */
export function firstTouchLines(joint: Joint, { install }: CheckAnswer, facts: CheckFacts): string[] {
  const touch = install?.firstTouch ?? null;
  if (touch === null) return [];
  return [
    ...wrapped(`It stops at ${momentText(joint, touch)}:`),
    ...pairLines(joint, touch),
    ...wrapped(`${placeText(touch.where, joint)}, ${depthText(facts.touchDepth, joint.fit.units)}.`, deeper),
    ...gapLines(joint, facts),
  ];
}

/** The same as terms and what is to be said of each; nothing where nothing touches. */
export function firstTouchFacts(joint: Joint, { install }: CheckAnswer, facts: CheckFacts): [string, string][] {
  const touch = install?.firstTouch ?? null;
  if (touch === null) return [];
  const { units } = joint.fit;
  return [
    ['it stops at', momentText(joint, touch)],
    ...facts.dowelGaps.map(({ fixed, gapMm }): [string, string] => [
      `${fixed} to its hole`,
      `${lengthText(gapMm, units)}, measured square to the crank`,
    ]),
    [shortName(joint.fixed), `"${touch.fixedSection}", ${depthText(facts.touchDepth, units)}`],
    [
      shortName(joint.moving),
      `"${touch.movingSection}", ${depthText(depthOf(joint.moving, touch.movingSection), units)}`,
    ],
    ['place', placeText(touch.where, joint)],
  ];
}

function gapLines({ fit }: Joint, { dowelGaps: [first, ...others] }: CheckFacts): string[] {
  if (first === undefined) return [];
  const gaps = [
    `${first.fixed} is ${lengthText(first.gapMm, fit.units)} from its hole`,
    ...others.map(({ fixed, gapMm }) => `${fixed} ${lengthText(gapMm, fit.units)}`),
  ];
  return wrapped(`There ${inWords(gaps)}, measured square to the crank.`);
}

/** Every pair that fouls on the way in, over which turn, stand-off and depth of the fixed part. */
export const foulingLines = (joint: Joint, answer: CheckAnswer, facts: CheckFacts): string[] =>
  columns(foulingRows(joint, answer, facts));

/** The same as cells, headings first; nothing where nothing fouls. */
export function foulingRows({ fit, fixed, moving }: Joint, { install }: CheckAnswer, facts: CheckFacts): string[][] {
  const fouling = install?.fouling ?? [];
  if (fouling.length === 0) return [];
  return [
    ['leg', 'turn', 'stand-off', shortName(fixed), shortName(moving), 'depth'],
    ...fouling.map((foul, i) => [
      String(foul.leg),
      turnRange(foul.fromTurnDeg, foul.toTurnDeg),
      rangeText(foul.fromStandOffMm, foul.toStandOffMm, fit.units),
      foul.fixedSection,
      foul.movingSection,
      depthText(facts.foulingDepths[i] ?? null, fit.units),
    ]),
  ];
}

/** The two nearest places, at home and on the way in. */
export function closestLines(joint: Joint, { home, install }: CheckAnswer): string[] {
  const on = install?.firstTouch === null ? install.nearest : null;
  return [
    ...(home.nearest === null
      ? []
      : nearestLines(joint, home.state === 'fouls' ? 'At home they meet' : 'At home', home.nearest)),
    ...(on === null ? [] : wayInLines(joint, home.nearest, on)),
    ...endGapLines(joint, { home, install }),
  ];
}

function wayInLines(joint: Joint, home: HomeAnswer['nearest'], on: NonNullable<InstallAnswer['nearest']>): string[] {
  const same = home !== null && samePoint(home.fixedAt, on.fixedAt) && samePoint(home.movingAt, on.movingAt);
  if (same) return wrapped('On the way in: nowhere nearer than at home.');
  return nearestLines(joint, `On the way in, at ${momentText(joint, on)}`, on);
}

/** As near as a builder can tell. */
const samePoint = ([ax, ay]: Point, [bx, by]: Point): boolean => Math.hypot(ax - bx, ay - by) < 0.05;

const nearestLines = (joint: Joint, when: string, nearest: Pair & { readonly fixedAt: Point }): string[] => [
  ...wrapped(`${when}:`),
  ...pairLines(joint, nearest),
  ...wrapped(`${placeText(nearest.fixedAt, joint)}.`, deeper),
];

function endGapLines({ fit }: Joint, { home, install }: Pick<CheckAnswer, 'home' | 'install'>): string[] {
  const gaps = [home.endGapMm, install?.endGapMm ?? null].filter((gap) => gap !== null);
  if (gaps.length === 0) return [];
  return wrapped(
    `End to end along the crank, where sections pass without sharing depth: ${lengthText(Math.min(...gaps), fit.units)}.`,
  );
}

function momentText({ fit }: Joint, { leg, turnDeg, standOffMm }: Moment): string {
  return `a turn of ${degreesText(turnDeg)}, stand-off ${lengthText(standOffMm, fit.units)} (leg ${leg})`;
}

/** Two sections by name, each with its depth from its own face. */
const pairLines = ({ fixed, moving, fit }: Joint, { fixedSection, movingSection }: Pair): string[] => [
  ...wrapped(
    `"${fixedSection}" of ${shortName(fixed)}, ${depthText(depthOf(fixed, fixedSection), fit.units)},`,
    deeper,
  ),
  ...wrapped(
    `"${movingSection}" of ${shortName(moving)}, ${depthText(depthOf(moving, movingSection), fit.units)},`,
    deeper,
  ),
];
