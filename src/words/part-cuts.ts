import type { Joint } from '../joint/joint.ts';
import type { CutFigures } from '../plan/part-cut.ts';
import type { PlanFigures } from '../plan/plan-result.ts';
import { shortName } from './names.ts';

/** Texts of each cut of a plan; where both parts are cut, with the part's name before the first of them, or before all. */
export const textsByPart = (
  joint: Joint,
  { cuts }: PlanFigures,
  textsOf: (cut: CutFigures) => readonly string[],
  named: 'first' | 'all',
): string[] =>
  cuts.flatMap((cut) =>
    textsOf(cut).map((text, i) =>
      cuts.length === 1 || (named === 'first' && i > 0) ? text : `${nameCut(joint, cut)}: ${text}`,
    ),
  );

/** The name of the casting that a cut is made in. */
export const nameCut = (joint: Joint, { part }: CutFigures): string => shortName(joint[part]);
