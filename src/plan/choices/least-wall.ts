import type { PartCut } from '../part-cut.ts';

/** The thinnest wall that a cut leaves, every error against the builder, mm: 0 or less where it may be gone. */
export interface LeastWall {
  /** Between the cut and a hole or a hollow, of a section's own metal, or where a wall was read. */
  readonly of: 'hole' | 'hollow' | 'section' | 'reading';
  /** The id of the hole, the hollow or the section. */
  readonly id: string;
  readonly wallMm: number;
}

export function leastWallOf(cuts: readonly PartCut[]): LeastWall | null {
  const walls = cuts.flatMap((cut): LeastWall[] => [
    ...cut.walls.map(({ kind, hollow, wallMm }) => ({ of: kind, id: hollow, wallMm })),
    ...cut.thin.map(({ section, wallMm }) => ({ of: 'section' as const, id: section, wallMm })),
    ...cut.readings.map(({ section, leastWallMm }) => ({ of: 'reading' as const, id: section, wallMm: leastWallMm })),
  ]);
  return walls.reduce<LeastWall | null>((least, wall) => (least && least.wallMm <= wall.wallMm ? least : wall), null);
}
