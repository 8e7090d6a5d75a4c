import type { EnlargingResult, InsertResult, OldThread } from '../holes/enlarging.ts';
import type { HoleResult } from '../holes/hole-result.ts';
import { columns, inWords, listed, paragraph } from './layout.ts';
import { fineMm, percentText } from './units.ts';

/** What becomes of the thread that was there, which sizes the metal allows, and whether an insert is the better way. */
export function enlargingLines({ enlarging, thread }: HoleResult): string[] {
  if (enlarging === null) return [];
  return [
    ...paragraph(`The old ${enlarging.was.name}`, listed(oldTexts(enlarging.old, thread.name))),
    ...sizeLines(enlarging),
    ...paragraph('An insert', listed(enlarging.insert === null ? [] : [insertText(enlarging.insert, thread.name)])),
  ];
}

function oldTexts({ grooveMm, goneShare, ofNewShare, samePitch }: OldThread, name: string): string[] {
  if (goneShare === 0) return ['The drill is no larger than the hole that is there: it takes nothing off.'];
  if (grooveMm === 0) return ['The drill takes all of it off.'];
  return [
    `The drill takes off ${percentText(goneShare)} of its height; its grooves still stand ${grooveMm.toFixed(3)} mm deep in the new hole.`,
    `There they have taken ${percentText(ofNewShare)} of the height of ${name}${
      samePitch
        ? '; of one pitch, the tap may fall into them: start it square, with a guide.'
        : '; of another pitch, they break the new thread up.'
    }`,
  ];
}

function sizeLines({ sizes, was }: EnlargingResult): string[] {
  if (sizes === null) return [];
  if (sizes.length === 0)
    return paragraph(
      'Sizes that fit',
      listed([`No larger metric thread of the tables than ${was.name} leaves the wall that is to be kept.`]),
    );
  return paragraph(
    'Sizes that fit, nearest first',
    columns([
      ['thread', 'wall', 'drill', 'old thread gone'],
      ...sizes.map(({ thread, wallMm, drillMm, old }) => [
        thread,
        fineMm(wallMm),
        `${drillMm} mm`,
        percentText(old.goneShare),
      ]),
    ]),
  );
}

const reasons: Readonly<Record<InsertResult['betterFor'][number], (name: string) => string>> = {
  'less-metal': (name) => `it takes less metal than ${name}`,
  wall: (name) => `${name} leaves too thin a wall`,
  'soft-metal': () => 'the metal is soft',
};

function insertText({ carries, hole, wallMm, leavesWall, betterFor }: InsertResult, name: string): string {
  const takes = `A wire insert for ${carries} keeps the bolt as it is; its thread is ${fineMm(hole.majorMm)} across (computed), drilled ${hole.drillMm} mm${wallMm === null ? '' : `, and leaves ${fineMm(Math.max(0, wallMm))} of wall`}.`;
  if (leavesWall === false) return `${takes} That is too thin as well.`;
  if (betterFor.length === 0) return `${takes} It takes no less metal than ${name}.`;
  return `${takes} It is the better way: ${inWords(betterFor.map((why) => reasons[why](name)))}.`;
}
