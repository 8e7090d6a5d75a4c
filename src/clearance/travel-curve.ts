import { distance, length, vec } from '../geometry/plane/vec.ts';
import type { Progress } from '../geometry/progress.ts';
import type { Leg } from '../job/path.ts';
import type { Joint } from '../joint/joint.ts';
import type { State } from './check-result.ts';
import { measureOf } from './measure.ts';
import { pairRule, pairsOn } from './pairs.ts';
import { type CountedWay, type Sides, waysOf } from './passings.ts';
import type { Fractions } from './shared-depth.ts';
import { type Solid, sidesOf } from './solids.ts';

/** The least clearance over one piece of a leg: what is proved for every instant of it, not what some instant has. */
export interface TravelPiece {
  /** Counts from 1. */
  readonly leg: number;
  /** The piece of the leg, as fractions of its way. */
  readonly fromAt: number;
  readonly toAt: number;
  readonly state: State;
  /** In mm, 0 where it touches or fouls; null where no pair shares depth. */
  readonly clearanceMm: number | null;
  /** The tracing error of the nearest pair, mm. */
  readonly errorMm: number | null;
  /** The least over pairs of what is left with every error against one, mm. */
  readonly worstClearanceMm: number | null;
}

/** The least clearance along the whole way in, piece by piece in the order it is gone. */
export interface TravelCurve {
  readonly askedMm: number;
  readonly pieces: readonly TravelPiece[];
}

const leastPiecesOfLeg = 16;

/**
 * The clearance along the way in as a lower step curve: each step is the proved least over its piece of the way, so the
 * curve is nowhere too high, and its lowest step is the clearance of the whole. About `pieces` steps are shared out by
 * how far the outermost metal travels on each leg, 16 a leg at least.
 */
export function* travelCurve(joint: Joint, pieces = 120): Generator<Progress, TravelCurve> {
  const { fit } = joint;
  const solids = sidesOf(joint);
  const counts = piecesOf(joint, pieces);
  const of = counts.reduce((sum, count) => sum + count, 0);
  const curve: TravelPiece[] = [];
  for (const [i, way] of waysOf(fit.legs).entries()) {
    const count = counts[i] ?? leastPiecesOfLeg;
    for (let k = 0; k < count; k++) {
      yield { step: `clearance along leg ${i + 1}`, done: curve.length, of };
      curve.push(pieceOf(joint, solids, way, { from: k / count, to: (k + 1) / count }));
    }
  }
  return { askedMm: fit.clearance.wayInMm, pieces: curve };
}

function pieceOf(joint: Joint, solids: Sides<Solid>, way: CountedWay, piece: Fractions): TravelPiece {
  const pairs = pairsOn(solids, [way], pairRule(joint), piece);
  const { state, clearanceMm, errorMm, worstClearanceMm } = measureOf(pairs, joint.fit.clearance.wayInMm);
  return { leg: way.count, fromAt: piece.from, toAt: piece.to, state, clearanceMm, errorMm, worstClearanceMm };
}

/** How many pieces each leg is parted into. */
function piecesOf({ fit, moving }: Joint, pieces: number): number[] {
  const travels = fit.legs.map((leg) => travelMm(leg, reachMm(moving)));
  const all = travels.reduce((sum, mm) => sum + mm, 0);
  return travels.map((mm) => Math.max(leastPiecesOfLeg, all === 0 ? 0 : Math.round((pieces * mm) / all)));
}

/** How far the outermost metal goes on a leg, mm: in the plane, and along the crank. */
function travelMm({ from, to, motion }: Leg, reach: number): number {
  const rise = to.standOffMm - from.standOffMm;
  if (motion.kind === 'slide') return Math.hypot(rise, length(motion.by));
  return Math.hypot(rise, motion.angleRad * (reach + distance(motion.pole, from.shift)));
}

/** The farthest vertex of a part from the axis, mm: near enough for sharing out pieces. */
function reachMm({ sections }: Joint['moving']): number {
  const loops = sections.flatMap((section) => section.loops);
  const reaches = loops.map((loop) =>
    loop.kind === 'circle'
      ? length(loop.centre) + loop.radius
      : loop.vertices.reduce((most, { x, y }) => Math.max(most, length(vec(x, y))), 0),
  );
  return reaches.reduce((most, mm) => Math.max(most, mm), 0);
}
