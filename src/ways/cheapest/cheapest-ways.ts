import type { Progress } from '../../geometry/progress.ts';
import type { Joint } from '../../joint/joint.ts';
import { dowelsProudMm } from '../../joint/path-notices.ts';
import { sumKnown } from '../../plan/bands/amounts.ts';
import type { Hindrance } from '../../plan/hindrances.ts';
import { planCut } from '../../plan/plan-cut.ts';
import type { PlanResult } from '../../plan/plan-result.ts';
import type { Strip } from '../strips.ts';
import type { TurnRange } from '../turns.ts';
import { alongLegs, type WayPoint } from '../way-along.ts';
import { type Candidate, eachOnce, ofFit, onAxis } from './candidates.ts';
import { leastMetal } from './least-metal.ts';
import { metalModel, type Target } from './metal-model.ts';
import { metalMm3, passingMm3 } from './way-cost.ts';

/** What a way in takes off, as shaped for the cutter. */
export interface WayCut {
  /** Null where a section has no depth, the mass also without a material. */
  readonly volumeMm3: number | null;
  readonly massG: number | null;
  /** The least that is left beside holes and hollows, mm; null where the cut comes near none. */
  readonly leastWallMm: number | null;
  readonly holds: boolean;
  /** What stands against it; empty where it holds. */
  readonly against: readonly Hindrance[];
}

export interface CutWay extends WayCut, Pick<Candidate, 'of' | 'also' | 'way'> {}

export interface CheapestWays {
  /** Those that hold first, and of them the least metal; what takes another turn only where that saves something. */
  readonly ways: readonly CutWay[];
  /**
   * No way that goes inward all the time with three turns or fewer, and spares what is not offered, takes off less, mm³;
   * null where none spares that.
   */
  readonly lowerBoundMm3: number | null;
}

const mostTurns = 3;

/** Another turn is worth its trouble where it saves a hundredth. */
export const worthATurn = 0.99;

/** More stand-offs to turn at are not looked into; the others lie beside them. */
const mostStandOffs = 96;

/**
 * The ways of up to three turns that take off the least metal, found by the clearance alone and then planned for the
 * cutter, beside the way that the fit asks for and straight in.
 */
export function* cheapestWays(
  joint: Joint,
  strips: readonly Strip[],
  asked: TurnRange,
): Generator<Progress, CheapestWays> {
  const part = joint.fit.cut === 'moving' ? 'moving' : 'fixed';
  yield { step: 'the metal in the way', done: 0, of: 1 };
  const targets = metalModel(joint, part);
  const farMm = strips.at(-1)?.toMm ?? 0;
  const standOffsMm = turningStandOffs(joint, targets, farMm);
  const straight: WayPoint[] = [
    { turnRad: 0, standOffMm: farMm },
    { turnRad: 0, standOffMm: 0 },
  ];
  const found = [straight];
  let lowerBoundMm3 = Number.POSITIVE_INFINITY;
  const straightWeight = metalMm3(targets, { turns: [], standOffs: [] }, 'middle', true);
  let leastWeight = straightWeight;
  for (let count = 1; count <= mostTurns && standOffsMm.length > 0; count++) {
    const { best, boundMm3 } = yield* leastMetal(targets, asked, standOffsMm, count, farMm);
    lowerBoundMm3 = Math.min(lowerBoundMm3, boundMm3);
    if (best.weight < worthATurn * leastWeight) found.push([...best.way]);
    leastWeight = Math.min(leastWeight, best.weight);
  }
  for (const side of standOffsMm.length === 0 ? [] : sidesOf(asked)) {
    const { best } = yield* leastMetal(targets, side, standOffsMm, 1, farMm);
    if (best.weight < worthATurn * straightWeight) found.push([...best.way]);
  }
  const clearMm = strips.at(-1)?.fromMm ?? 0;
  const candidates = eachOnce([
    ...ofFit(joint, clearMm),
    ...found.map((way) => onAxis(way === straight ? 'straight-in' : 'found', way, clearMm)),
  ]);
  const ways: CutWay[] = [];
  for (const candidate of candidates) {
    const { of, also, way, legs } = candidate;
    ways.push({ of, also, way, ...wayCut(yield* planCut(alongLegs(joint, legs))) });
  }
  return { ways: ways.toSorted(byMetal), lowerBoundMm3: boundOf(lowerBoundMm3, targets, asked) };
}

/** A bound beyond all that is offered is of ways that go through what is not, which weighs more. */
function boundOf(foundMm3: number, targets: readonly Target[], asked: TurnRange): number | null {
  const boundMm3 = Math.max(Number.isFinite(foundMm3) ? foundMm3 : 0, passingMm3(targets, asked));
  const offeredMm3 = targets.reduce((sum, { mayCut, volumeMm3 }) => sum + (mayCut ? volumeMm3 : 0), 0);
  return boundMm3 > offeredMm3 ? null : boundMm3;
}

/** Turned to either hand alone, since one of them may be barred by what stands about the castings. */
const sidesOf = ({ fromRad, toRad }: TurnRange): TurnRange[] =>
  fromRad < 0 && toRad > 0
    ? [
        { fromRad, toRad: 0 },
        { fromRad: 0, toRad },
      ]
    : [];

export function wayCut({ cuts, holds, hindrances }: PlanResult): WayCut {
  const walls = cuts.flatMap((cut) => cut.walls.map(({ wallMm }) => wallMm));
  return {
    volumeMm3: sumKnown(cuts.map(({ volumeMm3 }) => volumeMm3)),
    massG: sumKnown(cuts.map(({ massG }) => massG)),
    leastWallMm: walls.length === 0 ? null : Math.min(...walls),
    holds,
    against: hindrances,
  };
}

/** Those that hold first, and of them the least metal. */
export const byMetal = (a: WayCut, b: WayCut): number => rank(a) - rank(b) || (a.volumeMm3 ?? 0) - (b.volumeMm3 ?? 0);

/** What no cut of what is offered cures comes last, whatever little it takes. */
const rank = ({ holds, against }: WayCut): number =>
  holds ? 0 : against.some(({ code }) => code === 'uncured') ? 2 : 1;

/**
 * Where an end of moving metal stands level with one of the fixed part's, off the dowels: between two of these what a
 * turn takes off grows or shrinks evenly, so that nowhere between is it less.
 */
function turningStandOffs(joint: Joint, targets: readonly Target[], farMm: number): number[] {
  const proudMm = dowelsProudMm(joint.fit.dowels);
  const level = targets.flatMap(({ depth, tools }) =>
    tools.flatMap((tool) =>
      [depth.fromMm, depth.toMm].flatMap((mm) => [-mm - tool.depth.fromMm, -mm - tool.depth.toMm]),
    ),
  );
  const all = [...new Set([proudMm, ...level])].filter((mm) => mm >= proudMm && mm < farMm).sort((a, b) => a - b);
  const every = Math.ceil(all.length / mostStandOffs);
  return all.filter((_, i) => i % every === 0);
}
