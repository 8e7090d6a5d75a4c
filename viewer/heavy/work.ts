import { clearanceAt } from '../../src/clearance/at-position.ts';
import type { TravelCurve } from '../../src/clearance/travel-curve.ts';
import type { SeenFrom } from '../../src/drawing/fit/side-profile.ts';
import type { Reading } from '../../src/files/finding.ts';
import type { JobFile } from '../../src/files/job-file.ts';
import { mirrorPoint } from '../../src/geometry/plane/loop.ts';
import { apply, inverse, rigid } from '../../src/geometry/plane/rigid.ts';
import { type Vec, vec } from '../../src/geometry/plane/vec.ts';
import { polygonise } from '../../src/geometry/polygons/polygonise.ts';
import type { Progress } from '../../src/geometry/progress.ts';
import type { Casting } from '../../src/job/casting.ts';
import { home, type Leg, positionAlong } from '../../src/job/path.ts';
import { jobInFile } from '../../src/job/read-job-file.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { carried } from '../../src/joint/move-casting.ts';
import { convexHull } from '../../src/markout/marking-out-hull.ts';
import { type Analysis, analyse } from '../../src/pipeline/analysis.ts';
import { jobFileName } from '../job/job-file-name.ts';
import { figuresOf } from './figures-of.ts';
import { cutPictures, finerSections, picturesOf, roomPicture } from './pictures-of.ts';
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

/** All there is to say of a job, piece by piece as it is known: the check, the way in, the plan; drawn from a side seen before. */
export function* work(
  job: JobFile,
  alternatives: boolean,
  from: SeenFrom | null = null,
): Generator<Progress | Reply, void> {
  const found = analysed(job);
  if (!found.ok) {
    yield { kind: 'findings', findings: found.findings };
    return;
  }
  const { joint, ...stages } = found.value;
  const check = yield* stages.check();
  const drawn = { joint, check, alternatives: [], room: [], ...(from === null ? {} : { seenFrom: from }) };
  const pictures = picturesOf({ ...drawn, plan: null });
  yield { kind: 'checked', joint: withoutOutlines(joint), check, crankInMoving: crankInMoving(joint), pictures };
  const curve = yield* stages.curve();
  if (curve !== null)
    yield { kind: 'way', curve, heights: heightsAlong(joint, curve), forgives: yield* stages.forgives() };
  yield { kind: 'room', room: roomPicture(yield* stages.room()) };
  for (const sections of finerSections(joint)) yield { kind: 'finer', sections };
  const plan = yield* stages.plan();
  const isSettled = plan.holds || plan.reason !== null;
  yield {
    kind: 'planned',
    plan: figuresOf(plan),
    tables: yield* stages.tables(),
    drill: yield* stages.drill(),
    alternatives: alternatives || isSettled ? yield* stages.alternatives() : null,
    cut: cutPictures({ ...drawn, plan }),
  };
  yield { kind: 'way-after', curve: yield* stages.curveAfter() };
}

function crankInMoving({ dowelUp: { turnRad, shift }, moving }: Joint): Vec {
  const at = apply(inverse(rigid(turnRad, shift)), vec(0, 0));
  return moving.mirrored ? mirrorPoint(at) : at;
}

/** What words are made of: its outlines are in the pictures, and too many to be sent twice. */
function withoutOutlines(joint: Joint): Joint {
  const bare = (casting: Casting): Casting => carried(casting, { point: (p) => p, region: () => [] });
  return { ...joint, fixed: bare(joint.fixed), moving: bare(joint.moving), rotating: joint.rotating.map(bare) };
}

function heightsAlong({ fit, moving }: Joint, { pieces }: TravelCurve): Heights[][] {
  const starts = pieces.map(({ leg, fromAt }) => positionAlong(fit.legs[leg - 1] as Leg, fromAt));
  const hulls = moving.sections.map(({ loops }) => convexHull(polygonise(loops, roughMm, 'outside').flat()));
  return [...starts, home].map(({ turnRad, shift }) =>
    hulls.map((hull): Heights => {
      const heights = hull.map((corner) => apply(rigid(turnRad, shift), corner).y);
      return [Math.min(...heights), Math.max(...heights)];
    }),
  );
}

/** How far the hull of an arc may lie outside it, mm: half a pixel where a mm is 25. */
const roughMm = 0.02;

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
