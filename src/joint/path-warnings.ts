import type { Warning } from '../answers/check-answer.ts';
import type { Fit, HolePair } from '../job/job.ts';
import { givenLength } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Leg, Position } from '../job/path.ts';
import { jointWarning } from './warnings.ts';

/**
 * Legs on which the moving part is turned or shifted while its dowels are engaged, or shifted while the input shaft is.
 *
 * Exact, not sampled: the stand-off runs linearly, so the instants below a limit are an open stretch of the leg, empty
 * just when neither end lies below it. A leg's turn and shift either stay zero throughout, which its two ends tell, or
 * are zero at single instants only, so every such stretch holds an instant off the straight line.
 */
export function pathWarnings(fit: Pick<Fit, 'legs' | 'engagesAtMm' | 'units'>, dowels: readonly HolePair[]): Warning[] {
  const proudMm = Math.max(0, ...dowels.flatMap(({ fixed, moving }) => [fixed.proudMm, moving.proudMm]));
  return fit.legs.flatMap((leg, i) => [
    ...dowelWarning(leg, i + 1, proudMm, fit.units),
    ...shaftWarning(leg, i + 1, fit.engagesAtMm ?? 0, fit.units),
  ]);
}

function dowelWarning(leg: Leg, count: number, proudMm: number, units: Units): Warning[] {
  const standOffMm = lowestStandOffMm(leg);
  if (standOffMm >= proudMm || (inLine(leg.from) && inLine(leg.to))) return [];
  const text = `Leg ${count} is turned or shifted with the stand-off down to ${givenLength(standOffMm, units)}, but a dowel stands ${givenLength(proudMm, units)} proud: come into line at ${givenLength(proudMm, units)} or more, then slide straight home.`;
  return [jointWarning('off-line-on-dowels', text)];
}

function shaftWarning(leg: Leg, count: number, engagesAtMm: number, units: Units): Warning[] {
  const standOffMm = lowestStandOffMm(leg);
  if (standOffMm >= engagesAtMm || (onAxis(leg.from) && onAxis(leg.to))) return [];
  const text = `Leg ${count} is shifted off the axis with the stand-off down to ${givenLength(standOffMm, units)}, but the input shaft engages at ${givenLength(engagesAtMm, units)}: take the shift out at ${givenLength(engagesAtMm, units)} or more.`;
  return [jointWarning('off-line-on-shaft', text)];
}

const lowestStandOffMm = ({ from, to }: Leg): number => Math.min(from.standOffMm, to.standOffMm);

const onAxis = ({ shift }: Position): boolean => shift.x === 0 && shift.y === 0;

const inLine = (position: Position): boolean => position.turnRad === 0 && onAxis(position);
