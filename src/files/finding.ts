/**
 * Something wrong with an input, as data: which file, where in it, what was found and what was expected.
 * `at` is a path such as `sections[2].loops[0]`, or a line of a file; empty for the file as a whole.
 */
export interface Finding {
  readonly file: string;
  readonly at: string;
  readonly found: string;
  readonly expected: string;
  /** A nearest known key or id, where there is one. */
  readonly didYouMean?: string;
}

/** A value, or everything that keeps it from being one; never half of each. */
export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly findings: readonly Finding[] };
