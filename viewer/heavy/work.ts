import { clearanceAt } from '../../src/clearance/at-position.ts';
import type { TravelCurve } from '../../src/clearance/travel-curve.ts';
import type { Reading } from '../../src/files/finding.ts';
import type { JobFile } from '../../src/files/job-file.ts';
import { moveRegion } from '../../src/geometry/plane/loop.ts';
import { boxOfRegion } from '../../src/geometry/plane/region-box.ts';
import { rigid } from '../../src/geometry/plane/rigid.ts';
import type { Progress } from '../../src/geometry/progress.ts';
import { home, type Leg, positionAlong } from '../../src/job/path.ts';
import { jobInFile } from '../../src/job/read-job-file.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { type Analysis, analyse } from '../../src/pipeline/analysis.ts';
import { findingsText } from '../../src/words/finding-text.ts';
import { jobFileName } from '../job/job-file-name.ts';
import { figuresOf } from './figures-of.ts';
import { cutPictures, picturesOf } from './pictures-of.ts';
import type { Heights } from './places-of.ts';
import type { Reply, StandReply } from './questions.ts';

const known = new WeakMap<JobFile, Reading<Analysis>>();

/** All there is to find of a job, or the findings that keep it from being found; once for as long as the job is the same. */
export function analysed(job: JobFile): Reading<Analysis> {
  const before = known.get(job);
  if (before !== undefined) return before;
  const read = jobInFile(job, jobFileName(job));
  const found = read.ok ? analyse(read.value) : read;
  known.set(job, found);
  return found;
}

/** All there is to say of a job, piece by piece as it is known: the check, the way in, the plan. */
export function* work(job: JobFile, alternatives: boolean): Generator<Progress | Reply, void> {
  const found = analysed(job);
  if (!found.ok) {
    yield { kind: 'findings', findings: found.findings, text: findingsText(found.findings) };
    return;
  }
  const { joint, ...stages } = found.value;
  const check = yield* stages.check();
  const room = yield* stages.room();
  yield {
    kind: 'checked',
    joint,
    check,
    pictures: picturesOf({ joint, check, plan: null, alternatives: [], room }),
  };
  const curve = yield* stages.curve();
  if (curve !== null) yield { kind: 'way', curve, heights: heightsAlong(joint, curve) };
  const plan = yield* stages.plan();
  const isSettled = plan.holds || plan.reason !== null;
  yield {
    kind: 'planned',
    plan: figuresOf(plan),
    tables: yield* stages.tables(),
    alternatives: alternatives || isSettled ? yield* stages.alternatives() : null,
    cut: cutPictures({ joint, check, plan, alternatives: [], room }),
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

/** Where a job stands at a place of its way in; null where it does not come to that. */
export function standingAt(job: JobFile, leg: number, at: number): StandReply | null {
  const found = analysed(job);
  if (!found.ok) return null;
  const { joint } = found.value;
  const along = joint.fit.legs[leg - 1];
  return along === undefined
    ? null
    : { kind: 'stands', leg, at, standing: clearanceAt(joint, positionAlong(along, at)) };
}
