import type { AsItWas } from '../../geometry/cutting/straight-edge.ts';
import { leastFlatMm } from '../../geometry/cutting/straight-path.ts';
import type { DepthRange, Material } from '../../job/casting.ts';
import { massOfG } from '../../job/mass.ts';
import { layerMm3, sumKnown } from '../bands/amounts.ts';
import type { SectionCut } from '../bands/layers.ts';

/** What edges a grinder can follow are made of, and what they cost. */
export interface StraightResult {
  /** No flat of the edge is shorter but where the casting's outline ends it, and no arc in an internal corner tighter. */
  readonly leastFlatMm: number;
  readonly leastArcRadiusMm: number;
  /** What the straight edges take beyond what clearance and cutter need; null without depth, or without material. */
  readonly extraVolumeMm3: number | null;
  readonly extraMassG: number | null;
  /** Stretches of the edge left as they were. */
  readonly asItWas: readonly EdgeAsItWas[];
}

export interface EdgeAsItWas extends AsItWas {
  readonly section: string;
  readonly depth: DepthRange | null;
}

/** What the straight edges of a part's cuts cost, and where there are none; null where nothing is cut. */
export function straightResult(cuts: readonly SectionCut[], material: Material | null): StraightResult | null {
  const bands = cuts.flatMap(({ section, bands }) =>
    bands.flatMap(({ depth, straight }) => (straight === null ? [] : [{ section: section.id, depth, ...straight }])),
  );
  if (bands.length === 0) return null;
  const volumeMm3 = sumKnown(bands.map(({ depth, extraMm2 }) => layerMm3(extraMm2, depth)));
  return {
    leastFlatMm,
    leastArcRadiusMm: Math.min(...bands.map(({ radiusMm }) => radiusMm)),
    extraVolumeMm3: volumeMm3,
    extraMassG: massOfG(volumeMm3, material),
    asItWas: bands.flatMap(({ section, depth, asItWas }) => asItWas.map((edge) => ({ section, depth, ...edge }))),
  };
}
