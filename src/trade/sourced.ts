/**
 * Where a trade value comes from. A value from memory is never shown to a reader as if it had been read in the
 * standard it is named after.
 */
export type Basis = 'looked up' | 'from memory' | 'computed' | 'common practice';

export interface Source {
  readonly basis: Basis;
  /** The text, standard or formula; empty for common practice. */
  readonly from: string;
}
