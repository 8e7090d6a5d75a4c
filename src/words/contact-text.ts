import type { CheckResult, FirstTouch, Instant, NearestPlaces } from '../clearance/check-result.ts';
import type { SectionPair } from '../clearance/notices.ts';
import { distance, type Vec } from '../geometry/plane/vec.ts';
import { lengthText } from '../job/length-text.ts';
import type { Joint } from '../joint/joint.ts';
import { columns, indent, inWords, wrapped } from './layout.ts';
import { shortName } from './names.ts';
import { depthOf, depthText, placeText, rangeText, turnRange } from './places.ts';
import { turnText } from './units.ts';

type WayIn = Pick<CheckResult, 'wayIn'>;
type HomeAndWayIn = Pick<CheckResult, 'home' | 'wayIn'>;

const deeper = `${indent}${indent}`;

/** Where it stops going in, and what a rule shows there. */
export function firstTouchLines(joint: Joint, { wayIn }: WayIn): string[] {
  const touch = wayIn?.firstTouch ?? null;
  if (touch === null) return [];
  return [
    ...wrapped(`It stops at ${momentText(joint, touch)}:`),
    ...pairLines(joint, touch),
    ...wrapped(`${placeText(touch.where, joint)}, ${depthText(touch.depth, joint.fit.units)}.`, deeper),
    ...gapLines(joint, touch),
  ];
}

/** The same as terms and what is to be said of each; nothing where nothing touches. */
export function firstTouchFacts(joint: Joint, { wayIn }: WayIn): [string, string][] {
  const touch = wayIn?.firstTouch ?? null;
  if (touch === null) return [];
  const { units } = joint.fit;
  return [
    ['it stops at', momentText(joint, touch)],
    ...touch.dowelGaps.map(({ fixed, gapMm }): [string, string] => [
      `${fixed} to its hole`,
      `${lengthText(gapMm, units)}, measured square to the axis`,
    ]),
    [shortName(joint.fixed), `"${touch.fixedSection}", ${depthText(touch.depth, units)}`],
    [
      shortName(joint.moving),
      `"${touch.movingSection}", ${depthText(depthOf(joint.moving, touch.movingSection), units)}`,
    ],
    ['place', placeText(touch.where, joint)],
  ];
}

function gapLines({ fit }: Joint, { dowelGaps: [first, ...others] }: FirstTouch): string[] {
  if (first === undefined) return [];
  const gaps = [
    `${first.fixed} is ${lengthText(first.gapMm, fit.units)} from its hole`,
    ...others.map(({ fixed, gapMm }) => `${fixed} ${lengthText(gapMm, fit.units)}`),
  ];
  return wrapped(`There ${inWords(gaps)}, measured square to the axis.`);
}

/** Every pair that fouls on the way in, over which turn, stand-off and depth of the fixed part. */
export const foulingLines = (joint: Joint, check: WayIn): string[] => columns(foulingRows(joint, check));

/** The same as cells, headings first; nothing where nothing fouls. */
export function foulingRows({ fit, fixed, moving }: Joint, { wayIn }: WayIn): string[][] {
  const fouling = wayIn?.fouling ?? [];
  if (fouling.length === 0) return [];
  return [
    ['leg', 'turn', 'stand-off', shortName(fixed), shortName(moving), 'depth'],
    ...fouling.map(({ from, to, fixedSection, movingSection, depth }) => [
      String(from.leg),
      turnRange(from.turnRad, to.turnRad),
      rangeText(from.standOffMm, to.standOffMm, fit.units),
      fixedSection,
      movingSection,
      depthText(depth, fit.units),
    ]),
  ];
}

/** The two nearest places, at home and on the way in. */
export function closestLines(joint: Joint, { home, wayIn }: HomeAndWayIn): string[] {
  const on = wayIn?.firstTouch === null ? wayIn.nearest : null;
  return [
    ...(home.nearest === null
      ? []
      : nearestLines(joint, home.state === 'fouls' ? 'At home they meet' : 'At home', home.nearest)),
    ...(on === null ? [] : wayInLines(joint, home.nearest, on)),
    ...endGapLines(joint, { home, wayIn }),
  ];
}

function wayInLines(joint: Joint, home: NearestPlaces | null, on: NearestPlaces & Instant): string[] {
  const same = home !== null && samePoint(home.fixedAt, on.fixedAt) && samePoint(home.movingAt, on.movingAt);
  if (same) return wrapped('On the way in: nowhere nearer than at home.');
  return nearestLines(joint, `On the way in, at ${momentText(joint, on)}`, on);
}

/** As near as a builder can tell. */
const samePoint = (a: Vec, b: Vec): boolean => distance(a, b) < 0.05;

const nearestLines = (joint: Joint, when: string, nearest: NearestPlaces): string[] => [
  ...wrapped(`${when}:`),
  ...pairLines(joint, nearest),
  ...wrapped(`${placeText(nearest.fixedAt, joint)}.`, deeper),
];

function endGapLines({ fit }: Joint, { home, wayIn }: HomeAndWayIn): string[] {
  const gaps = [home.endGapMm, wayIn?.endGapMm ?? null].filter((gap) => gap !== null);
  if (gaps.length === 0) return [];
  return wrapped(
    `End to end along the axis, where sections pass without sharing depth: ${lengthText(Math.min(...gaps), fit.units)}.`,
  );
}

function momentText({ fit }: Joint, { leg, turnRad, standOffMm }: Instant): string {
  return `a turn of ${turnText(turnRad)}, stand-off ${lengthText(standOffMm, fit.units)} (leg ${leg})`;
}

/** Two sections by name, each with its depth from its own face. */
const pairLines = ({ fixed, moving, fit }: Joint, { fixedSection, movingSection }: SectionPair): string[] => [
  ...wrapped(
    `"${fixedSection}" of ${shortName(fixed)}, ${depthText(depthOf(fixed, fixedSection), fit.units)},`,
    deeper,
  ),
  ...wrapped(
    `"${movingSection}" of ${shortName(moving)}, ${depthText(depthOf(moving, movingSection), fit.units)},`,
    deeper,
  ),
];
