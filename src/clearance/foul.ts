import { staysClear } from '../geometry/motion/least-distance.ts';
import { isMotionless, still } from '../geometry/motion/motion.ts';
import { buildOutlineTree } from '../geometry/motion/outline-tree.ts';
import { sweepOf } from '../geometry/motion/swept-region.ts';
import type { Box } from '../geometry/plane/edge-box.ts';
import type { Region } from '../geometry/plane/loop.ts';
import { difference, engineErrorMm, intersection, pieces } from '../geometry/polygons/polygon-engine.ts';
import { polygonise } from '../geometry/polygons/polygonise.ts';
import { areaMm2, loopsOf, type Polygons, withoutSlivers } from '../geometry/polygons/polygons.ts';
import { boxRound, solidNear } from '../geometry/polygons/solid-near.ts';
import { stepsOfUnion, unionOfMany } from '../geometry/polygons/union-of-many.ts';
import type { Progress } from '../geometry/progress.ts';
import { numberOf, remembered } from '../geometry/remembered.ts';
import type { DepthRange, Section } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import { type Depth, deepest } from './deepest.ts';
import { motionKey } from './passages.ts';
import { type Pass, passesBy } from './passes.ts';
import { foulArcMm, foulSliverMm, shallowMm } from './tolerances.ts';
import { treeOf } from './trees.ts';

/** The metal of the fixed part that the moving part would go through; loops in the joint frame, mm. */
export interface Foul {
  /** Summed over sections. */
  readonly areaMm2: number;
  /** The greatest over sections; null where a section has nothing left. */
  readonly deepestMm: number | null;
  readonly regions: readonly { readonly section: string; readonly depth: DepthRange | null; readonly loops: Region }[];
}

export const noFoul: Foul = { areaMm2: 0, deepestMm: 0, regions: [] };

/** Metal the two parts share where they stand at home; shows how far it is by the sections. */
export const homeFoul = (joint: Joint): Generator<Progress, Foul> => foulOf(joint, 'home', (pass) => pass.leg === null);

/** Metal of the fixed part that the moving part sweeps through on its way in; shows how far it is by the sections. */
export const wayInFoul = (joint: Joint): Generator<Progress, Foul> =>
  foulOf(joint, 'way in', (pass) => pass.leg !== null);

function* foulOf(joint: Joint, step: string, counts: (pass: Pass) => boolean): Generator<Progress, Foul> {
  const { sections } = joint.fixed;
  const fouls: (SectionFoul | null)[] = [];
  for (const [done, section] of sections.entries()) {
    yield { step, done, of: sections.length };
    fouls.push(sectionFoul(section, passesBy(joint, 'fixed', section, section.depth).filter(counts)));
  }
  const found = fouls.filter((foul) => foul !== null);
  const depths = found.map(({ deepestMm }) => deepestMm);
  return {
    areaMm2: found.reduce((sum, foul) => sum + foul.areaMm2, 0),
    deepestMm: depths.includes(null) ? null : Math.max(0, ...depths.map((mm) => mm ?? 0)),
    regions: found.map(({ section, loops }) => ({ section: section.id, depth: section.depth, loops })),
  };
}

interface SectionFoul {
  readonly section: Section;
  readonly areaMm2: number;
  readonly deepestMm: number | null;
  readonly loops: Region;
}

/** Of one outline: home and the way in, as they are and as they were before an edit or two. */
const known = remembered<SectionFoul | null>(8);

/**
 * Worked out once of the same outlines on the same ways, whatever clearance is asked: only passes that touch count, so
 * that a leg that ends at home and home itself are one.
 */
function sectionFoul(section: Section, passes: readonly Pass[]): SectionFoul | null {
  const outline = treeOf(section.loops);
  const touching = new Map<string, Pass>();
  for (const pass of passes) {
    const { section: other, start, motion } = pass;
    const way = `${numberOf(other.loops)} ${motionKey(start, isMotionless(motion) ? still : motion)}`;
    if (touching.has(way)) continue;
    if (!staysClear(outline, treeOf(other.loops), start, motion, engineErrorMm)) touching.set(way, pass);
  }
  if (touching.size === 0) return null;
  const foul = known(section.loops, [...touching.keys()].join(), () => foulIn(section, [...touching.values()]));
  return foul && { ...foul, section };
}

function foulIn(section: Section, touching: readonly Pass[]): SectionFoul | null {
  const metal = polygonise(section.loops, foulArcMm, 'inside');
  const swept = sweptBy(touching, boxRound(metal, engineErrorMm));
  const shared = intersection(metal, swept);
  if (shared.length === 0) return null;
  const depthOf = depthIn(metal, swept, shared);
  const leastMm = shallowMm + (stepsOfUnion(touching.length) - 1) * engineErrorMm;
  const fouls = pieces(shared)
    .map((piece) => ({ piece, depth: depthOf(piece) }))
    .filter(({ depth }) => depth === null || depth.mm > leastMm);
  if (fouls.length === 0) return null;
  const polygons = fouls.flatMap(({ piece }) => piece);
  return { section, areaMm2: areaMm2(polygons), deepestMm: greatest(fouls), loops: loopsOf(polygons) };
}

/** What passes sweep, as far as it lies in a box. */
function sweptBy(passes: readonly Pass[], within: Box): Polygons {
  const swept = passes.map(({ section, start, motion }) =>
    sweepOf(section.loops, start, motion)(foulArcMm, 'inside', within),
  );
  return withoutSlivers(unionOfMany(swept.map(({ polygons }) => polygons)), 'outside', foulSliverMm);
}

/**
 * How deep pieces of what is shared go. Metal farther off than all of it is long is looked at only where no nearer metal
 * is left: what is nearer than the edge of what is looked at is the nearest there is.
 */
function depthIn(metal: Polygons, swept: Polygons, shared: Polygons): (piece: Polygons) => Depth | null {
  const { minX, minY, maxX, maxY } = boxRound(shared, 0);
  const reachMm = Math.hypot(maxX - minX, maxY - minY);
  const about = measuredIn(solidNear(metal, boxRound(shared, reachMm)), swept);
  let all: typeof about | null = null;
  return (piece) => {
    const depth = about(piece);
    if (depth !== null && depth.mm < reachMm) return depth;
    all ??= measuredIn(metal, swept);
    return all(piece);
  };
}

function measuredIn(metal: Polygons, swept: Polygons): (piece: Polygons) => Depth | null {
  const whole = buildOutlineTree(loopsOf(metal));
  const left = buildOutlineTree(loopsOf(difference(metal, swept)));
  return (piece) => deepest(piece, left, whole);
}

const greatest = (fouls: readonly { readonly depth: Depth | null }[]): number | null =>
  fouls.reduce<number | null>(
    (most, { depth }) => (most === null || depth === null ? null : Math.max(most, depth.mm)),
    0,
  );
