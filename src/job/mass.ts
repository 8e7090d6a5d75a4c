import type { Material } from './casting.ts';

/** What a volume weighs, g; null where it or the material is not known. */
export const massOfG = (mm3: number | null, material: Material | null): number | null =>
  mm3 === null ? null : material && (mm3 * material.densityGPerCm3) / 1000;
