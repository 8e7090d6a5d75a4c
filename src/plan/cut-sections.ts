import { type Vec, vec } from '../geometry/plane/vec.ts';
import { pieces } from '../geometry/polygons/polygon-engine.ts';
import { areaMm2, type Polygons, signedAreaMm2 } from '../geometry/polygons/polygons.ts';
import type { BandCut } from './bands/cut-band.ts';
import { layersOf, type SectionCut } from './bands/layers.ts';
import type { CutBand, CutSection } from './part-cut.ts';

/** What the cuts of sections come to, band by band. */
export const cutSections = (cuts: readonly SectionCut[]): CutSection[] =>
  cuts.map((cut) => ({
    id: cut.section.id,
    nothingLeft: layersOf(cut).every((layer) => layer.cut !== null && layer.cut.left.length === 0),
    bands: cut.bands.map(cutBand),
  }));

function cutBand(band: BandCut): CutBand {
  const { depth, lastDepth, planned, first, last, lines, takeOff, neededMm2, way, straight } = band;
  const plannedMm2 = areaMm2(planned);
  return {
    depth,
    lastDepth,
    areaMm2: plannedMm2,
    firstAreaMm2: areaMm2(first),
    lastAreaMm2: areaMm2(last),
    takeOff,
    pieces: pieces(planned)
      .map((piece) => ({ areaMm2: areaMm2(piece), at: centreOf(piece) }))
      .sort((a, b) => b.areaMm2 - a.areaMm2),
    neededAreaMm2: neededMm2,
    extraAreaMm2: Math.max(0, plannedMm2 - neededMm2 - (straight?.extraMm2 ?? 0)),
    straightExtraAreaMm2: straight?.extraMm2 ?? null,
    cutterWay: way,
    planned,
    first,
    last,
    lines,
  };
}

/** The centre of area: triangles fanned about the first point of each polygon, weighed by their signed areas. */
function centreOf(piece: Polygons): Vec {
  const origin = piece[0]?.[0] ?? vec(0, 0);
  let [sum, area] = [vec(0, 0), 0];
  for (const polygon of piece) {
    polygon.forEach((a, i) => {
      const b = polygon[(i + 1) % polygon.length] as Vec;
      const triangle = signedAreaMm2([origin, a, b]);
      sum = vec(
        sum.x + (triangle * (a.x + b.x - 2 * origin.x)) / 3,
        sum.y + (triangle * (a.y + b.y - 2 * origin.y)) / 3,
      );
      area += triangle;
    });
  }
  return area === 0 ? origin : vec(origin.x + sum.x / area, origin.y + sum.y / area);
}
