import type { Region } from '../geometry/loop.ts';
import { buildOutlineTree } from '../geometry/motion/outline-tree.ts';
import { leastDistance } from '../geometry/motion/passage.ts';
import { sweptRegion } from '../geometry/motion/swept-region.ts';
import { engineErrorMm, intersection, pieces, union } from '../geometry/polygon-engine.ts';
import { areaMm2, loopsOf, type Polygons } from '../geometry/polygons.ts';
import { polygonise } from '../geometry/polygonise.ts';
import type { Joint } from '../joint/joint.ts';
import type { DepthRange, Section } from '../model/casting.ts';
import { deepest } from './deepest.ts';
import { metalLeft } from './metal-left.ts';
import { type Pass, passesBy } from './passes.ts';

/** The metal of the fixed part that the moving part would go through; loops in the joint frame, mm. */
export interface Foul {
  /** Summed over sections. */
  readonly areaMm2: number;
  /** The greatest over sections; null where a section has nothing left. */
  readonly deepestMm: number | null;
  readonly regions: readonly { readonly section: string; readonly depth: DepthRange | null; readonly loops: Region }[];
}

export const noFoul: Foul = { areaMm2: 0, deepestMm: 0, regions: [] };

/** Metal the two parts share where they stand at home. */
export const homeFoul = (joint: Joint): Foul => foulOf(joint, (pass) => pass.leg === null);

/** Metal of the fixed part that the moving part sweeps through on its way in. */
export const installFoul = (joint: Joint): Foul => foulOf(joint, (pass) => pass.leg !== null);

/** Arcs keep within this of the truth, on the inside: outlines that only touch share no area. */
const toleranceMm = 2e-5;

/** An overlap no deeper than the engine's own error is a touch. */
const shallowMm = 2 * engineErrorMm;

function foulOf(joint: Joint, counts: (pass: Pass) => boolean): Foul {
  const fouls = joint.fixed.sections.map((section) => sectionFoul(section, passesBy(joint, 'fixed', section, section.depth).filter(counts)));
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

function sectionFoul(section: Section, passes: readonly Pass[]): SectionFoul | null {
  const outline = buildOutlineTree(section.loops);
  const touching = passes.filter(
    ({ section: other, start, motion }) => leastDistance(outline, buildOutlineTree(other.loops), start, motion).distanceMm === 0,
  );
  if (touching.length === 0) return null;
  const swept = touching.map((pass) => sweptRegion(pass.section.loops, pass.start, pass.motion, toleranceMm, 'inside').polygons);
  const metal = polygonise(section.loops, toleranceMm, 'inside');
  const lost = intersection(metal, union(swept.flat()));
  const left = buildOutlineTree(loopsOf(metalLeft(metal, lost)));
  const pieceDepths = pieces(lost).map((piece) => ({ piece, depth: deepest(piece, left, outline) }));
  const fouls = pieceDepths.filter(({ depth }) => depth === null || depth.mm > shallowMm);
  if (fouls.length === 0) return null;
  const polygons: Polygons = fouls.flatMap(({ piece }) => piece);
  return {
    section,
    areaMm2: areaMm2(polygons),
    deepestMm: fouls.some(({ depth }) => depth === null) ? null : Math.max(...fouls.map(({ depth }) => depth?.mm ?? 0)),
    loops: loopsOf(polygons),
  };
}
