import { figure, givenLength } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Joint } from '../joint/joint.ts';
import type { Alternative, Change } from '../plan/alternatives/alternative.ts';
import { againstTexts } from './hindrance-text.ts';
import { inWords } from './layout.ts';
import { shortName } from './names.ts';
import { areaText, degreesText, massText } from './units.ts';

/** What else would give where a plan does not hold; the builder chooses. */
export const alternativeTexts = (joint: Joint, alternatives: readonly Alternative[]): string[] =>
  alternatives.map((other) => `${whatText(joint, other.change)}: ${outcomeText(joint.fit.units, other)}.`);

function whatText(joint: Joint, other: Change): string {
  const { units } = joint.fit;
  switch (other.what) {
    case 'clearance': {
      const [home, wayIn] = [givenLength(other.homeMm, units), givenLength(other.wayInMm, units)];
      return `A smaller clearance, ${home}${home === wayIn ? '' : ` at home and ${wayIn} on the way in`}`;
    }
    case 'cutter':
      return `A flat-nosed cutter of ${givenLength(joint.fit.cutter?.radiusMm ?? 0, units)} in place of the ball`;
    case 'other-part':
      return `Cutting ${shortName(joint[other.part])} alone`;
    case 'both':
      return `Cutting both parts, ${sharedText(joint)}`;
    case 'turn': {
      const deg = (other.turnRad * 180) / Math.PI;
      return `Entering turned ${degreesText(Math.abs(deg))} ${deg > 0 ? 'more' : 'less'}`;
    }
    case 'stand-off':
      return `Swinging ${givenLength(other.standOffMm, units)} farther out`;
  }
}

/** Who gives how much: `half off each`, `70 % of it off Iron four`. */
export const sharedText = ({ fit: { share }, fixed }: Joint): string =>
  share === 0.5 ? 'half of it off each' : `${figure(100 * share, 0)} % of it off ${shortName(fixed)}`;

function outcomeText(units: Units, { holds, areaMm2, massG, against }: Alternative): string {
  const area = areaMm2 === 0 ? 'no metal' : areaText(areaMm2, units);
  const off = `${area}${massG === null || massG === 0 ? '' : ` (${massText(massG)})`} off`;
  if (holds) return `it holds, ${off}`;
  return against.length === 0
    ? `it does not keep the clearance, ${off}`
    : `${off}, but ${inWords(againstTexts(against, units))}`;
}
