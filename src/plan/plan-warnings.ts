import type { Warning } from '../answers/check-answer.ts';
import type { Part } from '../clearance/passes.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { roundPoint6 } from '../geometry/plane/rounding.ts';
import { vec } from '../geometry/plane/vec.ts';
import type { Casting } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import { heldToMm } from './bands/bands.ts';
import type { SectionCut } from './bands/layers.ts';
import { treeOfLine } from './walls/guard-distance.ts';
import { holeDiameterMm } from './walls/guards.ts';

/** What a cut does that its figures do not tell: it only makes things touch, or goes through a sealing face or near a hole of unknown size. */
export const planWarnings = (joint: Joint, part: Part, cuts: readonly SectionCut[]): Warning[] =>
  cuts.length === 0 ? [] : [...touchWarning(joint), ...faceWarnings(cuts), ...holeWarnings(joint[part], cuts)];

function touchWarning({ fit: { clearance, legs } }: Joint): Warning[] {
  const asked = [clearance.homeMm, ...(legs.length === 0 ? [] : [clearance.wayInMm])];
  if (Math.min(...asked) > heldToMm) return [];
  const text =
    'A clearance of nothing is asked, so the plan only makes the parts touch: it leaves no room for cast skin, heat or the hand.';
  return [{ code: 'plans-a-touch', text }];
}

/** A band that reaches its part's own mating face takes some of that face. */
function faceWarnings(cuts: readonly SectionCut[]): Warning[] {
  return cuts.flatMap(({ section, bands }) => {
    const atFace = bands.find(({ depth }) => depth !== null && depth.fromMm <= 0 && depth.toMm >= 0);
    if (atFace === undefined || section.depth === null || section.depth.toMm <= 0) return [];
    const at = atFace.takeOff?.at ?? atFace.planned[0]?.[0] ?? vec(0, 0);
    const text = `The cut in "${section.id}" goes through its mating face: find out first whether a gasket seals there.`;
    return [{ code: 'cuts-mating-face', text, at: roundPoint6(at) }];
  });
}

/** A hole of unknown size this near a cut is spoken of, mm; common practice, no source. */
const besideMm = 25;

function holeWarnings({ holes }: Casting, cuts: readonly SectionCut[]): Warning[] {
  const trees = cuts.flatMap(({ bands }) => bands.map(({ last }) => treeOfLine(last)));
  return holes
    .filter((hole) => !hole.mayBreak && holeDiameterMm(hole) === null)
    .filter(({ at }) => trees.some((tree) => nearestOnOutline(tree, at).distanceMm <= besideMm))
    .map(({ id, at }) => ({
      code: 'hole-not-guarded',
      text: `How large "${id}" is, is not stated, so no wall to it is kept: give it a diameter or a thread.`,
      at: roundPoint6(at),
    }));
}
