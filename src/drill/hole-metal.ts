import { treeOf } from '../clearance/trees.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { distance, type Vec } from '../geometry/plane/vec.ts';
import type { Casting, DepthRange, Section } from '../job/casting.ts';
import type { Fit } from '../job/job.ts';
import { type Guard, guardsOf, holeDiameterMm } from '../plan/walls/guards.ts';
import { reachesInto, type Slab, slabsOf, treeOfSlab, within } from './metal-about.ts';

/** What a hole is judged by. */
export interface DrillRules {
  /** Least distance from the middle of a hole to an edge, in its diameters. */
  readonly edgeFactor: number;
  /** How far a drill runs off by hand, mm. */
  readonly drillErrorMm: number;
  /** The spot face under a head, mm; null: the washer of its thread. */
  readonly spotFaceMm: number | null;
  /** The outside of a socket, mm; null: nothing is said of one. */
  readonly socketMm: number | null;
}

/** What is asked where nobody says: distances and strays of common practice, no source. */
export const usualDrillRules: DrillRules = { edgeFactor: 1.5, drillErrorMm: 0.5, spotFaceMm: null, socketMm: null };

/** A hole as it is to be drilled, in the joint frame. */
export interface HoleToDrill {
  readonly id: string;
  readonly at: Vec;
  readonly diameterMm: number;
  /** From the casting's own face; null: through every depth that has metal there. */
  readonly depth: DepthRange | null;
  readonly keepWallMm: number | null;
  /** Errors of its place beside the drill's own, mm. */
  readonly placeErrorMm: number;
}

/** The wall between a hole and an edge, mm; less than 0 where the hole goes through it. */
export interface HoleWall {
  readonly beside: 'outline' | 'floor' | 'hollow' | 'hole' | 'do-not-cut';
  readonly name: string;
  /** Whether the edge is one that the cut makes. */
  readonly isCut: boolean;
  readonly wallMm: number;
  readonly wantedMm: number;
  readonly errorMm: number;
  readonly at: Vec;
  /** Where it is so; null at every depth. */
  readonly depth: DepthRange | null;
}

/**
 * Where a hole stands: with all of it in metal, over an edge, or beside it; not known where nobody traced, or where it is
 * only metal without a depth that would be about it, of which nobody says how deep it goes.
 */
export type Stands = 'in-metal' | 'over-the-edge' | 'in-the-air' | 'not-traced' | 'no-depth';

export interface HoleMetal {
  readonly stands: Stands;
  /** Over which depth it stands in metal without a break from where that begins; null where it does nowhere. */
  readonly run: DepthRange | null;
  /** Stated depths at which no metal is traced. */
  readonly without: readonly DepthRange[];
  /** Holes near it whose size nobody knows, so that no wall to them can be told. */
  readonly unsized: readonly string[];
  /** One for each thing beside it, the least wall first. */
  readonly walls: readonly HoleWall[];
}

interface InSlab {
  readonly slab: Slab;
  readonly stands: Stands;
  readonly wall: HoleWall | null;
}

/** The least wall wanted to an edge: the hole's own figure, else by the rule for the distance of its middle. */
export const edgeWallMm = ({ keepWallMm, diameterMm }: HoleToDrill, { edgeFactor }: DrillRules): number =>
  keepWallMm ?? (edgeFactor - 0.5) * diameterMm;

/**
 * The metal about a hole, slab by slab of its depth, exact for the outlines as traced. `onlyRun`: no deeper than it stands
 * in metal without a break, as a hole does that is drilled from the face.
 */
export function metalAbout(
  casting: Casting,
  cut: readonly string[],
  hole: HoleToDrill,
  fit: Fit,
  rules: DrillRules,
  onlyRun: boolean,
): HoleMetal {
  const all = slabsOf(casting, hole.depth).map((slab) => inSlab(casting, cut, slab, hole, fit, rules));
  const first = all.findIndex(({ stands }) => stands !== 'in-the-air');
  const [begin, ...deeper] = first < 0 ? [] : all.slice(first);
  if (begin === undefined)
    return {
      stands: 'in-the-air',
      run: null,
      without: [],
      unsized: [],
      walls: guardWalls(casting, hole, fit, rules, hole.depth),
    };
  const ends = deeper.findIndex(({ stands }) => stands !== 'in-metal');
  const unbroken = [begin, ...(ends < 0 ? deeper : deeper.slice(0, ends))];
  const run = begin.stands === 'in-metal' ? spanOf(unbroken) : null;
  const looked = onlyRun ? unbroken : all.filter(({ stands }) => stands !== 'in-the-air');
  const depth = onlyRun ? (run ?? begin.slab.depth) : hole.depth;
  const walls = [
    ...looked.flatMap(({ wall }) => wall ?? []),
    ...floorUnder(casting, hole, rules),
    ...guardWalls(casting, hole, fit, rules, depth),
  ];
  const without =
    hole.depth === null
      ? []
      : all.flatMap(({ slab, stands }) => (stands === 'in-the-air' && slab.depth ? [slab.depth] : []));
  return {
    stands: worstOf(looked.map(({ stands }) => stands)),
    run,
    without,
    unsized: unsizedNear(casting, hole),
    walls: leastOfEach(walls),
  };
}

