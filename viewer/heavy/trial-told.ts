import { treeOf } from '../../src/clearance/trees.ts';
import type { PositionFile } from '../../src/files/fit-file.ts';
import type { JobFile } from '../../src/files/job-file.ts';
import type { GoFile, TrialFile } from '../../src/files/trial-file.ts';
import { nearestOnOutline } from '../../src/geometry/motion/nearest-point.ts';
import { drain, type Progress } from '../../src/geometry/progress.ts';
import type { Casting, DepthRange } from '../../src/job/casting.ts';
import { mmPer, pointOf, type Units } from '../../src/job/lengths.ts';
import { home, type Position } from '../../src/job/path.ts';
import { positionOf } from '../../src/job/position-of.ts';
import type { Joint } from '../../src/joint/joint.ts';
import type { Analysis } from '../../src/pipeline/analysis.ts';
import { solveTrial } from '../../src/pipeline/trial.ts';
import { depthsBeside } from '../../src/trial/bench-place.ts';
import { gapFrom, movingAtDepth, type Offered, uncut } from '../../src/trial/contact.ts';
import { asTraced } from '../../src/trial/correction.ts';
import { offeredWith } from '../../src/trial/offered-as.ts';
import { whereDowelStands } from '../../src/trial/on-the-way.ts';
import { cutSoFar, readTrialFile } from '../../src/trial/read-trial.ts';
import { surfacePlaceOf } from '../../src/trial/surface-place.ts';
import { conclusionLine, foretoldTexts, trialText } from '../../src/words/trial-text.ts';
import { amended } from '../job/part-edits.ts';
import { type Carried, isSameStand, type Stand, type Stopped } from '../job/trial-edits.ts';
import type { PlaceFound, PointedAt, TrialTold } from './questions.ts';
import { analysed } from './work.ts';

/** Where a job stops before anything is cut, in words; null where the job does not come to that. */
export function foretoldIn(job: JobFile, units: Units | null): string[] | null {
  const found = analysed(job);
  if (!found.ok) return null;
  const { joint, foretold } = found.value;
  return foretoldTexts(readIn(joint, units), drain(foretold()));
}

/** What the trial fits of a job say together; null where the job does not come to that. */
export function* trialTold(job: JobFile, trial: TrialFile, units: Units | null): Generator<Progress, TrialTold | null> {
  const found = analysed(job);
  if (!found.ok) return null;
  const read = readTrialFile('', JSON.stringify(trial));
  const solved = read.ok ? yield* solveTrial(found.value, '', read.value) : read;
  if (!solved.ok) return { kind: 'refused', findings: solved.findings };
  const { value } = solved;
  const joint = readIn(found.value.joint, units);
  const result = { ...value, next: value.next && { ...value.next, joint: readIn(value.next.joint, units) } };
  return {
    kind: 'told',
    conclusion: result.explanation.conclusion,
    line: conclusionLine(joint, result),
    text: trialText(joint, result),
    measureNext: result.measureNext,
    disagreeing: result.explanation.readings
      .filter(({ disagrees }) => disagrees)
      .map(({ id, expectedMm }) => ({ id, expectedMm })),
  };
}

const readIn = (joint: Joint, units: Units | null): Joint =>
  units === null ? joint : { ...joint, fit: { ...joint.fit, units } };

/** The place under the hand as it is at a go: on the outlines that are left by then, where the moving part stands by then. */
export function* placeFound(
  job: JobFile,
  go: GoFile | null,
  pointed: PointedAt,
): Generator<Progress, PlaceFound | null> {
  const found = analysed(job);
  if (!found.ok) return null;
  const { joint } = found.value;
  const mm = mmPer(joint.fit.units);
  const stand = standOf(joint, go?.stopped);
  const position = stand === 'home' ? home : positionOf(stand, mm);
  const offered = yield* offeredAt(found.value, go);
  const moving = standingOff(joint.moving, position.standOffMm);
  const near = offered.joint.fixed.sections
    .filter(({ id }) => pointed.on === null || id === pointed.on.section)
    .map((section) => {
      const { distanceMm, point } = nearestOnOutline(treeOf(section.loops), pointed.at);
      const depths = pointed.on?.depthMm == null ? depthsBeside(section, moving) : [pointed.on.depthMm];
      return { section: section.id, at: point, distanceMm, depths, thin: isThin(section.depth) };
    })
    .filter(({ distanceMm }) => distanceMm <= pointed.withinMm)
    .sort((a, b) => a.distanceMm - b.distanceMm);
  const beside = near.flatMap(({ depths, ...one }) =>
    depths.flatMap((depthMm) => {
      const surface = surfacePlaceOf(offered, { ...one, depthMm });
      const contact = surface && gapFrom(offered, surface, position, asTraced);
      return contact === null ? [] : [{ ...one, depthMm, gapMm: contact.gapMm }];
    }),
  );
  const leastMm = Math.min(...beside.map(({ distanceMm }) => distanceMm));
  // outlines that lie over one another are all under the thumb: what counts is what the moving part is nearest to
  const [place] = beside
    .filter(({ distanceMm }) => distanceMm < leastMm + alikeMm)
    .sort((a, b) => Number(a.thin) - Number(b.thin) || a.gapMm - b.gapMm);
  if (place === undefined) return near[0] === undefined ? null : { kind: 'nothing-beside', section: near[0].section };
  const { section, at, depthMm } = place;
  const where = stand === 'home' ? {} : { position: stand };
  return {
    kind: 'place',
    place: { section, at: [inFile(at.x / mm), inFile(at.y / mm)], depth: inFile(depthMm / mm), ...where },
  };
}

