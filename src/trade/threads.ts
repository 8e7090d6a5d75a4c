import { metricThreads } from './metric-threads.ts';

/** A thread by its size alone; `pitchMm` null where it is neither written nor the coarse pitch of a listed size. */
export interface Thread {
  readonly majorMm: number;
  readonly pitchMm: number | null;
}

const metric = /^M(\d+(?:\.\d+)?)(?:[x×*](\d+(?:\.\d+)?))?(?:-\w+)?$/i;
const inchFraction = /^(\d+)\/(\d+)(?:-(\d+(?:\.\d+)?))?(?:UN[CF])?$/i;

/**
 * The size of a designation such as `M12x1.75`, `M12×1.75`, `M12` (coarse) or `3/8-16`; null where it is no such
 * thing. Inch sizes are computed: fraction × 25.4, pitch 25.4 / threads per inch.
 */
export function parseThread(designation: string): Thread | null {
  const text = designation.replace(/\s/g, '');
  const [, major, pitch] = metric.exec(text) ?? [];
  if (major !== undefined)
    return sized(Number(major), pitch === undefined ? coarsePitchOf(Number(major)) : Number(pitch));
  const [, over, under, perInch] = inchFraction.exec(text) ?? [];
  if (over === undefined) return null;
  return sized((25.4 * Number(over)) / Number(under), perInch === undefined ? null : 25.4 / Number(perInch));
}

/** A thread deeper than it is thick is a slip of the pen. */
function sized(majorMm: number, pitchMm: number | null): Thread | null {
  const pitchFits = pitchMm === null || (pitchMm > 0 && pitchMm < majorMm / 2);
  return majorMm > 0 && Number.isFinite(majorMm) && pitchFits ? { majorMm, pitchMm } : null;
}

const coarsePitchOf = (majorMm: number): number | null =>
  metricThreads.find((t) => t.coarse && t.majorMm === majorMm)?.pitchMm ?? null;

/** Height of the thread's sharp triangle, mm: H = ½√3 P, computed. */
const triangleMm = (pitchMm: number): number => (Math.sqrt(3) / 2) * pitchMm;

/** Pitch diameter D2 = D − ¾ H, mm; computed as in ISO 724. */
export const pitchDiameterMm = (majorMm: number, pitchMm: number): number => majorMm - 0.75 * triangleMm(pitchMm);

/** Minor diameter D1 = D − 5⁄4 H, mm; computed as in ISO 724. */
export const minorDiameterMm = (majorMm: number, pitchMm: number): number => majorMm - 1.25 * triangleMm(pitchMm);

/**
 * 6H tolerance of the minor diameter by pitch, in µm: from memory of ISO 965-1, whose formula (230 P^0.7 from a pitch of
 * 1 mm, else 433 P − 190 P^1.22, rounded to a preferred number) the tests hold it against.
 */
const minorToleranceUm: ReadonlyMap<number, number> = new Map([
  [0.35, 100],
  [0.5, 140],
  [0.6, 160],
  [0.7, 180],
  [0.75, 190],
  [0.8, 200],
  [1, 236],
  [1.25, 265],
  [1.5, 300],
  [1.75, 335],
  [2, 375],
  [2.5, 450],
  [3, 500],
]);

/** The largest minor diameter a 6H nut thread may have, mm; null for a pitch whose tolerance is not listed. */
export function largestMinor6HMm(majorMm: number, pitchMm: number): number | null {
  const toleranceUm = minorToleranceUm.get(pitchMm);
  return toleranceUm === undefined ? null : minorDiameterMm(majorMm, pitchMm) + toleranceUm / 1000;
}

/** Stress area As = π/4·((d2 + d3)/2)² with d3 = D1 − H/6, mm²; computed. */
export function stressAreaMm2(majorMm: number, pitchMm: number): number {
  const rootMm = minorDiameterMm(majorMm, pitchMm) - triangleMm(pitchMm) / 6;
  const meanMm = (pitchDiameterMm(majorMm, pitchMm) + rootMm) / 2;
  return (Math.PI / 4) * meanMm * meanMm;
}
