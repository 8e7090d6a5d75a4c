import { treeOf } from '../clearance/trees.ts';
import { buildOutlineTree, type OutlineTree } from '../geometry/motion/outline-tree.ts';
import type { Region } from '../geometry/plane/loop.ts';
import { polygonise } from '../geometry/polygons/polygonise.ts';
import { loopsOf, type Polygons } from '../geometry/polygons/polygons.ts';
import type { Casting, DepthRange, Section } from '../job/casting.ts';
import { toleranceMm } from '../plan/bands/tolerance.ts';
import type { CutBand, PartCut } from '../plan/part-cut.ts';
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

/** The bands of a cut that take anything off `part`, the casting as it is now, in its frame. */
export function workBands(part: Casting, cut: PartCut, seenAs: SeenAs = (region) => region): WorkBand[] {
  return cut.sections.flatMap(({ id, bands }) => {
    const section = part.sections.find((section) => section.id === id);
    if (section === undefined) return [];
    return bands.filter(({ planned }) => planned.length > 0).map((band) => workBand(section, band, seenAs));
  });
}

function workBand(section: Section, band: CutBand, seenAs: SeenAs): WorkBand {
  const { lines: given } = band;
  const [relief, first, last] = [seenAs(given.planned), seenAs(given.first), seenAs(given.last)];
  const present = treeOf(section.loops);
  const lines = {
    first: polygonise(first, toleranceMm, 'inside'),
    planned: polygonise(relief, toleranceMm, 'outside'),
    last: polygonise(last, toleranceMm, 'outside'),
  };
  return {
    section,
    depth: band.depth,
    takeOffMm: band.takeOff?.mm ?? null,
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
