import { type Vec, vec } from '../../geometry/plane/vec.ts';
import { intersection, pieces } from '../../geometry/polygons/polygon-engine.ts';
import { areaMm2, type Polygons, signedAreaMm2 } from '../../geometry/polygons/polygons.ts';
import { coreOf, isThicker } from './core.ts';
import { layersOf, type SectionCut } from './layers.ts';
import { metalOf } from './metal.ts';
import { toleranceMm } from './tolerance.ts';

/** A piece that a cut would part from its section, and a place within it. */
export interface SeveredPiece {
  readonly section: string;
  readonly areaMm2: number;
  readonly at: Vec;
}

/** Metal thinner than this, mm, holds nothing together and is no piece of its own. */
const holdsMm = 0.01;

/**
 * Pieces a cut would part from a section. A piece of one layer hangs together with those of the next that it overlaps;
 * where more hang apart after the cut than before, the smallest are named.
 */
export function severedPieces(cut: SectionCut): SeveredPiece[] {
  const metal = metalOf(cut.section.loops, toleranceMm, 'outside');
  const layers = layersOf(cut).map((layer) => layer.cut?.left ?? metal);
  if (layers.every((layer) => pieceCount(layer) === pieceCount(metal))) return [];
  const before = bodiesOf([metal]).length;
  return bodiesOf(layers)
    .sort((a, b) => areaMm2(b) - areaMm2(a))
    .slice(before)
    .map((piece) => ({
      section: cut.section.id,
      areaMm2: areaMm2(piece),
      at: coreOf(piece, holdsMm) ?? vec(0, 0),
    }));
}

const pieceCount = (polygons: Polygons): number => polygons.filter((polygon) => signedAreaMm2(polygon) > 0).length;

interface LayerPiece {
  readonly level: number;
  readonly piece: Polygons;
}

/** What hangs together through the layers, each told by the largest of its pieces. */
function bodiesOf(layers: readonly Polygons[]): Polygons[] {
  let bodies: (readonly LayerPiece[])[] = [];
  for (const [level, layer] of layers.entries()) {
    for (const piece of pieces(layer).filter(isSolid)) {
      const [joined, apart] = parted(bodies, (body) =>
        body.some((other) => other.level === level - 1 && holds(other.piece, piece)),
      );
      bodies = [...apart, [...joined.flat(), { level, piece }]];
    }
  }
  return bodies.map((body) => body.map(({ piece }) => piece).reduce((a, b) => (areaMm2(a) >= areaMm2(b) ? a : b)));
}

const holds = (a: Polygons, b: Polygons): boolean => isSolid(intersection(a, b));

const isSolid = (polygons: Polygons): boolean => isThicker(polygons, holdsMm);

function parted<T>(all: readonly T[], test: (item: T) => boolean): [T[], T[]] {
  return [all.filter(test), all.filter((item) => !test(item))];
}
