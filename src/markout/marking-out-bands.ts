import type { BandAnswer, GrindAnswer } from '../answers/grind-answer.ts';
import { treeOf } from '../clearance/trees.ts';
import { buildOutlineTree, type OutlineTree } from '../geometry/motion/outline-tree.ts';
import type { Region } from '../geometry/plane/loop.ts';
import { polygonise } from '../geometry/polygons/polygonise.ts';
import { loopsOf, type Polygons } from '../geometry/polygons/polygons.ts';
import type { Casting, DepthRange, Section } from '../job/casting.ts';
import { loopOf } from '../job/lengths.ts';
import { toleranceMm } from '../plan/bands/tolerance.ts';
import { type ReliefEdges, reliefEdges } from './marking-out-edges.ts';
import type { BandTrees } from './marking-out-take-off.ts';

/** The three lines of a band as polygons, metal to come off on their left. */
interface BandLines {
  readonly first: Polygons;
  readonly planned: Polygons;
  readonly last: Polygons;
}

/** A band to mark out: the section as it is now, the three lines, and the edges of what comes off. */
export interface WorkBand {
  readonly section: Section;
  readonly depth: DepthRange | null;
  readonly takeOffMm: number | null;
  readonly present: OutlineTree;
  readonly relief: Region;
  /** What the first and the last line take off. */
  readonly first: Region;
  readonly last: Region;
  readonly lines: BandLines;
  readonly trees: BandTrees;
  /** Of the planned cut. */
  readonly edges: ReliefEdges;
}

/** What turns the regions of the plan into the frame of the casting they are shown on. */
export type SeenAs = (region: Region) => Region;

/** The bands of a plan that take anything off `part`, the casting as it is now, in its frame. */
export function workBands(part: Casting, answer: GrindAnswer, seenAs: SeenAs = (region) => region): WorkBand[] {
  return answer.sections.flatMap(({ id, bands }) => {
    const section = part.sections.find((section) => section.id === id);
    if (section === undefined) return [];
    return bands.filter(({ loops }) => loops.length > 0).map((band) => workBand(section, band, seenAs));
  });
}

function workBand(section: Section, band: BandAnswer, seenAs: SeenAs): WorkBand {
  const regionOf = (files: BandAnswer['loops']): Region => seenAs(files.map((file) => loopOf(file, 1)));
  const [relief, first, last] = [regionOf(band.loops), regionOf(band.firstLoops), regionOf(band.lastLoops)];
  const present = treeOf(section.loops);
  const lines = {
    first: polygonise(first, toleranceMm, 'inside'),
    planned: polygonise(relief, toleranceMm, 'outside'),
    last: polygonise(last, toleranceMm, 'outside'),
  };
  return {
    section,
    depth: band.depth === null ? null : { fromMm: band.depth[0], toMm: band.depth[1] },
    takeOffMm: band.takeOffMm,
    present,
    relief,
    first,
    last,
    lines,
    trees: { first: treeIn(lines.first), planned: treeIn(lines.planned), last: treeIn(lines.last) },
    edges: reliefEdges(relief, present),
  };
}

const treeIn = (polygons: Polygons): OutlineTree => buildOutlineTree(loopsOf(polygons));
