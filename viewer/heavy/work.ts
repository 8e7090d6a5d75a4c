import { clearanceAt } from '../../src/clearance/at-position.ts';
import { checkJoint } from '../../src/clearance/check.ts';
import { type Solid, solidsOf } from '../../src/clearance/solids.ts';
import { type TravelCurve, travelCurve } from '../../src/clearance/travel-curve.ts';
import { roomToDraw } from '../../src/drawing/fit/draw-input.ts';
import { boxOfRegion } from '../../src/drawing/scene/frame.ts';
import type { Reading } from '../../src/files/finding.ts';
import type { JobFile } from '../../src/files/job-file.ts';
import { moveRegion } from '../../src/geometry/plane/loop.ts';
import { rigid } from '../../src/geometry/plane/rigid.ts';
import type { Progress } from '../../src/geometry/progress.ts';
import { home, type Leg, positionAlong } from '../../src/job/path.ts';
import { jobInFile } from '../../src/job/read-job-file.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { placeJob } from '../../src/joint/place-job.ts';
import { markingOut } from '../../src/markout/marking-out.ts';
import { alternativesTo } from '../../src/plan/alternatives/alternatives.ts';
import { planCut } from '../../src/plan/plan-cut.ts';
import { findingsText } from '../../src/words/finding-text.ts';
import { jobFileName } from '../job/job-file-name.ts';
import { figuresOf } from './figures-of.ts';
import { cutPictures, picturesOf } from './pictures-of.ts';
import type { Heights } from './places-of.ts';
import type { Reply, Stands } from './questions.ts';

/** A job dowelled up, or the findings that keep it from being. */
export function jointOf(job: JobFile): Reading<Joint> {
  const read = jobInFile(job, jobFileName(job));
  return read.ok ? placeJob(read.value) : read;
}

/** All there is to say of a job, piece by piece as it is known: the check, the way in, the plan. */
export function* work(job: JobFile, alternatives: boolean): Generator<Progress | Reply, void> {
  const joint = jointOf(job);
  if (!joint.ok) {
    yield { kind: 'findings', findings: joint.findings, text: findingsText(joint.findings) };
    return;
  }
  const { value } = joint;
  const check = yield* checkJoint(value);
  const room = roomToDraw(value);
  yield {
    kind: 'checked',
    joint: value,
    check,
    pictures: picturesOf({ joint: value, check, plan: null, alternatives: [], room }),
  };
  if (value.fit.legs.length > 0) {
    const curve = yield* travelCurve(value);
    yield { kind: 'way', curve, heights: heightsAlong(value, curve) };
  }
  const plan = yield* planCut(value);
  const isSettled = plan.holds || plan.reason !== null;
  yield {
    kind: 'planned',
    plan: figuresOf(plan),
    tables: markingOut(value, plan),
    alternatives: alternatives || isSettled ? yield* alternativesTo(value, plan) : null,
    cut: cutPictures({ joint: value, check, plan, alternatives: [], room }),
  };
}

function heightsAlong({ fit, moving }: Joint, { pieces }: TravelCurve): Heights[][] {
  const starts = pieces.map(({ leg, fromAt }) => positionAlong(fit.legs[leg - 1] as Leg, fromAt));
  return [...starts, home].map(({ turnRad, shift }) =>
    moving.sections.map(({ loops }): Heights => {
      const { minY, maxY } = boxOfRegion(moveRegion(loops, rigid(turnRad, shift)));
      return [minY, maxY];
    }),
  );
}

interface Stood {
  readonly job: JobFile;
  readonly on: { readonly joint: Joint; readonly fixed: readonly Solid[]; readonly moving: readonly Solid[] } | null;
}

let stood: Stood | null = null;

/** Where a job stands at a place of its way in; null where it does not come to that. */
export function standingAt(job: JobFile, leg: number, at: number): Stands | null {
  if (stood?.job !== job) stood = stoodUp(job);
  const along = stood.on?.joint.fit.legs[leg - 1];
  if (stood.on === null || along === undefined) return null;
  const { joint, fixed, moving } = stood.on;
  return { kind: 'stands', leg, at, standing: clearanceAt(joint, fixed, moving, positionAlong(along, at)) };
}

function stoodUp(job: JobFile): Stood {
  const joint = jointOf(job);
  if (!joint.ok) return { job, on: null };
  const { fixed, moving } = joint.value;
  return { job, on: { joint: joint.value, fixed: solidsOf(fixed), moving: solidsOf(moving) } };
}
