import type { Fit, HolePair } from '../job/job.ts';
import type { Leg, Position } from '../job/path.ts';
import type { JointNotice } from './notices.ts';

/**
 * Legs on which the moving part is turned or shifted while its dowels are engaged, or shifted while the input shaft is.
 *
 * Exact, not sampled: the stand-off runs linearly, so the instants below a limit are an open stretch of the leg, empty
 * just when neither end lies below it. A leg's turn and shift either stay zero throughout, which its two ends tell, or
 * are zero at single instants only, so every such stretch holds an instant off the straight line.
 */
export function pathNotices(fit: Pick<Fit, 'legs' | 'engagesAtMm'>, dowels: readonly HolePair[]): JointNotice[] {
  const proudMm = dowelsProudMm(dowels);
  return fit.legs.flatMap((leg, i) => [...onDowels(leg, i + 1, proudMm), ...onShaft(leg, i + 1, fit.engagesAtMm ?? 0)]);
}

/** The stand-off below which a dowel is in its hole, mm. */
export const dowelsProudMm = (dowels: readonly HolePair[]): number =>
  Math.max(0, ...dowels.flatMap(({ fixed, moving }) => [fixed.proudMm, moving.proudMm]));

/** The stand-off below which two dowels are in their holes, so that nothing turns or shifts; 0 where that is never so, mm. */
export function guidedByDowelsMm(dowels: readonly HolePair[]): number {
  const prouds = dowels.map(({ fixed, moving }) => Math.max(fixed.proudMm, moving.proudMm));
  return prouds.sort((a, b) => b - a)[1] ?? 0;
}

function onDowels(leg: Leg, count: number, proudMm: number): JointNotice[] {
  const standOffMm = lowestStandOffMm(leg);
  if (standOffMm >= proudMm || (inLine(leg.from) && inLine(leg.to))) return [];
  return [{ code: 'off-line-on-dowels', leg: count, standOffMm, proudMm }];
}

function onShaft(leg: Leg, count: number, engagesAtMm: number): JointNotice[] {
  const standOffMm = lowestStandOffMm(leg);
  if (standOffMm >= engagesAtMm || (onAxis(leg.from) && onAxis(leg.to))) return [];
  return [{ code: 'off-line-on-shaft', leg: count, standOffMm, engagesAtMm }];
}

const lowestStandOffMm = ({ from, to }: Leg): number => Math.min(from.standOffMm, to.standOffMm);

const onAxis = ({ shift }: Position): boolean => shift.x === 0 && shift.y === 0;

const inLine = (position: Position): boolean => position.turnRad === 0 && onAxis(position);
