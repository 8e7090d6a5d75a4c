import type { Source } from './sourced.ts';

/** How long a thread should engage, as a multiple of its major diameter. */
export interface Engagement {
  readonly timesMajor: number;
  readonly source: Source;
}

const rule: Source = { basis: 'looked up', from: 'a rule of thumb' };
const practice: Source = { basis: 'common practice', from: '' };

const byMaterial: ReadonlyMap<string, Engagement> = new Map([
  ['grey-iron', { timesMajor: 1.5, source: rule }],
  ['ductile-iron', { timesMajor: 1.25, source: practice }],
  ['aluminium', { timesMajor: 2, source: rule }],
  ['steel', { timesMajor: 1, source: rule }],
]);

/** The engagement advised in a material, by its name in `materials`; null for any other. */
export const engagementIn = (material: string): Engagement | null => byMaterial.get(material) ?? null;

/** How long (mm) the point of a 118° drill is: d / (2 tan 59°), computed. */
export const drillPointMm = (diameterMm: number): number => diameterMm / (2 * Math.tan((59 * Math.PI) / 180));
