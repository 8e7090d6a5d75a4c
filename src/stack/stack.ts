import type { StackFile } from '../files/stack-file.ts';
import type { Units } from '../job/lengths.ts';

export type LengthName = keyof StackFile['lengths'];
export type RowName = keyof NonNullable<StackFile['wanted']>;

/** A length as it was measured, ± its limit; mm. */
export interface StackLength {
  readonly mm: number;
  readonly errorMm: number;
}

/** Lengths along the crank, and the least that a builder wants of what they leave; mm. */
export interface Stack {
  readonly file: string;
  readonly title: string;
  readonly units: Units;
  readonly lengths: Readonly<Partial<Record<LengthName, StackLength>>>;
  readonly wantedMm: Readonly<Partial<Record<RowName, number>>>;
  /** Lengths whose ± limit was not stated, and the one that was taken. */
  readonly errorAssumed: { readonly of: readonly LengthName[]; readonly mm: number } | null;
}
