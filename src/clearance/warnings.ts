import { regionAreaMm2, regionOverlapAreaMm2 } from '../geometry/region-measures.ts';
import type { Joint } from '../joint/joint.ts';
import type { Section } from '../model/casting.ts';
import type { Warning } from '../model/check-answer.ts';
import type { Measure } from './measure.ts';
import { nearFaceMm, type RotatingMeasure } from './rotating.ts';
import { lengthened, sharedStandOffs } from './shared-depth.ts';

/** Every warning the clearance check can give; the codes are part of the answer's format. */
export type ClearanceWarningCode =
  | 'starts-in-shared-depth'
  | 'sections-without-depth-overlap'
  | 'not-traced-here'
  | 'rotating-close'
  | 'rotating-near-face';

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
  const pair = pairsOf(fixed.sections, moving.sections).find(([f, m]) =>
    sharesDepth(f, m, first.standOffMm, fit.depthMarginMm),
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

function sharesDepth(f: Section, m: Section, standOffMm: number, marginMm: number): boolean {
  if (f.depth === null || m.depth === null) return true;
  const { fromMm, toMm } = sharedStandOffs(f.depth, lengthened(m.depth, marginMm));
  return standOffMm > fromMm && standOffMm < toMm;
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
  const close = rotating
    .filter(
      ({ measure }) =>
        measure.state === 'clear' && measure.clearanceMm !== null && measure.clearanceMm < closeRotatingMm,
    )
    .map(({ answer }) =>
      warning(
        'rotating-close',
        `"${answer.part}" runs ${(answer.clearanceMm ?? 0).toFixed(1)} mm from the ${answer.against} part: under 3 mm is too near for a rotating part.`,
      ),
    );
  const faces = joint.rotating.flatMap((part) => {
    const gapMm = nearFaceMm(part, joint.fit.clearance.rotatingMm);
    if (gapMm === null) return [];
    const text = `"${part.name}" runs ${gapMm.toFixed(1)} mm from the mating face of the fixed part; ends at the mating face are not checked against it along the crank, so check this gap yourself.`;
    return [warning('rotating-near-face', text)];
  });
  return [...close, ...faces];
}

const pairsOf = (fixed: readonly Section[], moving: readonly Section[]): (readonly [Section, Section])[] =>
  fixed.flatMap((f) => moving.map((m) => [f, m] as const));
