import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { vec } from '../geometry/plane/vec.ts';
import { areaMm2 } from '../geometry/polygons/polygons.ts';
import type { Casting } from '../job/casting.ts';
import type { Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';
import { heldToMm } from './bands/bands.ts';
import type { SectionCut } from './bands/layers.ts';
import { metalOf } from './bands/metal.ts';
import { toleranceMm } from './bands/tolerance.ts';
import type { CutNotice } from './notices.ts';
import { treeOfLine } from './walls/guard-distance.ts';
import { holeDiameterMm } from './walls/guards.ts';

/**
 * What a cut does that its figures do not tell: it only makes things touch, takes a great part of the casting, or goes
 * through a sealing face or near a hole of unknown size.
 */
export const cutNotices = (joint: Joint, part: Part, cuts: readonly SectionCut[]): CutNotice[] =>
  cuts.length === 0
    ? []
    : [
        ...touchNotice(joint),
        ...greatPartNotice(joint[part], cuts),
        ...faceNotices(cuts),
        ...holeNotices(joint[part], cuts),
      ];

function touchNotice({ fit: { clearance, legs } }: Joint): CutNotice[] {
  const asked = [clearance.homeMm, ...(legs.length === 0 ? [] : [clearance.wayInMm])];
  return Math.min(...asked) > heldToMm ? [] : [{ code: 'plans-a-touch' }];
}

/** A cut of more than this of the largest section, and than this in all, was asked for by a slip; common practice, no source. */
const greatShare = 0.25;
const greatMm2 = 10_000;

function greatPartNotice({ sections }: Casting, cuts: readonly SectionCut[]): CutNotice[] {
  const largestMm2 = Math.max(...sections.map(({ loops }) => areaMm2(metalOf(loops, toleranceMm, 'outside'))));
  const taken = cuts.map(({ section, bands }) => ({
    section: section.id,
    mm2: Math.max(...bands.map(({ planned }) => areaMm2(planned))),
  }));
  const most = taken.reduce((a, b) => (b.mm2 > a.mm2 ? b : a));
  const share = most.mm2 / largestMm2;
  return share > greatShare && most.mm2 > greatMm2
    ? [{ code: 'takes-a-great-part', section: most.section, areaMm2: most.mm2, share }]
    : [];
}

/** A band that reaches its part's own mating face takes some of that face. */
function faceNotices(cuts: readonly SectionCut[]): CutNotice[] {
  return cuts.flatMap(({ section, bands }): CutNotice[] => {
    const atFace = bands.find(({ depth }) => depth !== null && depth.fromMm <= 0 && depth.toMm >= 0);
    if (atFace === undefined || section.depth === null || section.depth.toMm <= 0) return [];
    const at = atFace.takeOff?.at ?? atFace.planned[0]?.[0] ?? vec(0, 0);
    return [{ code: 'cuts-mating-face', section: section.id, at }];
  });
}

/** A hole of unknown size this near a cut is spoken of, mm; common practice, no source. */
const besideMm = 25;

function holeNotices({ holes }: Casting, cuts: readonly SectionCut[]): CutNotice[] {
  const trees = cuts.flatMap(({ bands }) => bands.map(({ last }) => treeOfLine(last)));
  return holes
    .filter((hole) => !hole.mayBreak && holeDiameterMm(hole) === null)
    .filter(({ at }) => trees.some((tree) => nearestOnOutline(tree, at).distanceMm <= besideMm))
    .map(({ id, at }) => ({ code: 'hole-not-guarded', hole: id, at }));
}
