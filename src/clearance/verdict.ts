import type { Clearances } from '../job/job.ts';
import type { Verdict } from './check-result.ts';
import { holdsClearance, type Measure } from './measure.ts';
import type { RotatingMeasure } from './rotating.ts';

/**
 * `goes`: the asked clearance is held even with every tracing error at its worst. `should-go`: held as traced.
 * `too-close`: not held, but nothing fouls.
 */
export function verdictOf(
  asked: Clearances,
  home: Measure,
  wayIn: Measure | null,
  rotating: readonly RotatingMeasure[],
): Verdict {
  const measures = [
    { measure: home, askedMm: asked.homeMm },
    ...(wayIn ? [{ measure: wayIn, askedMm: asked.wayInMm }] : []),
    ...rotating.map(({ measure }) => ({ measure, askedMm: asked.rotatingMm })),
  ];
  const states = measures.map(({ measure }) => measure.state);
  if (states.includes('fouls')) return 'fouls';
  if (states.includes('undecided')) return 'undecided';
  const held = (mm: (measure: Measure) => number | null): boolean =>
    measures.every(({ measure, askedMm }) => holdsClearance(measure.state, mm(measure), askedMm));
  if (!held((measure) => measure.clearanceMm)) return 'too-close';
  return held((measure) => measure.worstClearanceMm) ? 'goes' : 'should-go';
}
