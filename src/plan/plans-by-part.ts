import type { GrindAnswer } from '../answers/grind-answer.ts';
import type { CutPlan } from './cut-plan.ts';

/**
 * A plan as one for each part it cuts, the cut of the moving part an answer of its own; what is judged of the whole,
 * `holds` among it, is said of each.
 */
export function plansByPart({ answer, part, movingPart, ...judged }: CutPlan): CutPlan[] {
  if (answer.movingCut === null || movingPart === undefined) return [{ answer, part, ...judged }];
  const { movingCut } = answer;
  const whole: GrindAnswer = { ...answer, movingCut: null };
  const moving: GrindAnswer = {
    ...whole,
    ...movingCut,
    part: 'moving',
    smallestFilletMm: movingCut.cutter?.radiusMm ?? null,
  };
  return [
    { answer: whole, part, ...judged },
    { answer: moving, part: movingPart, ...judged },
  ];
}