const alikeMm = 1;

/** Layers this thin are the steps of a fillet that a cutter leaves, and no place for clay, mm. */
const thinMm = 1;

const isThin = (depth: DepthRange | null): boolean => depth !== null && depth.toMm - depth.fromMm < thinMm;

/** Finer than anyone reads, and no digits that only arithmetic brings. */
const inFile = (value: number): number => Number(value.toFixed(4));

/** A casting as far off as it stands, its depths told from where its face is at home. */
const standingOff = ({ sections }: Casting, standOffMm: number): Pick<Casting, 'sections'> => ({
  sections: sections.map(({ depth, ...section }) => ({
    ...section,
    depth: depth && { fromMm: depth.fromMm + standOffMm, toMm: depth.toMm + standOffMm },
  })),
});

function* offeredAt({ joint, plan, tables }: Analysis, go: GoFile | null): Generator<Progress, Offered> {
  const { cut = 'none' } = go ?? {};
  // nothing has to be planned to know the castings as they were traced
  if (cut === 'none') return uncut(joint);
  return offeredWith(joint, yield* plan(), yield* tables(), cutSoFar(cut, mmPer(joint.fit.units)));
}

/** How the readings of a go come along when it stopped elsewhere; one keeps its depth where the moving part stands beside it still. */
export function* carriedIn(job: JobFile, go: GoFile, stopped: Stopped | null): Generator<Progress, Carried | null> {
  const found = analysed(job);
  if (!found.ok) return null;
  const { joint } = found.value;
  const mm = mmPer(joint.fit.units);
  const [was, is] = [standOf(joint, go.stopped), standOf(joint, stopped ?? undefined)];
  const { standOffMm } = is === 'home' ? home : positionOf(is, mm);
  const then = amended(go, { stopped: stopped ?? undefined });
  const depths: Record<string, number> = {};
  for (const { id, section, at, depth, position = 'home' } of go.readings ?? []) {
    if (!isSameStand(position, was) || movingAtDepth(joint, depth * mm, standOffMm).length > 0) continue;
    const on = { section, depthMm: null };
    const place = yield* placeFound(job, then, { at: pointOf(at, mm), withinMm: Number.POSITIVE_INFINITY, on });
    if (place?.kind === 'place') depths[id] = place.place.depth;
  }
  return { was, is, depths };
}

/** Where the moving part stands when it has stopped; home where it never can stand so, which the answer says. */
function standOf({ fit }: Joint, stopped: Stopped | undefined): Stand {
  if (stopped === undefined || stopped === 'home') return 'home';
  if (!('dowel' in stopped)) {
    const { error: _, ...position } = stopped;
    return position;
  }
  const mm = mmPer(fit.units);
  const { dowel, fromHole, standOff } = stopped;
  const pair = fit.dowels.find(({ fixed }) => fixed.id === dowel);
  const on = pair && whereDowelStands(fit.legs, pair, fromHole * mm, standOff === undefined ? null : standOff * mm);
  return on ? written(on.position, mm) : 'home';
}

function written({ standOffMm, turnRad, shift }: Position, mm: number): PositionFile {
  const at = { standOff: inFile(standOffMm / mm), turn: inFile((turnRad * 180) / Math.PI) };
  return shift.x === 0 && shift.y === 0 ? at : { ...at, shift: [inFile(shift.x / mm), inFile(shift.y / mm)] };
}
