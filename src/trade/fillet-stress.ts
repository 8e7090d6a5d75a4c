import type { Source } from './sourced.ts';

/** A flat bar in tension that steps down from one width to another, alike on both sides; mm. */
export interface SteppedBar {
  readonly wideMm: number;
  readonly narrowMm: number;
}

/** Where nothing is known of the shape about a fillet, fillets are compared in this bar: common practice, no source. */
export const referenceBar: SteppedBar = { wideMm: 40, narrowMm: 30 };

/**
 * From memory. The factors that it gives of a bar of 40 mm stepped to 30 are those computed from the polynomials as
 * looked up, to three decimals.
 */
export const filletStressSource: Source = {
  basis: 'from memory',
  from: "Peterson's stress concentration factors, shouldered flat bar in tension",
};

/** Steps of fewer or more times the radius of the fillet are not covered. */
const coveredSteps = { least: 0.1, most: 20 } as const;

export const coveredRadii = (bar: SteppedBar): { leastRadiusMm: number; mostRadiusMm: number } => ({
  leastRadiusMm: stepMmOf(bar) / coveredSteps.most,
  mostRadiusMm: stepMmOf(bar) / coveredSteps.least,
});

const stepMmOf = ({ wideMm, narrowMm }: SteppedBar): number => (wideMm - narrowMm) / 2;

/** Polynomials in s = √(step / radius), each [1, s, s²], of the powers of step / half the width; up to a step of 2 radii, and above. */
const shallow = [
  [1.006, 1.008, -0.044],
  [-0.115, -0.584, 0.315],
  [0.245, -1.006, -0.257],
  [-0.135, 0.582, -0.017],
] as const;
const steep = [
  [1.02, 1.009, -0.048],
  [-0.065, -0.165, -0.007],
  [-3.459, 1.266, -0.016],
  [3.505, -2.109, 0.069],
] as const;

/**
 * By how much a fillet of some radius (mm) in either shoulder of a bar raises the stress of its narrow width,
 * Kt = C₁ + C₂x + C₃x² + C₄x³ with x = step / half the wide width; null where the polynomials do not hold. It compares
 * fillets, and says nothing of the strength of a casting.
 */
export function filletStressFactor(bar: SteppedBar, radiusMm: number): number | null {
  const stepMm = stepMmOf(bar);
  const steps = stepMm / radiusMm;
  if (!(steps >= coveredSteps.least && steps <= coveredSteps.most)) return null;
  const [s, x] = [Math.sqrt(steps), stepMm / (bar.wideMm / 2)];
  return (steps <= 2 ? shallow : steep).reduce(
    (sum, [a, b, c], power) => sum + (a + b * s + c * steps) * x ** power,
    0,
  );
}
