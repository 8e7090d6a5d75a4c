import type { Alternative, GrindAnswer } from '../answers/grind-answer.ts';
import { givenLength } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Joint } from '../joint/joint.ts';
import { inWords } from './layout.ts';
import { shortName } from './names.ts';
import { areaText, degreesText, massText } from './units.ts';

/** What else would give where a plan does not hold; the builder chooses. */
export function alternativeTexts(joint: Joint, { alternatives }: GrindAnswer): string[] {
  return (alternatives ?? []).map((other) => `${whatText(joint, other)}: ${outcomeText(joint.fit.units, other)}.`);
}

function whatText(joint: Joint, other: Alternative): string {
  const { units } = joint.fit;
  switch (other.what) {
    case 'clearance': {
      const [home, wayIn] = [givenLength(other.homeMm ?? 0, units), givenLength(other.wayInMm ?? 0, units)];
      return `A smaller clearance, ${home}${home === wayIn ? '' : ` at home and ${wayIn} on the way in`}`;
    }
    case 'cutter':
      return `A flat-nosed cutter of ${givenLength(joint.fit.cutter?.radiusMm ?? 0, units)} in place of the ball`;
    case 'other-part':
      return `Cutting ${shortName(other.part === 'moving' ? joint.moving : joint.fixed)} alone`;
    case 'both':
      return 'Cutting both parts, shared as the fit says';
    case 'turn': {
      const deg = other.turnDeg ?? 0;
      return `Entering turned ${degreesText(Math.abs(deg))} ${deg > 0 ? 'more' : 'less'}`;
    }
    case 'stand-off':
      return `Swinging ${givenLength(other.standOffMm ?? 0, units)} farther out`;
  }
}

function outcomeText(units: Units, { holds, areaMm2, massG, against }: Alternative): string {
  const area = areaMm2 === null || areaMm2 === 0 ? 'no metal' : areaText(areaMm2, units);
  const off = `${area}${massG === null || massG === 0 ? '' : ` (${massText(massG)})`} off`;
  if (holds) return `it holds, ${off}`;
  return against.length === 0 ? `it does not keep the clearance, ${off}` : `${off}, but ${inWords(against)}`;
}
