import type { BandAnswer, GrindAnswer } from '../answers/grind-answer.ts';
import { round6, roundPoint6 } from '../geometry/plane/rounding.ts';
import { areaMm2, type Polygons } from '../geometry/polygons/polygons.ts';
import type { Material } from '../job/casting.ts';
import { allMm3, layerMm3, massOfG } from './bands/amounts.ts';
import type { BandCut } from './bands/cut-band.ts';
import { layersOf, type SectionCut } from './bands/layers.ts';

export const sectionAnswers = (cuts: readonly SectionCut[]): GrindAnswer['sections'] =>
  cuts.map((cut) => ({
    id: cut.section.id,
    nothingLeft: layersOf(cut).every((layer) => layer.cut !== null && layer.cut.left.length === 0),
    bands: cut.bands.map(bandAnswer),
  }));

function bandAnswer({
  depth,
  lastDepth,
  planned,
  first,
  last,
  takeOff,
  neededMm2,
  way,
  straight,
}: BandCut): BandAnswer {
  return {
    depth: depth && [round6(depth.fromMm), round6(depth.toMm)],
    lastDepth: lastDepth && [round6(lastDepth.fromMm), round6(lastDepth.toMm)],
    areaMm2: round6(areaMm2(planned)),
    takeOffMm: takeOff && round6(takeOff.mm),
    loops: loopFiles(planned),
    firstLoops: loopFiles(first),
    lastLoops: loopFiles(last),
    neededAreaMm2: round6(neededMm2),
    extraAreaMm2: round6(Math.max(0, areaMm2(planned) - neededMm2 - (straight?.extraMm2 ?? 0))),
    cutterWay: way,
    straightExtraAreaMm2: straight && round6(straight.extraMm2),
  };
}

const loopFiles = (polygons: Polygons): BandAnswer['loops'] => polygons.map((polygon) => polygon.map(roundPoint6));

/** What comes off in all; nothing is known of the volume where a band has no depth. */
export function amountsOf(
  bands: readonly BandCut[],
  material: Material | null,
): Pick<GrindAnswer, 'volumeMm3' | 'massG'> {
  const volumeMm3 = allMm3(bands.map(({ depth, planned }) => layerMm3(areaMm2(planned), depth)));
  return { volumeMm3: volumeMm3 && round6(volumeMm3), massG: massOfG(volumeMm3, material) };
}
