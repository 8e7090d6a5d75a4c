import { bareGivenLength, givenLength, inUnits, tracedDecimals } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Joint } from '../joint/joint.ts';
import type { RoomLimit } from '../room/room-at.ts';
import type { OpenDepth, RoomRange, RoomResult } from '../room/room-on-crank.ts';
import { checkCautions } from './cautions.ts';
import { inWords, listed, paragraph, sentence, wrapped } from './layout.ts';
import { axisName, shortName, titleOf } from './names.ts';
import { reasonSteps, reasonText } from './reasons.ts';

/** The room about the crank as a buyer reads it: how far across a body may be, by depth, and what limits it. */
export function roomText(joint: Joint, room: RoomResult): string {
  return [
    ...wrapped(roomLine(joint, room), ''),
    titleOf(joint),
    ...paragraph('As traced', rangeLines(joint, room.ranges)),
    ...paragraph('With every tracing error against you: buy by this', rangeLines(joint, room.worstRanges)),
    ...paragraph('What this rests on', listed(groundTexts(joint, room))),
    ...paragraph('Next', listed(nextTexts(joint, room))),
    ...paragraph('Take care', listed(checkCautions(joint))),
    '',
  ].join('\n');
}

/** What was found, in one line: the tightest place out from the face, where flywheels and clutches are. */
export function roomLine(joint: Joint, { reason, worstRanges, rotatingMm }: RoomResult): string {
  const { units } = joint.fit;
  if (reason !== null) return `UNDECIDED: ${reasonText(reason)}.`;
  const limited = worstRanges.filter(({ radiusMm }) => radiusMm !== null);
  if (limited.length === 0) return `ROOM: nothing that was traced limits what turns about ${axisName(joint)}.`;
  const kept = `${givenLength(rotatingMm, units)} kept all round`;
  const outside = limited.filter(({ depth: { fromMm } }) => fromMm === null || fromMm < 0);
  const [least] = (outside.length > 0 ? outside : limited).toSorted((a, b) => (a.radiusMm ?? 0) - (b.radiusMm ?? 0));
  const tightest = least as RoomRange;
  if (tightest.radiusMm === 0) return `NO ROOM at worst ${depthWords(tightest.depth, units)}, with ${kept}.`;
  return `ROOM for ${acrossText(tightest.radiusMm ?? 0, units)} across at worst where it is tightest${outside.length > 0 ? ' out from the face' : ''}, ${depthWords(tightest.depth, units)}, with ${kept}.`;
}

const rangeLines = (joint: Joint, ranges: readonly RoomRange[]): string[] =>
  listed(
    shownAlike(ranges, joint.fit.units).map(
      ({ depth, radiusMm, limits }) =>
        `${sentence(depthWords(depth, joint.fit.units))}: ${roomWords(radiusMm, joint.fit.units)}${limits.length === 0 ? '' : `, limited by ${inWords(limitTexts(limits, joint))}`}.`,
    ),
  );

function roomWords(radiusMm: number | null, units: Units): string {
  if (radiusMm === null) return 'as far as you like';
  return radiusMm === 0 ? 'nothing' : `${acrossText(radiusMm, units)} across at most`;
}

/** Neighbours whose figures read alike, as the steps of a leg that goes aside and inward may, are told together. */
function shownAlike(ranges: readonly RoomRange[], units: Units): RoomRange[] {
  const told: RoomRange[] = [];
  for (const range of ranges) {
    const last = told.at(-1);
    const alike = last !== undefined && figureOf(last, units) === figureOf(range, units);
    if (!alike) told.push(range);
    else
      told[told.length - 1] = {
        ...range,
        depth: { ...range.depth, fromMm: last.depth.fromMm },
        limits: [...last.limits, ...range.limits],
      };
  }
  return told;
}

const figureOf = ({ radiusMm }: RoomRange, units: Units): string =>
  radiusMm === null ? '' : acrossText(radiusMm, units);

/** A diameter rounded down, since a body that is larger by the rounding may touch. */
function acrossText(radiusMm: number, units: Units): string {
  const decimals = tracedDecimals[units];
  const perUnit = 10 ** decimals;
  // what the kernel kept back for its own rounding must not cost a tenth
  const across = Math.floor(inUnits(2 * radiusMm, units) * perUnit + 1e-4) / perUnit;
  return `${across.toFixed(decimals)} ${units}`;
}

/** `"flange" and "ribs" of Iron four`, those of one part at one time together. */
function limitTexts(limits: readonly RoomLimit[], { fixed, moving }: Joint): string[] {
  const sections = new Map<string, Set<string>>();
  for (const { part, section, untraced, leg } of limits) {
    const when = leg === null ? '' : `, on leg ${leg} of the way in`;
    const of = `${shortName(part === 'fixed' ? fixed : moving)}${when}`;
    sections.set(of, (sections.get(of) ?? new Set()).add(untraced ? 'what was not traced' : `"${section}"`));
  }
  return [...sections].map(([of, names]) => `${inWords([...names])} of ${of}`);
}

/** A range of depth as one measures it from the fixed face: out from it toward the gearbox, or behind it. */
function depthWords({ fromMm, toMm }: OpenDepth, units: Units): string {
  const place = (mm: number): string =>
    mm === 0 ? 'the face' : `${givenLength(Math.abs(mm), units)} ${mm < 0 ? 'out from the face' : 'behind the face'}`;
  if (fromMm === null && toMm === null) return 'at every depth';
  if (fromMm === null) return `from ${place(toMm ?? 0)} outwards`;
  if (toMm === null) return `from ${place(fromMm)} inwards`;
  const bare = (mm: number): string => bareGivenLength(Math.abs(mm), units);
  if (toMm <= 0) return `from ${bare(toMm)} to ${place(fromMm)}`;
  if (fromMm >= 0) return `from ${bare(fromMm)} to ${place(toMm)}`;
  return `from ${place(fromMm)} to ${place(toMm)}`;
}

function groundTexts(joint: Joint, { reason, homeOnly, rotatingMm, worstRanges }: RoomResult): string[] {
  if (reason !== null) return [];
  const { fit, fixed, moving } = joint;
  const untold = [fixed, moving].filter(({ traced }) => traced === null).map(shortName);
  const untraced = worstRanges.some(({ limits }) => limits.some((limit) => limit.untraced));
  return [
    `Proved for the outlines as traced: ${givenLength(rotatingMm, fit.units)} is kept from both castings all round and along ${axisName(joint)}, at home${homeOnly ? '' : ' and at every instant of the way in'}.`,
    ...(homeOnly
      ? ['The fit states no way in: whether the moving part passes such a body on its way was not looked at.']
      : []),
    ...(untraced ? ['Where nobody has traced, metal is taken to stand: trace there, and there may be more room.'] : []),
    ...(untold.length === 0
      ? []
      : [`What was traced of ${inWords(untold)} is taken as complete. "As far as you like" knows of nothing else.`]),
    'Bolt heads, the crank, the starter pinion and what else turns or stands there are no castings: leave room for them.',
  ];
}

const nextTexts = ({ fit }: Joint, { reason }: RoomResult): string[] =>
  reason !== null
    ? reasonSteps(reason)
    : [
        `Write it as a part to look at: fettle room ${fit.file} -o room.part.json`,
        'Measure what you mean to buy, put it into the fit as a rotating part, and check that.',
      ];
