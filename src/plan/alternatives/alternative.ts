import type { Part } from '../../job/part.ts';
import type { Hindrance } from '../hindrances.ts';

/** What would be asked instead. */
export type Change =
  | { readonly what: 'clearance'; readonly part: Part; readonly homeMm: number; readonly wayInMm: number }
  /** A flat nose in place of the ball. */
  | { readonly what: 'cutter'; readonly part: Part }
  | { readonly what: 'other-part'; readonly part: Part }
  | { readonly what: 'both' }
  /** By how much the positions that are turned are turned more, or those that turn stand farther off. */
  | { readonly what: 'turn'; readonly part: Part; readonly turnRad: number }
  | { readonly what: 'stand-off'; readonly part: Part; readonly standOffMm: number };

/** What else would give where a plan does not hold. */
export interface Alternative {
  readonly change: Change;
  readonly holds: boolean;
  /** What comes off in all: the greatest area over the depth of each section. */
  readonly areaMm2: number;
  readonly massG: number | null;
  /** What stands against it; empty where it holds. */
  readonly against: readonly Hindrance[];
}
