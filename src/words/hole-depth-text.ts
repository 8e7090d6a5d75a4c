import type { HoleResult } from '../holes/hole-result.ts';
import { sourceText } from './source-text.ts';
import { degreesOf, fineMm } from './units.ts';

/** How deep a hole is drilled for the engagement wanted, and what engages in the depth there is. */
export function depthTexts({ thread, engagement, depthMm, engagementWithinMm, material }: HoleResult): string[] {
  const had =
    depthMm === null || engagementWithinMm === null
      ? []
      : [
          `Drilled ${fineMm(depthMm)} deep to the shoulder, ${fineMm(engagementWithinMm)} engage at most, with a bottoming tap.`,
        ];
  if (engagement === null) return had;
  const { wantedMm, advisedMm, advisedTimesMajor, advisedSource, fullThreadMm, secondTap, bottomingTap } = engagement;
  const advised =
    advisedMm === null || advisedSource === null
      ? []
      : [
          `In ${material} a thread should engage ${advisedTimesMajor} diameters, ${fineMm(advisedMm)} (${sourceText(advisedSource)})${wantedMm < advisedMm - 1e-9 ? `; the ${fineMm(wantedMm)} wanted are less` : ''}.`,
        ];
  return [
    ...advised,
    `To engage ${fineMm(wantedMm)}, cut ${fineMm(fullThreadMm)} of full thread: two pitches stay free below the bolt (common practice).`,
    `Blind, with a second tap: drill ${fineMm(secondTap.shoulderMm)} to the shoulder, ${fineMm(secondTap.tipMm)} to the tip of a 118° drill; the tap's lead takes four pitches (common practice).`,
    `Blind, with a bottoming tap: ${fineMm(bottomingTap.shoulderMm)} to the shoulder, ${fineMm(bottomingTap.tipMm)} to the tip.`,
    ...(thread.system === 'taper-pipe'
      ? ['A taper thread is tapped until its fitting stands as it should, never by depth alone.']
      : []),
    ...had,
  ];
}

/** The wall beside the thread, and how far the drill may go wrong in it. */
export function wallTexts({ wall, stray }: HoleResult): string[] {
  if (wall === null || stray === null) return [];
  const { beforeMm, afterMm, keepMm, keepStated } = wall;
  const before = beforeMm === null ? '' : `${fineMm(beforeMm)} before, `;
  const keep = `${fineMm(keepMm)} are to be kept${keepStated ? '' : ' (a third of the diameter, common practice: no standard gives one)'}`;
  const lean = (rad: number | null): string =>
    rad === null || stray.depthMm === null
      ? ''
      : `, or out of square by ${degreesOf(rad).toFixed(1)}° over ${fineMm(stray.depthMm)}`;
  const { untilKeep, untilGone } = stray;
  return [
    `${before}${fineMm(afterMm)} ${beforeMm === null ? 'beside the thread' : 'after'}; ${keep}.`,
    ...(untilKeep.offMm > 0
      ? [
          `Until no more than that is left the drill may run off by ${fineMm(untilKeep.offMm)}${lean(untilKeep.leanRad)}.`,
        ]
      : []),
    `The wall is gone at ${fineMm(untilGone.offMm)} off${lean(untilGone.leanRad)}. Off and out of square share that room.`,
  ];
}
