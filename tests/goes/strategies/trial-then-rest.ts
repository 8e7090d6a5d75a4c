import { treeOf } from '../../../src/clearance/trees.ts';
import { nearestOnOutline } from '../../../src/geometry/motion/nearest-point.ts';
import { outlinePoints } from '../../../src/geometry/motion/outline-points.ts';
import { union } from '../../../src/geometry/polygons/polygon-engine.ts';
import { drain } from '../../../src/geometry/progress.ts';
import type { DepthRange } from '../../../src/job/casting.ts';
import { home, type Position } from '../../../src/job/path.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import { sharesDepth } from '../../../src/plan/bands/depth-ranges.ts';
import { planCut } from '../../../src/plan/plan-cut.ts';
import { depthsBeside } from '../../../src/trial/bench-place.ts';
import { gapFrom, type Offered } from '../../../src/trial/contact.ts';
import { asTraced } from '../../../src/trial/correction.ts';
import { jointExplained } from '../../../src/trial/next-joint.ts';
import { type Explanation, explain } from '../../../src/trial/solve.ts';
import { surfacePlaceOf, type WrittenPlace } from '../../../src/trial/surface-place.ts';
import type { Go, Stopped, TrialReading } from '../../../src/trial/trial.ts';
import { type Bench, downToLine } from '../bench.ts';
import type { Trial } from '../offer-up.ts';
import { castingNow, ground, laidOut, type Removal, workpieceOf } from '../workpiece.ts';
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
 * have it. Where it still stops, or clay shows too little, he reads again, and cuts what all readings together have left;
 * when nothing is left to learn he goes on by eye. A section that they say was traced worse than stated he traces again, once, and plans anew.
 */
export const trialThenRest: Strategy = (bench) => {
  const plan = drain(planCut(bench.traced));
  // the first line is to touch: what is said is said of the rest
  const said = { ofGo: 2, holds: plan.holds, clearsAtWorst: false };
  if (!plan.holds) return { ending: 'refused', said };
  let done: readonly Removal[] = [];
  let cuts: readonly Removal[] = laidOut(plan, 'first');
  const grind = (): void => {
    const { fixed } = bench.traced;
    bench.grindLaidOut(cuts);
    done = [...done, ...cuts.map((cut) => ({ ...cut, room: downToLine(fixed, cut.section, cut.room) }))];
  };
  grind();
  const rounds: Round[] = [];
  const tracedTwice = new Set<string>();
  while (rounds.length < mostRounds) {
    const trial = bench.offerUp();
    if (trial.goes && rounds.length > 0 && !bench.isClayThin(wantedMm)) return { ending: 'done', said };
    rounds.push(roundOf(bench, done, trial, rounds.length + 1));
    const rest = restBy(bench, rounds, tracedTwice) ?? (rounds.length === 1 ? laidOut(plan, 'planned') : null);
    if (rest === null) break;
    cuts = withBefore(rest, cuts);
    grind();
  }
  return { ending: goOnByEye(bench), said };
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
  /** What had been cut when he offered up; the outlines it was cut from may be traced again. */
  readonly done: readonly Removal[];
}

/** Outlines this near to one another are one, mm. */
const sameMm = 0.02;

function offeredOf(traced: Joint, done: readonly Removal[]): Offered {
  return {
    joint: { ...traced, fixed: castingNow(ground(workpieceOf(traced.fixed), done)) },
    isCutAt: (section, at) =>
      traced.fixed.sections.every(
        ({ id, loops }) => id !== section || nearestOnOutline(treeOf(loops), at).distanceMm > sameMm,
      ),
  };
}

function roundOf(bench: Bench, done: readonly Removal[], trial: Trial, count: number): Round {
  const offered = offeredOf(bench.traced, done);
  const position: Position = trial.goes ? home : { ...trial.stopsAt, turnRad: trial.read.turnRad };
  const readings = claysAt(bench, offered, position, count);
  return {
    done,
    go: { go: count, cut: { kind: 'first' }, stopped: stoppedOf(bench, trial), readings, faces: [] },
  };
}

/** What is left to cut as all readings have it; null where they settle nothing, or no such plan holds. */
function restBy(bench: Bench, rounds: readonly Round[], tracedTwice: Set<string>): readonly Removal[] | null {
  let explanation = explained(bench.traced, rounds);
  let isRetraced = false;
  for (;;) {
    const named = explanation.sections.filter(
      ({ part, section, tracedWrong }) => tracedWrong && !tracedTwice.has(`${part} ${section}`),
    );
    if (explanation.conclusion !== 'traced-wrong' || named.length === 0) break;
    for (const { part, section } of named) {
      bench.retrace(part, section);
      tracedTwice.add(`${part} ${section}`);
    }
    isRetraced = true;
    explanation = explained(bench.traced, rounds);
  }
  const asCut = offeredOf(bench.traced, (rounds.at(-1) as Round).done).joint;
  const isExplained = explanation.conclusion === 'explained' || explanation.conclusion === 'partly';
  if (!isExplained && !isRetraced) return null;
  const next = drain(planCut(isExplained ? jointExplained(bench.traced, asCut, explanation) : asCut));
  return next.holds ? laidOut(next, 'planned') : null;
}

function explained(traced: Joint, rounds: readonly Round[]): Explanation {
  const offered = rounds.map(({ done }) => offeredOf(traced, done));
  const goes = rounds.map(({ go }) => go);
  return explain(traced, { file: '', goes }, ({ go }) => offered[go - 1] as Offered);
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
