import type { StraightAnswer } from '../../answers/grind-answer.ts';
import { leastFlatMm } from '../../geometry/cutting/straight-path.ts';
import { round6, roundPoint6 } from '../../geometry/plane/rounding.ts';
import type { Material } from '../../job/casting.ts';
import { allMm3, layerMm3, massOfG } from '../bands/amounts.ts';
import type { SectionCut } from '../bands/layers.ts';

/** What the straight edges of a part's cuts cost, and where there are none; null where nothing is cut. */
export function straightAnswer(cuts: readonly SectionCut[], material: Material | null): StraightAnswer | null {
  const bands = cuts.flatMap(({ section, bands }) =>
    bands.flatMap(({ depth, straight }) => (straight === null ? [] : [{ section: section.id, depth, ...straight }])),
  );
  if (bands.length === 0) return null;
  const volumeMm3 = allMm3(bands.map(({ depth, extraMm2 }) => layerMm3(extraMm2, depth)));
  return {
    leastFlatMm,
    leastArcRadiusMm: round6(Math.min(...bands.map(({ radiusMm }) => radiusMm))),
    extraVolumeMm3: volumeMm3 && round6(volumeMm3),
    extraMassG: massOfG(volumeMm3, material),
    asItWas: bands.flatMap(({ section, depth, asItWas }) =>
      asItWas.map(({ at, why }) => ({
        section,
        depth: depth && [round6(depth.fromMm), round6(depth.toMm)],
        at: roundPoint6(at),
        why,
      })),
    ),
  };
}
