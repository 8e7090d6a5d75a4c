import type { CheckResult } from '../../clearance/check-result.ts';
import { round6 } from '../../geometry/plane/rounding.ts';
import type { Progress } from '../../geometry/progress.ts';
import type { Cutter, Fit } from '../../job/job.ts';
import type { Joint } from '../../joint/joint.ts';
import { coveredRadii, filletStressFactor, filletStressSource, referenceBar } from '../../trade/fillet-stress.ts';
import { sumKnown } from '../bands/amounts.ts';
import { planCut } from '../plan-cut.ts';
import type { PlanResult } from '../plan-result.ts';
import { handErrorOf } from '../walls/walls.ts';
import type { Choice, Choices, CutterChoice, FilletReference, PartChoice } from './choices.ts';
import { leastFilletMm } from './least-fillet.ts';
import { leastWallOf } from './least-wall.ts';

/** Radii of cutters that are easily had, mm: common practice, no source. */
const commonCuttersMm = [3, 4, 5, 6, 8, 10, 12.5] as const;

/** A larger fillet is worth so much more metal, as a share of the least. */
const worthMore = 0.05;

const reference: FilletReference = {
  bar: referenceBar,
  covers: coveredRadii(referenceBar),
  source: filletStressSource,
};

const cuts = ['fixed', 'moving', 'both'] as const;

/** What cutting either part or both would take, and what each of some cutters; `plan` and `check` are those of the job as it is. */
export function* findChoices(
  joint: Joint,
  plan: PlanResult,
  check: () => Generator<Progress, CheckResult>,
): Generator<Progress, Choices> {
  const { cut, cutter, cuttersMm } = joint.fit;
  const nose = cutter?.nose ?? 'ball';
  const found = { reason: plan.reason, nose, areListed: cuttersMm !== null, reference };
  if (plan.reason !== null) return { ...found, parts: [], cutters: [], kindestMm: null };
  const parts: PartChoice[] = [];
  let { alone } = plan;
  for (const [done, other] of cuts.entries()) {
    yield { step: 'which part', done, of: cuts.length };
    const asked = { ...joint, fit: { ...joint.fit, cut: other } };
    const made = other === cut ? plan : yield* planCut(asked, check, alone);
    // both begin with the fixed part alone
    if (other === 'fixed') alone = made.alone;
    parts.push({ cut: other, ...choiceOf(made) });
  }

  if (choiceOf(plan).cutsNothing) return { ...found, parts, cutters: [], kindestMm: null };
  const radii = radiiOf(joint.fit);
  const cutters: Omit<CutterChoice, 'moreThanLeast'>[] = [];
  for (const [done, radiusMm] of radii.entries()) {
    yield { step: 'which cutter', done, of: radii.length };
    const made = radiusMm === cutter?.radiusMm ? plan : yield* cutWith(joint, radiusMm, check);
    cutters.push({ ...cutterChoice(joint, made, radiusMm), stressRatio: stressRatio(radiusMm, radii[0] as number) });
  }
  const compared = besideTheLeast(cutters);
  return { ...found, parts, cutters: compared, kindestMm: kindestOf(compared) };
}

function choiceOf({ cuts: made, holds, hindrances }: PlanResult): Choice {
  return {
    holds,
    cutsNothing: made.every(({ sections }) => sections.length === 0),
    volumeMm3: sumKnown(made.map(({ volumeMm3 }) => volumeMm3)),
    massG: sumKnown(made.map(({ massG }) => massG)),
    leastWall: leastWallOf(made),
    against: hindrances,
  };
}

/** The radii that the fit lists, or those in common use with its own among them; the smallest first. */
function radiiOf({ cutter, cuttersMm }: Fit): number[] {
  if (cuttersMm !== null) return cuttersMm.toSorted((a, b) => a - b);
  if (cutter === null) return [...commonCuttersMm];
  // one written in inches may be a common one but for rounding
  const others = commonCuttersMm.filter((mm) => round6(mm) !== round6(cutter.radiusMm));
  return [...others, cutter.radiusMm].sort((a, b) => a - b);
}

const cutWith = (
  { fit, ...rest }: Joint,
  radiusMm: number,
  check: () => Generator<Progress, CheckResult>,
): Generator<Progress, PlanResult> =>
  planCut({ ...rest, fit: { ...fit, cutter: { ...(fit.cutter ?? anyBall(fit)), radiusMm } } }, check);

const anyBall = (fit: Fit): Omit<Cutter, 'radiusMm'> => ({
  nose: 'ball',
  handErrorMm: handErrorOf(fit),
  runOut: 'cut-past',
  stepoverMm: null,
});

function cutterChoice(
  joint: Joint,
  plan: PlanResult,
  radiusMm: number,
): Omit<CutterChoice, 'stressRatio' | 'moreThanLeast'> {
  const made = plan.cuts.flatMap(({ cutter }) => cutter ?? []);
  return {
    radiusMm,
    ...choiceOf(plan),
    leastFilletMm: leastFilletMm(joint, plan.cuts, radiusMm),
    leaves: made.flatMap(({ ends }) => ends.filter(({ what }) => what === 'left' || what === 'against')),
    narrow: made.flatMap(({ narrow }) => narrow),
  };
}

function stressRatio(radiusMm: number, smallestMm: number): number | null {
  const [own, sharpest] = [radiusMm, smallestMm].map((mm) => filletStressFactor(referenceBar, mm));
  return own == null || sharpest == null ? null : own / sharpest;
}

/** Beside the least of those that hold, or of all where none does. */
function besideTheLeast(cutters: readonly Omit<CutterChoice, 'moreThanLeast'>[]): CutterChoice[] {
  const holding = cutters.filter(({ holds }) => holds);
  const volumes = (holding.length > 0 ? holding : cutters).map(({ volumeMm3 }) => volumeMm3);
  const least = sumKnown(volumes) === null ? 0 : Math.min(...volumes.map((mm3) => mm3 ?? 0));
  return cutters.map((choice) => ({
    ...choice,
    moreThanLeast: least === 0 || choice.volumeMm3 === null ? null : choice.volumeMm3 / least - 1,
  }));
}

const kindestOf = (cutters: readonly CutterChoice[]): number | null =>
  cutters.findLast(({ holds, moreThanLeast }) => holds && moreThanLeast !== null && moreThanLeast <= worthMore)
    ?.radiusMm ?? null;
