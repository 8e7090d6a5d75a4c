import { deepest } from '../clearance/deepest.ts';
import { regionContains } from '../geometry/motion/containment.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { buildOutlineTree } from '../geometry/motion/outline-tree.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import { metalOnLeft } from '../geometry/polygons/metal-on-left.ts';
import { offset } from '../geometry/polygons/offset.ts';
import { difference, intersection, pieces, union } from '../geometry/polygons/polygon-engine.ts';
import { polygonise } from '../geometry/polygons/polygonise.ts';
import { areaMm2, loopsOf, type Polygons } from '../geometry/polygons/polygons.ts';
import type { Casting, DepthRange, Section } from '../job/casting.ts';
import type { Slab } from './slabs.ts';

/** A piece of one casting that stands where the other has no metal. */
export interface Standing {
  readonly section: string;
  readonly depth: DepthRange | null;
  /** Where it stands proud the most, mm. */
  readonly at: Vec;
  /** Where over its depth there is most. */
  readonly areaMm2: number;
  /** The greatest distance from it to the other's metal; null where that has none at that depth. */
  readonly proudMm: number | null;
  /** The tracing errors of both outlines together, mm. */
  readonly errorMm: number;
  /** What is left of `proudMm` when both errors were as kind as they can be; null as `proudMm` is. */
  readonly beyondMm: number | null;
  /** Whether the other casting was not traced there, so that nobody knows. */
  readonly untraced: boolean;
}

/** Arcs are taken so far to the side that hides nothing, mm. */
const arcsMm = 1e-3;

/** Wider than the slivers that arcs taken to both sides leave, narrower than what is told, mm. */
const hairMm = 5e-3;

/** What stands proud by less is where arcs were taken to that side: nobody traces so finely; mm. */
const leastProudMm = 0.01;

/** What stands of a section in one slab. */
export interface SlabStanding {
  /** Even if outlines and depths of both err against it. */
  readonly beyond: readonly Standing[];
  /** As traced, but by no more than the errors of both. */
  readonly within: readonly Standing[];
  /** All that stands over as traced, whatever the errors. */
  readonly asTraced: readonly Standing[];
}

export function standingIn(section: Section, slab: Slab, other: Casting): SlabStanding {
  const errorMm = ({ traceErrorMm }: Section): number => traceErrorMm + section.traceErrorMm;
  const atWorst = taken(slab.besideAtWorst, errorMm);
  const beyond = piecesOver(section, slab.depth, slab.besideAtWorst, atWorst, other);
  const asTraced = piecesOver(section, slab.depth, slab.beside, taken(slab.beside, nothing), other);
  const within = asTraced.filter(({ polygons }) => {
    const tree = buildOutlineTree(loopsOf(polygons));
    return !beyond.some(
      ({ standing: { at } }) =>
        nearestOnOutline(tree, at).distanceMm <= leastProudMm || regionContains(tree, at.x, at.y),
    );
  });
  const told = (pieces: readonly Piece[]): Standing[] => pieces.map(({ standing }) => standing);
  return { beyond: told(beyond), within: told(within), asTraced: told(asTraced) };
}

const nothing = (): number => 0;

/** Sections with all within so many mm of them, nowhere told too large. */
const taken = (sections: readonly Section[], byMm: (section: Section) => number): Polygons =>
  union(
    sections.flatMap((section) => {
      const mm = byMm(section);
      return mm === 0
        ? polygonise(section.loops, arcsMm, 'inside')
        : offset(metalOnLeft(section.loops), mm, arcsMm, 'inside').polygons;
    }),
  );

interface Piece {
  readonly polygons: Polygons;
  readonly standing: Standing;
}

function piecesOver(
  section: Section,
  depth: DepthRange | null,
  beside: readonly Section[],
  known: Polygons,
  other: Casting,
): Piece[] {
  const drawn = polygonise(section.loops, arcsMm, 'outside');
  const over = realPieces(difference(drawn, known), drawn, beside);
  const metal = buildOutlineTree(loopsOf(taken(beside, nothing)));
  const errorMm = section.traceErrorMm + Math.max(0, ...beside.map(({ traceErrorMm }) => traceErrorMm));
  return over.flatMap((polygons) => {
    const farthest = deepest(polygons, metal, metal);
    if (farthest !== null && farthest.mm < leastProudMm) return [];
    const at = farthest?.at ?? (polygons[0]?.[0] as Vec);
    const proudMm = farthest?.mm ?? null;
    const beyondMm = proudMm === null ? null : Math.max(0, proudMm - errorMm);
    const untraced = isUntraced(at, depth, other);
    const standing = {
      section: section.id,
      depth,
      at,
      areaMm2: areaMm2(polygons),
      proudMm,
      errorMm,
      beyondMm,
      untraced,
    };
    return [{ polygons, standing }];
  });
}

/** The pieces of what stands over that reach beyond a hair, and are no slivers between arcs taken to either side. */
function realPieces(over: Polygons, drawn: Polygons, beside: readonly Section[]): Polygons[] {
  const real = difference(
    drawn,
    taken(beside, () => hairMm),
  );
  if (real.length === 0) return [];
  return pieces(over).filter((piece) => intersection(piece, real).length > 0);
}

function isUntraced(at: Vec, depth: DepthRange | null, { traced }: Casting): boolean {
  if (traced === null) return false;
  const shares =
    traced.depth === null || depth === null || (depth.fromMm < traced.depth.toMm && depth.toMm > traced.depth.fromMm);
  return shares && !regionContains(buildOutlineTree(traced.loops), at.x, at.y);
}
