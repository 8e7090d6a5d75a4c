import type { Alternative } from '../../answers/grind-answer.ts';
import type { Part } from '../../clearance/passes.ts';
import { round6 } from '../../geometry/plane/rounding.ts';
import type { Progress } from '../../geometry/progress.ts';
import type { Clearances } from '../../job/job.ts';
import type { Joint } from '../../joint/joint.ts';
import { planBoth } from '../plan-both.ts';
import { judge, type PartPlan, planPart } from '../plan-part.ts';
import { amounts, hindrances } from './alternative-facts.ts';
import { otherWaysIn } from './other-ways-in.ts';

/** A clearance is proposed to this, mm: no hand sets one finer. */
const clearanceStepMm = 0.05;

/**
 * What else would give where a plan does not hold: a smaller clearance, a flat nose, the other part, both, another turn
 * or stand-off.
 * Each is worked out and told with what stands against it; none is chosen. `planned` is the plan of
 * one part that does not hold, where it is there already.
 */
export function* alternativesTo(joint: Joint, planned: PartPlan | null = null): Generator<Progress, Alternative[]> {
  const steps = 4;
  yield { step: 'a smaller clearance', done: 0, of: steps };
  const smaller = joint.fit.cut === 'both' ? [] : yield* smallerClearance(joint, joint.fit.cut);
  const flat = planned === null ? [] : yield* flatNose(joint, planned);
  yield { step: 'the other part', done: 1, of: steps };
  const other = yield* onePart(joint, joint.fit.cut === 'fixed' ? 'moving' : 'fixed');
  yield { step: 'both parts', done: 2, of: steps };
  const both = joint.fit.cut === 'both' ? [yield* onePart(joint, 'moving')] : [yield* bothParts(joint, planned)];
  yield { step: 'other ways in', done: 3, of: steps };
  return [...smaller, ...flat, other, ...both, ...(yield* otherWaysIn(joint))];
}

const blank = {
  homeMm: null,
  wayInMm: null,
  turnDeg: null,
  standOffMm: null,
} as const;

/** The largest clearance, home and way in scaled together, for which the plan holds; what bars it even at none. */
function* smallerClearance(joint: Joint, part: Part): Generator<Progress, Alternative[]> {
  const asked = joint.fit.clearance;
  const askedMm = Math.max(asked.homeMm, asked.wayInMm);
  const steps = Math.ceil(askedMm / clearanceStepMm);
  if (steps === 0) return [];
  let best: Alternative = yield* withClearance(joint, part, scaled(asked, 0));
  if (!best.holds) return [best];
  let [holds, fails] = [0, steps];
  while (fails - holds > 1) {
    const middle = (holds + fails) >> 1;
    const tried: Alternative = yield* withClearance(joint, part, scaled(asked, middle / steps));
    if (tried.holds) [best, holds] = [tried, middle];
    else fails = middle;
  }
  return [best];
}

const scaled = (asked: Clearances, factor: number): Clearances => ({
  ...asked,
  homeMm: round6(asked.homeMm * factor),
  wayInMm: round6(asked.wayInMm * factor),
});

function* withClearance(joint: Joint, part: Part, clearance: Clearances): Generator<Progress, Alternative> {
  const plan = yield* planPart({ ...joint, fit: { ...joint.fit, clearance } }, part);
  const judged = yield* judge(plan);
  const { homeMm, wayInMm } = clearance;
  return {
    ...blank,
    what: 'clearance',
    homeMm,
    wayInMm,
    part,
    holds: judged.holds,
    ...amounts([plan.cut]),
    against: hindrances([plan.cut], judged, joint),
  };
}

/** A flat nose in place of the ball, where that leaves fillets. */
function* flatNose(joint: Joint, { part, fillets }: PartPlan): Generator<Progress, Alternative[]> {
  const { cutter } = joint.fit;
  if (cutter?.nose !== 'ball' || fillets.length === 0) return [];
  const plan = yield* planPart({ ...joint, fit: { ...joint.fit, cutter: { ...cutter, nose: 'flat' } } }, part);
  const judged = yield* judge(plan);
  const against = hindrances([plan.cut], judged, joint);
  return [{ ...blank, what: 'cutter', part, holds: judged.holds, ...amounts([plan.cut]), against }];
}

/** One part cut alone, as if all its sections were offered: those that are not stand against it. */
function* onePart(joint: Joint, part: Part): Generator<Progress, Alternative> {
  const offered = joint[part].sections.map((section) => ({ ...section, mayCut: true }));
  const plan = yield* planPart({ ...joint, [part]: { ...joint[part], sections: offered } }, part);
  const judged = yield* judge(plan);
  const against = [...notOffered(joint, plan), ...hindrances([plan.cut], judged, joint)];
  const isOffered = notOffered(joint, plan).length === 0;
  return { ...blank, what: 'other-part', part, holds: judged.holds && isOffered, ...amounts([plan.cut]), against };
}

const notOffered = (joint: Joint, { part, cuts }: PartPlan): string[] =>
  cuts
    .map(({ section }) => section.id)
    .filter((id) => joint[part].sections.some((section) => section.id === id && !section.mayCut))
    .map((id) => `"${id}" is not offered`);

function* bothParts(joint: Joint, planned: PartPlan | null): Generator<Progress, Alternative> {
  const { fixed, moving } = yield* planBoth(joint, planned);
  const judged = yield* judge(moving, [fixed]);
  const cuts = [fixed.cut, moving.cut];
  const isOffered = joint.moving.sections.some(({ mayCut }) => mayCut);
  const against = [...(isOffered ? [] : ['nothing of the moving part is offered']), ...hindrances(cuts, judged, joint)];
  return { ...blank, what: 'both', part: 'both', holds: judged.holds && isOffered, ...amounts(cuts), against };
}
