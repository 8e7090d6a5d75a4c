import { round6, roundPoint6 } from '../geometry/rounding.ts';
import type { Material } from '../model/casting.ts';
import type { StraightAnswer } from '../model/grind-answer.ts';
import type { SectionCut } from './layers.ts';
import { leastFlatMm } from './straight-path.ts';

/** What the straight edges of a part's cuts cost, and where there are none; null where nothing is cut. */
export function straightAnswer(cuts: readonly SectionCut[], material: Material | null): StraightAnswer | null {
  const bands = cuts.flatMap(({ section, bands }) =>
    bands.flatMap(({ depth, straight }) => (straight === null ? [] : [{ section: section.id, depth, ...straight }])),
  );
  if (bands.length === 0) return null;
  let volumeMm3: number | null = 0;
  for (const { depth, extraMm2 } of bands) {
    if (volumeMm3 !== null) volumeMm3 = depth === null ? null : volumeMm3 + extraMm2 * (depth.toMm - depth.fromMm);
  }
  return {
    leastFlatMm,
    leastArcRadiusMm: round6(Math.min(...bands.map(({ radiusMm }) => radiusMm))),
    extraVolumeMm3: volumeMm3 && round6(volumeMm3),
    extraMassG: volumeMm3 === null ? null : material && round6((volumeMm3 * material.densityGPerCm3) / 1000),
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
