import type { DepthRange } from '../model/casting.ts';

/** Something of a section's depth: a whole section, or a range of it. */
interface AtDepth {
  readonly depth: DepthRange | null;
}

/** A range of a section's depth and all that is cut there, each by its own band. */
export interface Slice<Cut> {
  readonly depth: DepthRange | null;
  readonly cuts: readonly Cut[];
}

/**
 * Bands of a section lengthened by `pastMm` at every end that lies within the section's own depth, and split where they
 * then cover one another.
 */
export function cutPast<Cut extends AtDepth>(
  cuts: readonly Cut[],
  section: DepthRange | null,
  pastMm: number,
): Slice<Cut>[] {
  if (section === null || pastMm === 0) return cuts.map((cut) => ({ depth: cut.depth, cuts: [cut] }));
  const longer = cuts.map((cut) => ({ cut, depth: lengthenedIn(section, cut.depth ?? section, pastMm) }));
  const stops = [...new Set(longer.flatMap(({ depth }) => [depth.fromMm, depth.toMm]))].sort((a, b) => a - b);
  const slices = stops.slice(1).map((toMm, i): Slice<Cut> => {
    const fromMm = stops[i] as number;
    const here = longer.filter(({ depth }) => depth.fromMm <= fromMm && toMm <= depth.toMm);
    return { depth: { fromMm, toMm }, cuts: here.map(({ cut }) => cut) };
  });
  return slices.filter((slice) => slice.cuts.length > 0);
}

const lengthenedIn = (section: DepthRange, { fromMm, toMm }: DepthRange, byMm: number): DepthRange => ({
  fromMm: Math.max(section.fromMm, fromMm - byMm),
  toMm: Math.min(section.toMm, toMm + byMm),
});

/**
 * How far along a surface the fillet of a ball reaches that has cut `depthMm` below it: half the width of its groove,
 * √(2Rh − h²), and its radius at the most; mm.
 */
export const filletReachMm = (radiusMm: number, depthMm: number): number =>
  depthMm >= radiusMm ? radiusMm : Math.sqrt(2 * radiusMm * depthMm - depthMm * depthMm);

/** The height of the ridges between passes of a ball, R − √(R² − s²/4); its radius where the passes part. */
export const scallopMm = (radiusMm: number, stepoverMm: number): number =>
  stepoverMm >= 2 * radiusMm ? radiusMm : radiusMm - Math.sqrt(radiusMm * radiusMm - (stepoverMm * stepoverMm) / 4);

/** The metal a round cutter leaves in a corner of `cornerRad` between two straight walls, r(1/sin ½θ − 1); mm. */
export const cornerLeftMm = (radiusMm: number, cornerRad: number): number =>
  radiusMm * (1 / Math.sin(cornerRad / 2) - 1);
