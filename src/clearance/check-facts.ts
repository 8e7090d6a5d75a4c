import type { CheckAnswer } from '../answers/check-answer.ts';
import type { DepthRange, Section } from '../job/casting.ts';
import { type DowelGap, dowelGaps } from '../joint/dowel-gaps.ts';
import type { Joint } from '../joint/joint.ts';
import { isStretch, type MaybeStretch, reachOf, stretchOf } from './shared-depth.ts';

/** What a builder can measure or look for at the contacts of an answer, beyond the answer's own figures. */
export interface CheckFacts {
  /** Each dowel's distance to its hole at the first touch; empty where there is none. */
  readonly dowelGaps: readonly DowelGap[];
  /** Depth of the fixed part at which the first touch happens; null for sections without depth, or no touch. */
  readonly touchDepth: DepthRange | null;
  /** The same for every entry of `install.fouling`, in its order. */
  readonly foulingDepths: readonly (DepthRange | null)[];
}

export function checkFacts(joint: Joint, { install }: Pick<CheckAnswer, 'install'>): CheckFacts {
  const touch = install?.firstTouch ?? null;
  return {
    dowelGaps: touch === null ? [] : dowelGaps(joint, touch.leg, touch.at),
    touchDepth: touch === null ? null : meetingDepth(joint, touch, touch.standOffMm, touch.standOffMm),
    foulingDepths: (install?.fouling ?? []).map((foul) =>
      meetingDepth(joint, foul, foul.fromStandOffMm, foul.toStandOffMm),
    ),
  };
}

type Pair = { readonly fixedSection: string; readonly movingSection: string };

/**
 * The depth of the fixed part, mm from its face, that two sections share between two stand-offs, the moving one
 * lengthened by the depth margin: moving metal stands at fixed depth −(stand-off + its own depth).
 */
function meetingDepth({ fit, fixed, moving }: Joint, pair: Pair, a: number, b: number): DepthRange | null {
  const [f, m] = [stretchNamed(fixed.sections, pair.fixedSection), stretchNamed(moving.sections, pair.movingSection)];
  if (m === null || !isStretch(m)) return f?.depth ?? null;
  const rule = { marginMm: fit.depthMarginMm, facesMate: true };
  const reach = f !== null && isStretch(f) ? reachOf(m, f, rule, 'as-measured') : m.depth;
  const fromMm = 0 - Math.max(a, b) - reach.toMm;
  const toMm = 0 - Math.min(a, b) - reach.fromMm;
  if (f === null || !isStretch(f)) return { fromMm, toMm };
  return { fromMm: Math.max(fromMm, f.depth.fromMm), toMm: Math.min(toMm, f.depth.toMm) };
}

function stretchNamed(sections: readonly Section[], id: string): MaybeStretch | null {
  const section = sections.find((one) => one.id === id);
  return section === undefined ? null : stretchOf(section);
}
