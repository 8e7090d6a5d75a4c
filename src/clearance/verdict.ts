import type { Verdict } from './check-result.ts';
import { holdsClearance, type Measure } from './measure.ts';

/** A figure that decides, and what was asked of it, mm. */
export interface Judged {
  readonly measure: Pick<Measure, 'state' | 'clearanceMm' | 'worstClearanceMm'>;
  readonly askedMm: number;
}

/** Whether every figure keeps what was asked of it, as traced. */
export const keepsAll = (judged: readonly Judged[]): boolean =>
  judged.every(({ measure, askedMm }) => holdsClearance(measure.state, measure.clearanceMm, askedMm));

/**
 * `goes`: the asked clearance is held even with every tracing error at its worst. `should-go`: held as traced.
 * `too-close`: not held, but nothing is shown to foul.
 */
export function verdictOf(judged: readonly Judged[]): Verdict {
  const states = judged.map(({ measure }) => measure.state);
  if (states.includes('fouls')) return 'fouls';
  if (states.includes('undecided')) return 'undecided';
  if (!keepsAll(judged)) return 'too-close';
  const atWorst = judged.map(({ measure, askedMm }) => ({
    measure: { ...measure, clearanceMm: measure.worstClearanceMm },
    askedMm,
  }));
  return keepsAll(atWorst) ? 'goes' : 'should-go';
}
