import { metalLeft } from '../../geometry/cutting/metal-left.ts';
import { nearestOnOutline } from '../../geometry/motion/nearest-point.ts';
import { offset } from '../../geometry/polygons/offset.ts';
import { difference, intersection, pieces, union } from '../../geometry/polygons/polygon-engine.ts';
import { loopsOf, outlinesOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import { boxRound, solidNear } from '../../geometry/polygons/solid-near.ts';
import { type Progress, showing } from '../../geometry/progress.ts';
import type { Casting, DepthRange, Section } from '../../job/casting.ts';
import type { Cutter } from '../../job/job.ts';
import { isThicker } from '../bands/core.ts';
import { commonDepth, rangesBetween } from '../bands/depth-ranges.ts';
import {
  everywhere,
  type LayerLeft,
  type MetalLayer,
  type SectionCut,
  type SectionLayer,
  sectionLayers,
  withLayers,
} from '../bands/layers.ts';
import { metalOf } from '../bands/metal.ts';
import type { CutPiece } from '../bands/run-out.ts';
import { toleranceMm } from '../bands/tolerance.ts';
import { treeOfLine } from '../walls/guard-distance.ts';
import { thickPieces } from './bite.ts';
import { unreached, within } from './cutter-reach.ts';

/** Metal of a cut that the cutter cannot take without touching what must stay. */
export interface Fillet extends MetalLayer {
  readonly section: Section;
  readonly cut: CutPiece;
  /** How far it stands out from the surface of the cut, mm. */
  readonly heightMm: number;
  /** A section that keeps it out, the nearest by; null where that is the section's own metal. */
  readonly against: string | null;
}

/**
 * The fillets that a cutter leaves where the clearance asks for metal to go: it is kept from there by what stands beside
 * the cut, or beyond an end of it, and is not to be cut. Where nothing but the section's own metal stands within reach
 * there are none: the cut is shaped for that.
 */
export function* filletsOf(
  casting: Casting,
  cuts: readonly SectionCut[],
  cutter: Cutter | null,
): Generator<Progress, Fillet[]> {
  if (cutter === null) return [];
  const layers = sectionLayers(casting, cuts);
  const fillets: Fillet[] = [];
  for (const cut of cuts) {
    for (const piece of ownPieces(cut)) {
      const progress = {
        step: `${cut.section.id}, what the cutter leaves`,
        done: fillets.length,
        of: fillets.length + 1,
      };
      fillets.push(...(yield* showing(progress, filletsIn(cut.section, piece, layers, cutter))));
    }
  }
  return fillets;
}

/** Each need of a section once, however many bands it is cut in. */
const ownPieces = ({ bands }: SectionCut): CutPiece[] => [
  ...new Set(bands.flatMap((band) => band.pieces.filter((piece) => piece.isOwn && isNeeded(piece)))),
];

/** Whether the clearance asks for it, and not only the cutter's run-out. */
const isNeeded = ({ needed, depth }: CutPiece): boolean => needed !== null || depth === null;

/** Yields wherever it may have taken long. */
function* filletsIn(
  section: Section,
  cut: CutPiece,
  layers: readonly SectionLayer[],
  cutter: Cutter,
): Generator<void, Fillet[]> {
  const needed = cut.needed ?? everywhere;
  // as far as errors of depth may bring anything, it must be known what stays
  const looked = cut.needed === null ? needed : reachOf(cut, needed);
  const reachMm = cutter.nose === 'flat' ? 0 : cutter.radiusMm;
  const ownLayers = layers.filter((layer) => layer.section === section && commonDepth(layer.depth, needed) !== null);
  const fillets: Fillet[] = [];
  for (const piece of pieces(thickPieces(cut.planned))) {
    yield;
    const box = boxRound(piece, 2.1 * cutter.radiusMm);
    const own = within(
      ownLayers.flatMap(({ metal }) => metal),
      box,
    );
    const isNear = ({ depth }: MetalLayer, range: DepthRange): boolean =>
      commonDepth(depth, grownBy(range, reachMm)) !== null;
    const more = layers
      .filter((layer) => isNear(layer, looked) && !ownLayers.includes(layer))
      .map((layer) => ({ ...layer, metal: within(layer.metal, box) }))
      .filter(({ metal }) => isMore(metal, own));
    if (!more.some((layer) => isNear(layer, needed))) continue;
    const barring = joined(more);
    const left = yield* unreached(piece, looked, { beside: own, barring }, cutter, [needed.fromMm, needed.toMm]);
    const [other] = barring.filter((layer) => layer.section !== section);
    const surface = treeOfLine(own);
    for (const layer of left) {
      const heights = layer.metal.flat().map((p) => nearestOnOutline(surface, p).distanceMm);
      fillets.push({ ...layer, section, cut, heightMm: Math.max(...heights), against: other?.section.id ?? null });
    }
  }
  return fillets;
}

const grownBy = ({ fromMm, toMm }: DepthRange, byMm: number): DepthRange => ({
  fromMm: fromMm - byMm,
  toMm: toMm + byMm,
});

/** Layers of one section that go on from one another with the same metal here as one. */
function joined(layers: readonly SectionLayer[]): SectionLayer[] {
  const result: SectionLayer[] = [];
  for (const layer of layers) {
    const last = result.at(-1);
    const goesOn = last?.section === layer.section && last.depth.toMm === layer.depth.fromMm;
    if (last !== undefined && goesOn && !isMore(layer.metal, last.metal) && !isMore(last.metal, layer.metal)) {
      const depth = { fromMm: last.depth.fromMm, toMm: layer.depth.toMm };
      result[result.length - 1] = { ...last, depth, metal: union([...last.metal, ...layer.metal]) };
    } else result.push(layer);
  }
  return result;
}

/** Metal thinner than this is no more than rounding leaves, mm. */
const filmMm = 0.01;

const isMore = (metal: Polygons, than: Polygons): boolean => isThicker(difference(metal, than), filmMm);

/** How far a ball that has gone `pastMm` beyond its place stays off a wall it runs along, r − √(r² − past²), mm. */
const rootMm = (radiusMm: number, pastMm: number): number =>
  pastMm >= radiusMm ? radiusMm : radiusMm - Math.sqrt(radiusMm * radiusMm - pastMm * pastMm);

/** The casting as a plan is judged by: as the cutter leaves it, with its fillets. Yields wherever it may have taken long. */
export function* castingJudged(
  casting: Casting,
  cuts: readonly SectionCut[],
  fillets: readonly Fillet[],
  cutter: Cutter | null,
): Generator<void, Casting> {
  const left = new Map<Section, readonly LayerLeft[]>();
  for (const cut of cuts) left.set(cut.section, yield* judgedLayers(cut, fillets, cutter));
  return withLayers(casting, cuts, ({ section }) => left.get(section) ?? []);
}

/**
 * What a cut leaves of a section, as it is judged: cut where the clearance asks for it, with the fillets that stay there.
 * Past the ends of that the ball only runs out: as far as errors of depth may bring anything, the root of its fillet
 * stays, and beyond, to be safe, all of the metal.
 */
function* judgedLayers(
  cut: SectionCut,
  fillets: readonly Fillet[],
  cutter: Cutter | null,
): Generator<void, LayerLeft[]> {
  const { section, bands } = cut;
  const metal = metalOf(section.loops, toleranceMm, 'outside');
  const own = fillets.filter((fillet) => fillet.section === section);
  const { depth } = section;
  if (depth === null) {
    const left = bands[0]?.left ?? metal;
    return [{ depth, loops: loopsOf(withFillets(left, own.map(metalIn), metal)) }];
  }
  const needs = bands.flatMap((band) => band.pieces.filter(({ needed }) => needed !== null));
  const roots = needs.map((piece) => ({ piece, reach: reachOf(piece, depth), open: withoutFillets(piece, own) }));
  const stops = [
    depth,
    ...bands.map((band) => band.depth ?? depth),
    ...needs.flatMap(({ needed }) => needed ?? []),
    ...roots.map(({ reach }) => reach),
    ...own.map((fillet) => fillet.depth),
  ].flatMap(({ fromMm, toMm }) => [fromMm, toMm]);
  const inSection = stops.filter((mm) => mm >= depth.fromMm && mm <= depth.toMm);
  const layers: LayerLeft[] = [];
  for (const range of rangesBetween(inSection)) {
    yield;
    const band = bands.find((one) => commonDepth(one.depth ?? depth, range) !== null);
    const cutHere = needs.filter(({ needed }) => needed !== null && commonDepth(needed, range) !== null);
    const root = roots.filter(({ piece, reach }) => !cutHere.includes(piece) && commonDepth(reach, range) !== null);
    if (band === undefined || (cutHere.length === 0 && root.length === 0)) {
      layers.push({ depth: range, loops: null });
      continue;
    }
    const taken = [...cutHere, ...root.map(({ piece }) => piece)];
    const isAll = band.pieces.every((piece) => taken.includes(piece));
    const left = isAll ? band.left : metalLeft(metal, intersection(band.planned, union(taken.flatMap(plannedIn))));
    yield;
    const here = own.filter((fillet) => commonDepth(fillet.depth, range) !== null);
    const [needed, beyond] = [true, false].map((isNeed) => here.filter((one) => cutHere.includes(one.cut) === isNeed));
    // what stays past the ends of one need may be what another one takes
    const films = [...filmsOf(root, left, cutter), ...(beyond ?? []).map(metalIn)];
    const stays =
      cutHere.length === 0
        ? films.flat()
        : thickPieces(metalLeft(union(films.flat()), union(cutHere.flatMap(plannedIn))));
    yield;
    layers.push({ depth: range, loops: loopsOf(withFillets(left, [...(needed ?? []).map(metalIn), stays], metal)) });
  }
  return layers;
}

const reachOf = ({ needed, depth, need }: CutPiece, whole: DepthRange): DepthRange => {
  const { fromMm, toMm } = needed ?? whole;
  const run = depth ?? whole;
  return {
    fromMm: Math.max(run.fromMm, fromMm - need.reachErrorMm),
    toMm: Math.min(run.toMm, toMm + need.reachErrorMm),
  };
};

/** The pieces of a cut in which the ball is not barred; where it is, what stays is among the fillets. */
const withoutFillets = ({ planned }: CutPiece, fillets: readonly Fillet[]): readonly Polygons[] =>
  pieces(planned).filter((piece) => !fillets.some(({ metal }) => intersection(metal, piece).length > 0));

interface Root {
  readonly piece: CutPiece;
  /** The pieces of it in which the ball is not barred. */
  readonly open: readonly Polygons[];
}

/** The roots of the ball's fillets where it runs out of cuts, along what is left; alike ones in one go. */
function filmsOf(roots: readonly Root[], left: Polygons, cutter: Cutter | null): Polygons[] {
  if (cutter === null) return roots.map(({ piece }) => piece.planned);
  const widthMm = ({ piece }: Root): number => rootMm(cutter.radiusMm, piece.need.reachErrorMm);
  return [...new Set(roots.map(widthMm))]
    .filter((byMm) => byMm > 0)
    .flatMap((byMm) => {
      const alike = roots.filter((root) => widthMm(root) === byMm).map(({ open }) => open);
      const regions = alike.length === 1 ? alike.flat() : pieces(alike.flat(2));
      return regions.map((region) => {
        const near = solidNear(left, boxRound(region, 2 * byMm));
        return intersection(region, offset(outlinesOf(near), byMm, toleranceMm, 'outside').polygons);
      });
    });
}

/** Fillets grown by so much that no seam stays between them and the metal they stand on, mm. */
const seamMm = 1e-5;

const metalIn = ({ metal }: Fillet): Polygons => metal;
const plannedIn = ({ planned }: CutPiece): Polygons => planned;

function withFillets(left: Polygons, fillets: readonly Polygons[], whole: Polygons): Polygons {
  const standing = fillets.flat();
  if (standing.length === 0) return left;
  const grown = offset(outlinesOf(union(standing)), seamMm, seamMm, 'outside').polygons;
  return union([...left, ...intersection(grown, whole)]);
}
