import type { Vec } from '../../geometry/plane/vec.ts';
import type { BoltHole } from '../../trade/bolt-allowance.ts';

/** A hole of a pattern, mm; its name is only for telling it, and pairs nothing. */
export interface PatternHole extends BoltHole {
  readonly id: string;
  readonly at: Vec;
}

/** How two patterns are to be matched. */
export interface MatchOptions {
  /** Holes farther off one another are no pair, mm. */
  readonly reachMm: number;
  /** Whether both patterns stand about one centre, their origin, so that only the turn is sought. */
  readonly centred: boolean;
}

/** The least holes that make a position. */
export const fewestPairs = ({ centred }: MatchOptions): number => (centred ? 1 : 2);
