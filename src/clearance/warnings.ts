import type { Warning } from '../answers/check-answer.ts';
import { regionAreaMm2, regionOverlapAreaMm2 } from '../geometry/polygons/region-measures.ts';
import type { Section } from '../job/casting.ts';
import { givenLength, lengthText } from '../job/length-text.ts';
import type { Joint } from '../joint/joint.ts';
import type { Measure } from './measure.ts';
import type { RotatingMeasure } from './rotating.ts';
import { sectionsMeet } from './shared-depth.ts';

/** Every warning the clearance check can give; the codes are part of the answer's format. */
export type ClearanceWarningCode =
  | 'starts-in-shared-depth'
  | 'sections-without-depth-overlap'
  | 'not-traced-here'
  | 'rotating-close';

export function clearanceWarnings(
  joint: Joint,
  home: Measure,
  install: Measure | null,
  rotating: readonly RotatingMeasure[],
): Warning[] {
  return [
    ...overlapWarnings(joint),
    ...untracedWarning([home, ...(install ? [install] : []), ...rotating.map(({ measure }) => measure)]),
    ...rotatingWarnings(joint, rotating),
  ];
}

const warning = (code: ClearanceWarningCode, text: string): Warning => ({ code, text });

/** The first position is taken as given: what happens on the way to it is not checked. */
export function startWarning({ fit, fixed, moving }: Joint): Warning[] {
  const first = fit.legs[0]?.from;
  if (first === undefined) return [];
  const pair = pairsOf(fixed.sections, moving.sections).find(
    ([f, m]) => sectionsMeet(f, m, { from: first, to: first }, fit.depthMarginMm) !== null,
  );
  if (pair === undefined) return [];
  const names = `"${pair[0].id}" and "${pair[1].id}"`;
  return [
    warning(
      'starts-in-shared-depth',
      `At the first position ${names} already share depth; the way to that position is not checked.`,
    ),
  ];
}

/** Two sections without depth that lie largely over one another were likely meant to have depths. */
function overlapWarnings({ fixed, moving }: Joint): Warning[] {
  return pairsOf(fixed.sections, moving.sections)
    .filter(([f, m]) => f.depth === null && m.depth === null && overlapShare(f, m) > 0.5)
    .map(([f, m]) =>
      warning(
        'sections-without-depth-overlap',
        `"${f.id}" and "${m.id}" have no depth and lie over one another by more than half: give both their depths if they are not at the same one.`,
      ),
    );
}

const overlapShare = (f: Section, m: Section): number =>
  regionOverlapAreaMm2(f.loops, m.loops) / Math.min(regionAreaMm2(f.loops), regionAreaMm2(m.loops));

function untracedWarning(measures: readonly Measure[]): Warning[] {
  const blind = measures.find(
    ({ decisive }) => decisive !== null && (decisive.fixed.untraced || decisive.moving.untraced),
  );
  if (!blind?.decisive) return [];
  const { fixed, moving } = blind.decisive;
  const [section, side] = fixed.untraced ? [moving.name, 'fixed'] : [fixed.name, 'moving'];
  return [
    warning(
      'not-traced-here',
      `"${section}" comes to where the ${side} part is not traced: metal may stand there. Trace it farther, then check again.`,
    ),
  ];
}

/** Common practice, no source: under 3 mm a rotating part wants a second look. */
const closeRotatingMm = 3;

function rotatingWarnings(joint: Joint, rotating: readonly RotatingMeasure[]): Warning[] {
  const { units } = joint.fit;
  return rotating
    .filter(
      ({ measure }) =>
        measure.state === 'clear' && measure.clearanceMm !== null && measure.clearanceMm < closeRotatingMm,
    )
    .map(({ answer }) =>
      warning(
        'rotating-close',
        `"${answer.part}" runs ${lengthText(answer.clearanceMm ?? 0, units)} from the ${answer.against} part: under ${givenLength(closeRotatingMm, units)} is too near for a rotating part.`,
      ),
    );
}

const pairsOf = (fixed: readonly Section[], moving: readonly Section[]): (readonly [Section, Section])[] =>
  fixed.flatMap((f) => moving.map((m) => [f, m] as const));
