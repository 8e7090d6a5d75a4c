import { checkJoint } from '../clearance/check.ts';
import type { CheckResult } from '../clearance/check-result.ts';
import { type Foretold, foretold } from '../clearance/foretold.ts';
import { roomToDraw } from '../clearance/room.ts';
import { type TravelCurve, travelCurve } from '../clearance/travel-curve.ts';
import { type Forgiven, forgivenBy } from '../clearance/wander/forgiven.ts';
import { type DrillResult, drillResult } from '../drill/drill-result.ts';
import { usualDrillRules } from '../drill/hole-metal.ts';
import type { Reading } from '../files/finding.ts';
import type { Region } from '../geometry/plane/loop.ts';
import type { Job } from '../job/job.ts';
import type { Joint } from '../joint/joint.ts';
import { placeJob } from '../joint/place-job.ts';
import { markingOut } from '../markout/marking-out.ts';
import type { MarkingTable } from '../markout/marking-row.ts';
import type { Alternative } from '../plan/alternatives/alternative.ts';
import { alternativesTo } from '../plan/alternatives/alternatives.ts';
import type { Choices } from '../plan/choices/choices.ts';
import { findChoices } from '../plan/choices/find-choices.ts';
import { planCut } from '../plan/plan-cut.ts';
import type { PlanResult } from '../plan/plan-result.ts';
import { once, type Stage } from './stage.ts';

/** Everything there is to find of a job, stage by stage; each is worked out when it is first asked for, and once. */
export interface Analysis {
  readonly joint: Joint;
  readonly check: Stage<CheckResult>;
  /** The least clearance all along the way in; null where only home is asked. */
  readonly curve: Stage<TravelCurve | null>;
  /** What the moving part swings through on its way in, of the sections that can meet the fixed part; for drawing. */
  readonly room: Stage<Region>;
  /** Where it will stop before anything is cut; nowhere where only home is asked. */
  readonly foretold: Stage<Foretold>;
  /** How far one may stray from the way in as it stands; null where it touches, nothing is judged, or only home is asked. */
  readonly forgives: Stage<Forgiven | null>;
  readonly plan: Stage<PlanResult>;
  /** The same clearance with the plan's cut made, fillets and all; null where only home is asked, or nothing is cut. */
  readonly curveAfter: Stage<TravelCurve | null>;
  /** What else would give where the plan does not hold; many plans. */
  readonly alternatives: Stage<readonly Alternative[]>;
  /** What cutting either part or both would take, and what each of some cutters; many plans. */
  readonly choices: Stage<Choices>;
  /** Whether there is metal for planned holes as the plan leaves it, and where bolt holes of one part come on the other. */
  readonly drill: Stage<DrillResult>;
  /** The marking-out table of each part that is cut. */
  readonly tables: Stage<readonly MarkingTable[]>;
}

/**
 * A job dowelled up, and all that follows from it; findings where two dowel pairs stand on one place. Results are at full
 * precision, mm and radians; `checkAnswer` and `grindAnswer` make their JSON, `checkText` and `grindText` their words.
 *
 * @example A block with a rib, and a housing whose lip stands 5 mm outside it.
 * ```ts
 * import { analyse, checkAnswer, drain, readJob } from 'fettle';
 *
 * const box = (x: number, y: number) => [[x, y], [x + 20, y], [x + 20, y + 8], [x, y + 8]];
 * const part = { format: 'fettle-part/1', name: 'A part', units: 'mm' };
 * const files: Record<string, object> = {
 *   'a.fit.json': { format: 'fettle-fit/1', units: 'mm', fixed: 'block', moving: 'housing', axis: [0, 0], clearance: 2 },
 *   block: { ...part, viewedFrom: 'face', sections: [{ id: 'rib', depth: [0, 40], loops: [box(140, -4)] }] },
 *   housing: { ...part, viewedFrom: 'back', sections: [{ id: 'lip', depth: [-40, 0], loops: [box(165, -4)] }] },
 * };
 *
 * const read = readJob('a.fit.json', (path) => ({ ok: true, value: JSON.stringify(files[path]) }));
 * const found = read.ok ? analyse(read.value) : read;
 * if (!found.ok) throw new Error(JSON.stringify(found.findings));
 * const { joint, check } = found.value;
 * const { verdict, home } = checkAnswer(joint, drain(check()));
 * console.log(verdict, home.state, home.clearanceMm); // goes clear 5
 * ```
 */
export function analyse(job: Job): Reading<Analysis> {
  const joint = placeJob(job);
  return joint.ok ? { ok: true, value: analysisOf(joint.value) } : joint;
}

/** All that follows from a job dowelled up. */
export function analysisOf(joint: Joint): Analysis {
  const check = once(() => checkJoint(joint));
  const plan = once(() => planCut(joint, check));
  return {
    joint,
    check,
    curve: once(function* () {
      return joint.fit.legs.length === 0 ? null : yield* travelCurve(joint);
    }),
    room: once(function* () {
      yield { step: 'room', done: 0, of: 1 };
      return roomToDraw(joint);
    }),
    foretold: once(function* () {
      yield { step: 'where it will stop', done: 0, of: 1 };
      return foretold(joint);
    }),
    forgives: once(function* () {
      const { reason, wayIn } = yield* check();
      yield { step: 'how far one may stray', done: 0, of: 1 };
      return reason === null && wayIn?.state === 'clear' ? forgivenBy(joint) : null;
    }),
    plan,
    curveAfter: once(function* () {
      const { cuts, judged } = yield* plan();
      const isCut = cuts.some(({ sections }) => sections.length > 0);
      return joint.fit.legs.length === 0 || !isCut ? null : yield* travelCurve(judged);
    }),
    alternatives: once(function* () {
      return yield* alternativesTo(joint, yield* plan());
    }),
    choices: once(function* () {
      return yield* findChoices(joint, yield* plan(), check);
    }),
    drill: once(function* () {
      const made = yield* plan();
      yield { step: 'holes to drill', done: 0, of: 1 };
      return drillResult(joint, made, usualDrillRules);
    }),
    tables: once(function* () {
      const made = yield* plan();
      yield { step: 'marking out', done: 0, of: 1 };
      return markingOut(joint, made);
    }),
  };
}
