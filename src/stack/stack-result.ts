import { type Form, type RowForms, rowForms } from './rows.ts';
import type { LengthName, RowName, Stack, StackLength } from './stack.ts';
import { type Summed, summed } from './sum.ts';

/** `holds`: no less than wanted at worst; `fails`: less at best; `undecided` between. Lengths in mm. */
export type StackRow =
  | (Summed & {
      readonly name: RowName;
      readonly state: 'holds' | 'fails' | 'undecided';
      readonly leastMm: number;
      readonly mostMm: number;
      /** Null where more than nothing is asked. */
      readonly wantedMm: number | null;
    })
  | { readonly name: RowName; readonly state: 'missing'; readonly missing: readonly LengthName[] };

export interface StackResult {
  readonly stack: Stack;
  readonly verdict: 'goes' | 'not' | 'undecided';
  readonly rows: readonly StackRow[];
}

/** Every row of a stack, worst case deciding; a row without all its lengths decides nothing. */
export function stackUp(stack: Stack): StackResult {
  const rows = rowForms.map((row) => rowOf(stack, row));
  const some = (state: StackRow['state']): boolean => rows.some((row) => row.state === state);
  const open = some('undecided') || some('missing');
  return { stack, rows, verdict: some('fails') ? 'not' : open ? 'undecided' : 'goes' };
}

const hairMm = 1e-9;

function rowOf({ lengths, wantedMm }: Stack, { name, forms }: RowForms): StackRow {
  const named = [...new Set(forms.flatMap(({ plus, minus }) => [...plus, ...minus]))];
  const missing = named.filter((length) => lengths[length] === undefined);
  if (missing.length > 0) return { name, state: 'missing', missing };
  const sums = forms.map((form) => summed(termsOf(form, lengths)));
  const least = sums.reduce((a, b) => (b.mm < a.mm ? b : a));
  const leastMm = Math.min(...sums.map(({ mm, worstMm }) => mm - worstMm));
  const mostMm = Math.min(...sums.map(({ mm, worstMm }) => mm + worstMm));
  const wanted = wantedMm[name] ?? null;
  return { name, ...least, leastMm, mostMm, wantedMm: wanted, state: stateOf(leastMm, mostMm, wanted) };
}

function stateOf(leastMm: number, mostMm: number, wantedMm: number | null): 'holds' | 'fails' | 'undecided' {
  if (wantedMm === null) {
    if (leastMm > hairMm) return 'holds';
    return mostMm > hairMm ? 'undecided' : 'fails';
  }
  if (leastMm >= wantedMm - hairMm) return 'holds';
  return mostMm >= wantedMm - hairMm ? 'undecided' : 'fails';
}

function termsOf({ plus, minus }: Form, lengths: Stack['lengths']): [number, StackLength][] {
  const signed = (names: readonly LengthName[], sign: number): [number, StackLength][] =>
    names.flatMap((name) => {
      const length = lengths[name];
      return length === undefined ? [] : [[sign, length]];
    });
  return [...signed(plus, 1), ...signed(minus, -1)];
}
