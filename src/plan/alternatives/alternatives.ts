import { round6 } from '../../geometry/plane/rounding.ts';
import type { Progress } from '../../geometry/progress.ts';
import type { Clearances } from '../../job/job.ts';
import type { Part } from '../../job/part.ts';
import type { Joint } from '../../joint/joint.ts';
import { sumKnown } from '../bands/amounts.ts';
import type { Hindrance } from '../hindrances.ts';
import { type Judgement, judge, planThatHolds } from '../judge-plan.ts';
import type { PartCut } from '../part-cut.ts';
import { planBoth } from '../plan-both.ts';
import { type PartPlan, planPart } from '../plan-part.ts';
import type { PlanResult } from '../plan-result.ts';
import type { Alternative, Change } from './alternative.ts';
import { otherWaysIn } from './other-ways-in.ts';

/** A clearance is proposed to this, mm: no hand sets one finer. */
const clearanceStepMm = 0.05;

/**
 * What else would give where a plan does not hold: a smaller clearance, a flat nose, the other part, both, another turn
 * or stand-off.
 * Each is worked out and told with what stands against it; none is chosen. Nothing where the plan holds, or none was made,
 * or a great part of a casting would go: each of them would take as long as that, to say the same.
 */
export function* alternativesTo(
  joint: Joint,
  { holds, reason, alone, notices }: PlanResult,
): Generator<Progress, Alternative[]> {
  if (holds || reason !== null || notices.some(({ code }) => code === 'takes-a-great-part')) return [];
  const steps = 4;
  yield { step: 'a smaller clearance', done: 0, of: steps };
  const smaller = joint.fit.cut === 'both' ? [] : yield* smallerClearance(joint, joint.fit.cut);
  const flat = alone === null ? [] : yield* flatNose(joint, alone);
  yield { step: 'the other part', done: 1, of: steps };
  const other = yield* onePart(joint, joint.fit.cut === 'fixed' ? 'moving' : 'fixed');
  yield { step: 'both parts', done: 2, of: steps };
  const both = joint.fit.cut === 'both' ? [yield* onePart(joint, 'moving')] : [yield* bothParts(joint, alone)];
  yield { step: 'other ways in', done: 3, of: steps };
  return [...smaller, ...flat, other, ...both, ...(yield* otherWaysIn(joint))];
}

/** A plan as an alternative, with what is supposed of it that is not so. */
function alternative(
  change: Change,
  cuts: readonly PartCut[],
  { holds, hindrances }: Judgement,
  notOffered: readonly Hindrance[] = [],
): Alternative {
  return {
    change,
    holds: holds && notOffered.length === 0,
    ...amounts(cuts),
    against: [...notOffered, ...hindrances],
  };
}

function amounts(cuts: readonly PartCut[]): Pick<Alternative, 'areaMm2' | 'massG'> {
  const areas = cuts.flatMap(({ sections }) =>
    sections.map(({ bands }) => Math.max(...bands.map(({ areaMm2 }) => areaMm2))),
  );
  const masses = cuts.map(({ massG }) => massG);
  return {
    areaMm2: areas.reduce((sum, mm2) => sum + mm2, 0),
    massG: sumKnown(masses),
  };
}

/** The largest clearance, home and way in scaled together, for which the plan holds; what bars it even at none. */
function* smallerClearance(joint: Joint, part: Part): Generator<Progress, Alternative[]> {
  const asked = joint.fit.clearance;
  const askedMm = Math.max(asked.homeMm, asked.wayInMm);
  const steps = Math.ceil(askedMm / clearanceStepMm);
  if (steps === 0) return [];
  let best = yield* withClearance(joint, part, scaled(asked, 0));
  if (!best.holds) return [best];
  let [holds, fails] = [0, steps];
  while (fails - holds > 1) {
    const middle = (holds + fails) >> 1;
    const tried: Alternative | null = yield* holdingWith(joint, part, scaled(asked, middle / steps));
    if (tried !== null) [best, holds] = [tried, middle];
    else fails = middle;
  }
  return [best];
}

/** Set to 1e-6 mm, as it is told: whoever asks for that gets this plan. */
const scaled = (asked: Clearances, factor: number): Clearances => ({
  ...asked,
  homeMm: round6(asked.homeMm * factor),
  wayInMm: round6(asked.wayInMm * factor),
});

function* withClearance(joint: Joint, part: Part, clearance: Clearances): Generator<Progress, Alternative> {
  const plan = yield* planPart(asking(joint, clearance), part);
  return alternative(changeTo(part, clearance), [plan.cut], yield* judge(plan, joint.fit.clearance));
}

/** The same where it holds: what stands against one that does not is not told, and so need not be found. */
function* holdingWith(joint: Joint, part: Part, clearance: Clearances): Generator<Progress, Alternative | null> {
  const found = yield* planThatHolds(asking(joint, clearance), part, joint.fit.clearance);
  return found === null ? null : alternative(changeTo(part, clearance), [found.plan.cut], found.judged);
}

const asking = (joint: Joint, clearance: Clearances): Joint => ({ ...joint, fit: { ...joint.fit, clearance } });

const changeTo = (part: Part, { homeMm, wayInMm }: Clearances): Change => ({
  what: 'clearance',
  part,
  homeMm,
  wayInMm,
});

/** A flat nose in place of the ball, where that leaves fillets. */
function* flatNose(joint: Joint, { cut: { part }, fillets }: PartPlan): Generator<Progress, Alternative[]> {
  const { cutter } = joint.fit;
  if (cutter?.nose !== 'ball' || fillets.length === 0) return [];
  const plan = yield* planPart({ ...joint, fit: { ...joint.fit, cutter: { ...cutter, nose: 'flat' } } }, part);
  return [alternative({ what: 'cutter', part }, [plan.cut], yield* judge(plan, joint.fit.clearance))];
}

/** One part cut alone, as if all its sections were offered: those that are not stand against it. */
function* onePart(joint: Joint, part: Part): Generator<Progress, Alternative> {
  const offered = joint[part].sections.map((section) => ({ ...section, mayCut: true }));
  const plan = yield* planPart({ ...joint, [part]: { ...joint[part], sections: offered } }, part);
  return alternative(
    { what: 'other-part', part },
    [plan.cut],
    yield* judge(plan, joint.fit.clearance),
    notOffered(joint, plan),
  );
}

const notOffered = (joint: Joint, { cut: { part }, cuts }: PartPlan): Hindrance[] =>
  cuts
    .map(({ section }) => section.id)
    .filter((id) => joint[part].sections.some((section) => section.id === id && !section.mayCut))
    .map((id) => ({ code: 'section-not-offered', section: id }));

function* bothParts(joint: Joint, planned: PartPlan | null): Generator<Progress, Alternative> {
  const { fixed, moving } = yield* planBoth(joint, planned);
  const isOffered = joint.moving.sections.some(({ mayCut }) => mayCut);
  const judged = yield* judge(moving, joint.fit.clearance, [fixed]);
  return alternative(
    { what: 'both' },
    [fixed.cut, moving.cut],
    judged,
    isOffered ? [] : [{ code: 'moving-not-offered' }],
  );
}
