import { treeOf } from '../../../src/clearance/trees.ts';
import { nearestOnOutline } from '../../../src/geometry/motion/nearest-point.ts';
import { outlinePoints } from '../../../src/geometry/motion/outline-points.ts';
import { union } from '../../../src/geometry/polygons/polygon-engine.ts';
import { drain } from '../../../src/geometry/progress.ts';
import type { DepthRange } from '../../../src/job/casting.ts';
import { home, type Position } from '../../../src/job/path.ts';
import { sharesDepth } from '../../../src/plan/bands/depth-ranges.ts';
import { planCut } from '../../../src/plan/plan-cut.ts';
import { depthsBeside } from '../../../src/trial/bench-place.ts';
import { gapFrom, type Offered } from '../../../src/trial/contact.ts';
import { asTraced } from '../../../src/trial/correction.ts';
import { jointExplained } from '../../../src/trial/next-joint.ts';
import { explain } from '../../../src/trial/solve.ts';
import { surfacePlaceOf, type WrittenPlace } from '../../../src/trial/surface-place.ts';
import type { Go, Stopped, TrialReading } from '../../../src/trial/trial.ts';
import type { Bench } from '../bench.ts';
import type { Trial } from '../offer-up.ts';
import { castingNow, ground, laidOut, type Removal, type Workpiece, workpieceOf } from '../workpiece.ts';
import { goOnByEye, wantedMm } from './by-eye.ts';
import type { Strategy } from './strategy.ts';

/** Limits of what he reads, as stated to the tool. */
const stopErrorRad = (0.3 * Math.PI) / 180;
const stopErrorMm = 0.5;
const clayErrorMm = 0.1;

const mostClays = 8;
const mostRounds = 4;

/**
 * Ground to the first line; offered up, with clay where the parts then stand near one another; the rest as those readings
 * have it. Where it still stops he reads again, and cuts what all readings together have left; when nothing is left to
 * learn he goes on by eye.
 */
export const trialThenRest: Strategy = (bench) => {
  const { traced } = bench;
  const plan = drain(planCut(traced));
  // the first line is to touch: what is said is said of the rest
  const said = { ofGo: 2, holds: plan.holds, clearsAtWorst: false };
  if (!plan.holds) return { ending: 'refused', said };
  let asCut = workpieceOf(traced.fixed);
  let cuts: readonly Removal[] = laidOut(plan, 'first');
  const grind = (): void => {
    bench.grindLaidOut(cuts);
    asCut = ground(asCut, cuts);
  };
  grind();
  const rounds: Round[] = [];
  let isHome = false;
  while (rounds.length < mostRounds) {
    const trial = bench.offerUp();
    isHome = trial.goes && rounds.length > 0;
    if (isHome) break;
    rounds.push(roundOf(bench, asCut, trial, rounds.length + 1));
    const rest = restBy(bench, rounds) ?? (rounds.length === 1 ? laidOut(plan, 'planned') : null);
    if (rest === null) break;
    cuts = withBefore(rest, cuts);
    grind();
  }
  const isDone = isHome && !bench.grindWhereClayIsThin(wantedMm, (readMm) => wantedMm - readMm);
  return { ending: isDone ? 'done' : goOnByEye(bench), said };
};

/** Whatever of the cuts before stands proud of their lines goes with the metal behind it. */
const withBefore = (rest: readonly Removal[], before: readonly Removal[]): Removal[] =>
  rest.map(({ section, depth, room }) => ({
    section,
    depth,
    room: union([
      ...room,
      ...before.flatMap((cut) => (cut.section === section && sharesDepth(cut.depth, depth) ? cut.room : [])),
    ]),
  }));

/** One trial fit: what was read, and of what by the drawings. */
interface Round {
  readonly go: Go;
  readonly offered: Offered;
}

/** Outlines this near to one another are one, mm. */
const sameMm = 0.02;

function roundOf(bench: Bench, asCut: Workpiece, trial: Trial, count: number): Round {
  const { traced } = bench;
  const offered: Offered = {
    joint: { ...traced, fixed: castingNow(asCut) },
    isCutAt: (section, at) =>
      traced.fixed.sections.every(
        ({ id, loops }) => id !== section || nearestOnOutline(treeOf(loops), at).distanceMm > sameMm,
      ),
  };
  const position: Position = trial.goes ? home : { ...trial.stopsAt, turnRad: trial.read.turnRad };
  const readings = claysAt(bench, offered, position, count);
  return {
    offered,
    go: { go: count, cut: { kind: 'first' }, stopped: stoppedOf(bench, trial), readings, faces: [] },
  };
}

/** What is left to cut as all readings have it; null where they settle nothing, or no such plan holds. */
function restBy({ traced }: Bench, rounds: readonly Round[]): readonly Removal[] | null {
  const goes = rounds.map(({ go }) => go);
  const explanation = explain(traced, { file: '', goes }, ({ go }) => (rounds[go - 1] as Round).offered);
  if (explanation.conclusion !== 'explained' && explanation.conclusion !== 'partly') return null;
  const asCut = (rounds.at(-1) as Round).offered.joint;
  const next = drain(planCut(jointExplained(traced, asCut, explanation)));
  return next.holds ? laidOut(next, 'planned') : null;
}

function stoppedOf({ traced }: Bench, trial: Trial): Stopped {
  if (trial.goes) return { kind: 'home' };
  const { leg, stopsAt, read } = trial;
  const way = traced.fit.legs[leg - 1];
  const turns = way?.motion.kind === 'turn' && way.motion.angleRad !== 0;
  const at = turns ? (read.turnRad - way.from.turnRad) / (way.to.turnRad - way.from.turnRad) : 0.5;
  return {
    kind: 'at',
    leg,
    position: { ...stopsAt, turnRad: turns ? read.turnRad : stopsAt.turnRad },
    at,
    error: turns ? stopErrorRad : stopErrorMm,
    per: turns ? 'turn' : 'slide',
  };
}

/** Clay at places spread over what stands near the other part by the drawings. */
function claysAt(bench: Bench, offered: Offered, position: Position, count: number): TrialReading[] {
  const { fixed, moving } = offered.joint;
  const sections = moving.sections.map((one) => ({ ...one, depth: atStandOff(one.depth, position) }));
  const near = fixed.sections.flatMap((section) =>
    depthsBeside(section, { sections }).flatMap((depthMm) =>
      [...outlinePoints(treeOf(section.loops), 4)].flatMap(({ point: at }): WrittenPlace[] => {
        const written = { section: section.id, at, depthMm };
        const place = surfacePlaceOf(offered, written);
        const contact = place && gapFrom(offered, place, position, asTraced);
        const faces = contact && contact.normal.x * place.normal.x + contact.normal.y * place.normal.y > 0.8;
        return contact && faces && contact.gapMm > 1 && contact.gapMm < 15 ? [written] : [];
      }),
    ),
  );
  const step = Math.max(1, near.length / mostClays);
  const chosen = Array.from(
    { length: Math.min(mostClays, near.length) },
    (_, k) => near[Math.floor(k * step)] as WrittenPlace,
  );
  return chosen.flatMap((place, i): TrialReading[] => {
    const thicknessMm = bench.readClay(place, position);
    const id = `c${count}.${i + 1}`;
    return thicknessMm === null ? [] : [{ kind: 'clay', id, ...place, position, errorMm: clayErrorMm, thicknessMm }];
  });
}

const atStandOff = (depth: DepthRange | null, { standOffMm }: Position): DepthRange | null =>
  depth && { fromMm: depth.fromMm + standOffMm, toMm: depth.toMm + standOffMm };