function inSlab(
  casting: Casting,
  cut: readonly string[],
  slab: Slab,
  hole: HoleToDrill,
  fit: Fit,
  rules: DrillRules,
): InSlab {
  const radiusMm = hole.diameterMm / 2;
  const { traced } = casting;
  if (
    slab.isBounded &&
    traced !== null &&
    within(treeOf(traced.loops), hole.at).insideMm < radiusMm + edgeWallMm(hole, rules)
  )
    return { slab, stands: 'not-traced', wall: null };
  if (slab.sections.length === 0) return { slab, stands: 'in-the-air', wall: null };
  const { insideMm, at } = within(treeOfSlab(slab), hole.at);
  const wallMm = insideMm - radiusMm;
  if (wallMm <= -hole.diameterMm) return { slab, stands: 'in-the-air', wall: null };
  if (wallMm >= 0 && restsOnNoDepth(slab, hole)) return { slab, stands: 'no-depth', wall: null };
  const section = sectionAt(slab.sections, at);
  const isCut = cut.includes(section.id);
  const wall: HoleWall = {
    beside: 'outline',
    name: section.id,
    isCut,
    wallMm,
    wantedMm: edgeWallMm(hole, rules),
    errorMm:
      section.traceErrorMm + rules.drillErrorMm + hole.placeErrorMm + (isCut ? (fit.cutter?.handErrorMm ?? 0) : 0),
    at,
    depth: slab.depth,
  };
  return { slab, stands: wallMm < 0 ? 'over-the-edge' : 'in-metal', wall };
}

/** Whether the metal about a hole, at a depth, is there only if a section without one goes so deep. */
function restsOnNoDepth({ depth, sections }: Slab, { at, diameterMm }: HoleToDrill): boolean {
  const deep = sections.filter((section) => section.depth !== null);
  if (depth === null || deep.length === sections.length) return false;
  return (
    deep.length === 0 || within(treeOfSlab({ depth, sections: deep, isBounded: false }), at).insideMm < diameterMm / 2
  );
}

/** Nearer than this to the middle of a hole, in its diameters, another one may leave no wall; common practice, no source. */
const nearHoleShare = 3;

/** Holes so near, of no known size, that share depth with one and may not be broken into. */
const unsizedNear = ({ holes }: Casting, { id, at, diameterMm, depth }: HoleToDrill): string[] =>
  holes
    .filter((other) => other.id !== id && !other.mayBreak && holeDiameterMm(other) === null)
    .filter((other) => alongMm(depth, other.depth) === 0 && distance(other.at, at) < nearHoleShare * diameterMm)
    .map((other) => other.id);

/** Whose outline it is that comes nearest at a point. */
function sectionAt(sections: readonly Section[], at: Vec): Section {
  const away = ({ loops }: Section): number => nearestOnOutline(treeOf(loops), at).distanceMm;
  return sections.reduce((nearest, section) => (away(section) < away(nearest) ? section : nearest));
}

/** How far the point of a drill of 118° goes past the full diameter, in diameters: ½·cot 59°. */
const pointShare = 0.5 / Math.tan((59 * Math.PI) / 180);

/** Floors are wanted half a diameter thick; common practice, no source. */
const floorShare = 0.5;

/** What is left under a blind hole, its drill's point taken off; none under one that comes out, or of no stated depth. */
function floorUnder(casting: Casting, hole: HoleToDrill, { drillErrorMm }: DrillRules): HoleWall[] {
  const { depth, at, diameterMm, keepWallMm } = hole;
  if (depth === null) return [];
  const below = slabsOf(casting, null).filter((slab) => slab.depth !== null && slab.depth.toMm > depth.toMm);
  const ends = below.findIndex((slab) => !reachesInto(slab, at, diameterMm / 2));
  const floor = ends < 0 ? below : below.slice(0, ends);
  const last = floor.at(-1);
  if (last?.depth == null) return [];
  const section = sectionAt(last.sections, at);
  return [
    {
      beside: 'floor',
      name: section.id,
      isCut: false,
      wallMm: last.depth.toMm - depth.toMm - pointShare * diameterMm,
      wantedMm: keepWallMm ?? floorShare * diameterMm,
      errorMm: section.depthErrorMm + drillErrorMm,
      at,
      depth: null,
    },
  ];
}

