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

/** What the depth of a tapped hole is made up of besides the engagement; in pitches, common practice. */
export const tappedDepth = {
  /** Full threads below the end of the bolt. */
  spareThreads: 2,
  /** Threads that a tap cuts in part only: with the lead of a second tap, and of a bottoming one. */
  secondTapLead: 4,
  bottomingTapLead: 2,
} as const;

/** Wall to leave about a thread where the builder states none, as a share of its major diameter: common practice. */
export const leastWallShare = 1 / 3;
