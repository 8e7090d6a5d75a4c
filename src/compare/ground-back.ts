import type { Casting } from '../job/casting.ts';
import { massOfG } from '../job/mass.ts';
import type { Standing } from './standing-beyond.ts';

/** The second casting ground back to the first as traced, so that it goes wherever that does. */
export interface GroundBack {
  /** Null where the metal has no depth, the mass also without a material. */
  readonly volumeMm3: number | null;
  readonly massG: number | null;
  /** What may then still stand beyond the first by the errors of both, mm: as much clearance the first must have. */
  readonly remainsMm: number;
  /** Sections of the second that would be cut, and are not offered. */
  readonly notOffered: readonly string[];
  /** False where metal may stand that nobody traced, or whose depth nobody stated: of that nothing is told. */
  readonly complete: boolean;
}

/** What that takes, of all that stands over as traced; null where nothing does. */
export function groundBack(
  { sections, material }: Casting,
  asTraced: readonly Standing[],
  toldThroughout: boolean,
): GroundBack | null {
  if (asTraced.length === 0) return null;
  const volumeMm3 = asTraced.reduce<number | null>(
    (sum, { areaMm2, depth }) => (sum === null || depth === null ? null : sum + areaMm2 * (depth.toMm - depth.fromMm)),
    0,
  );
  const cut = new Set(asTraced.map(({ section }) => section));
  return {
    volumeMm3,
    massG: massOfG(volumeMm3, material),
    remainsMm: Math.max(...asTraced.map(({ errorMm }) => errorMm)),
    notOffered: sections.filter(({ id, mayCut }) => cut.has(id) && !mayCut).map(({ id }) => id),
    complete: toldThroughout && !asTraced.some(({ untraced }) => untraced),
  };
}
