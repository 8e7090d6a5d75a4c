import type { GrindAnswer } from '../answers/grind-answer.ts';
import type { ReasonCode } from '../clearance/notices.ts';

/** What a plan's answer says, in the way that words read results. */

export const planReason = ({ reason }: Pick<GrindAnswer, 'reason'>): ReasonCode | null => reason as ReasonCode | null;

export const planReasonTexts = ({ reason, warnings }: Pick<GrindAnswer, 'reason' | 'warnings'>): string[] =>
  warnings.filter(({ code }) => code === reason).map(({ text }) => text);

export const planWarningTexts = ({ reason, warnings }: Pick<GrindAnswer, 'reason' | 'warnings'>): string[] =>
  warnings.filter(({ code }) => code !== reason).map(({ text }) => text);

/** The figures after the cut. */
export function afterCutOf({ afterCut: { home, install } }: Pick<GrindAnswer, 'afterCut'>) {
  const measured = (one: GrindAnswer['afterCut']['home']) => ({
    ...one,
    foul: { areaMm2: one.foulAreaMm2, deepestMm: one.deepestMm },
  });
  return { home: measured(home), wayIn: install && measured({ ...install }), rotating: [] };
}