/** How far two ranges of depth are from one another along the crank; 0 where they share any. */
const alongMm = (depth: DepthRange | null, range: DepthRange | null): number =>
  depth === null || range === null ? 0 : Math.max(0, range.fromMm - depth.toMm, depth.fromMm - range.toMm);

/** A depth with the point of the drill past it. */
const withPoint = (depth: DepthRange, diameterMm: number): DepthRange => ({
  ...depth,
  toMm: depth.toMm + pointShare * diameterMm,
});

/** A hollow, another hole, or metal not to be cut, with the wall that a hole wants to it. */
export interface BesideHole extends Pick<Guard, 'id' | 'loops' | 'depth'> {
  readonly beside: HoleWall['beside'];
  readonly wantedMm: number;
  readonly errorMm: number;
}

/** All of these a casting has. */
export function besideHole(casting: Casting, hole: HoleToDrill, fit: Fit, rules: DrillRules): BesideHole[] {
  const guards = guardsOf(casting, fit)
    .filter(({ id, kind }) => kind === 'hollow' || id !== hole.id)
    .map((guard) => ({
      ...guard,
      beside: guard.kind,
      wantedMm: guardWallMm(guard, edgeWallMm(hole, rules), hole.diameterMm),
      errorMm: guard.traceErrorMm,
    }));
  const keepOut = casting.doNotCut.map((region) => ({
    ...region,
    beside: 'do-not-cut' as const,
    wantedMm: 0,
    errorMm: 0,
  }));
  return [...guards, ...keepOut];
}

/** Walls to hollows, other holes and what must not be cut, in space. */
function guardWalls(
  casting: Casting,
  hole: HoleToDrill,
  fit: Fit,
  rules: DrillRules,
  depth: DepthRange | null,
): HoleWall[] {
  const { drillErrorMm } = rules;
  const { diameterMm } = hole;
  const reach = hole.depth === null ? depth : depth && withPoint(depth, diameterMm);
  // a hollow has no error of depth of its own
  const depthErrorMm = Math.max(0, ...casting.sections.map((section) => section.depthErrorMm));
  return besideHole(casting, hole, fit, rules).map(
    ({ id, beside, loops, wantedMm, errorMm, depth: range }): HoleWall => {
      const { insideMm, at } = within(treeOf(loops), hole.at);
      const asideMm = -insideMm - diameterMm / 2;
      const gapMm = alongMm(reach, range);
      const wallMm = gapMm === 0 ? asideMm : Math.hypot(Math.max(0, asideMm), gapMm);
      return {
        beside,
        name: id,
        isCut: false,
        wallMm,
        wantedMm,
        errorMm: errorMm + drillErrorMm + hole.placeErrorMm + (gapMm === 0 ? 0 : depthErrorMm),
        at,
        depth: range,
      };
    },
  );
}

/**
 * The wall wanted to a hollow or a hole: what is stated there; of a hole with nothing stated half its diameter, and no more
 * than a hole wants to an edge, since a bore is one; of a hollow with nothing stated as much as a floor.
 */
function guardWallMm({ keepMm, keepBy }: Guard, edgeMm: number, diameterMm: number): number {
  if (keepMm === null) return floorShare * diameterMm;
  return keepBy === 'stated' ? keepMm : Math.min(keepMm, edgeMm);
}

const order: readonly Stands[] = ['in-metal', 'no-depth', 'not-traced', 'over-the-edge', 'in-the-air'];

const worstOf = (all: readonly Stands[]): Stands =>
  all.reduce((worst, stands) => (order.indexOf(stands) > order.indexOf(worst) ? stands : worst), 'in-metal' as Stands);

function spanOf(unbroken: readonly InSlab[]): DepthRange | null {
  const [first, last] = [unbroken[0]?.slab.depth ?? null, unbroken.at(-1)?.slab.depth ?? null];
  return first && last && { fromMm: first.fromMm, toMm: last.toMm };
}

const spareMm = ({ wallMm, wantedMm, errorMm }: HoleWall): number => wallMm - errorMm - wantedMm;

/** Of everything beside a hole the place where it comes worst; the worst first. */
function leastOfEach(walls: readonly HoleWall[]): HoleWall[] {
  const inOrder = walls.toSorted((a, b) => spareMm(a) - spareMm(b));
  return inOrder.filter(
    ({ beside, name }, i) => inOrder.findIndex((wall) => wall.beside === beside && wall.name === name) === i,
  );
}
