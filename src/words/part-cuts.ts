import type { GrindAnswer, PartCut } from '../answers/grind-answer.ts';
import type { Casting } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import { shortName } from './names.ts';

/** What a plan takes off one casting. */
export interface CutOfPart {
  readonly casting: Casting;
  readonly cut: PartCut & Pick<GrindAnswer, 'table'>;
}

/** Texts of each cut of a plan; where both parts are cut, with the part's name before the first of them, or before all. */
export function textsByPart(
  joint: Joint,
  plan: GrindAnswer,
  textsOf: (of: CutOfPart) => readonly string[],
  named: 'first' | 'all',
): string[] {
  return partCuts(joint, plan).flatMap((of) =>
    textsOf(of).map((text, i) =>
      plan.movingCut === null || (named === 'first' && i > 0) ? text : `${shortName(of.casting)}: ${text}`,
    ),
  );
}

/** The cuts of a plan: of the part it is for and, where both are cut, then of the moving one. */
export function partCuts(joint: Joint, plan: GrindAnswer): CutOfPart[] {
  const first = { casting: joint[plan.part], cut: plan };
  return plan.movingCut === null ? [first] : [first, { casting: joint.moving, cut: plan.movingCut }];
}
