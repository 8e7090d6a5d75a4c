import type { DepthRange, Section } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import type { SectionPair } from './notices.ts';
import { matingRule } from './passings.ts';
import { isStretch, type MaybeStretch, reachOf, stretchOf } from './shared-depth.ts';

/**
 * The depth of the fixed part, mm from its face, that two sections share between two stand-offs, the moving one
 * lengthened by the depth margin: moving metal stands at fixed depth −(stand-off + its own depth).
 */
export function meetingDepth(
  { fit, fixed, moving }: Joint,
  { fixedSection, movingSection }: SectionPair,
  a: number,
  b: number,
): DepthRange | null {
  const [f, m] = [stretchNamed(fixed.sections, fixedSection), stretchNamed(moving.sections, movingSection)];
  if (m === null || !isStretch(m)) return f?.depth ?? null;
  const reach = f !== null && isStretch(f) ? reachOf(m, f, matingRule({ fit }), 'as-measured') : m.depth;
  const fromMm = 0 - Math.max(a, b) - reach.toMm;
  const toMm = 0 - Math.min(a, b) - reach.fromMm;
  if (f === null || !isStretch(f)) return { fromMm, toMm };
  return { fromMm: Math.max(fromMm, f.depth.fromMm), toMm: Math.min(toMm, f.depth.toMm) };
}

function stretchNamed(sections: readonly Section[], id: string): MaybeStretch | null {
  const section = sections.find((one) => one.id === id);
  return section === undefined ? null : stretchOf(section);
}
