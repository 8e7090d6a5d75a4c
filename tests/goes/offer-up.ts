import { measureOf } from '../../src/clearance/measure.ts';
import { instantOf, nearestOf } from '../../src/clearance/moments.ts';
import { pairRule, pairsOn } from '../../src/clearance/pairs.ts';
import { standingAt, type Way, waysOf } from '../../src/clearance/passings.ts';
import { sidesOf } from '../../src/clearance/solids.ts';
import type { Vec } from '../../src/geometry/plane/vec.ts';
import type { DepthRange } from '../../src/job/casting.ts';
import { type Position, positionAlong } from '../../src/job/path.ts';
import { dowelGaps } from '../../src/joint/dowel-gaps.ts';
import type { Joint } from '../../src/joint/joint.ts';
import type { Random } from '../support/random.ts';
import { normal } from './castings/wander.ts';
import { castingNow, type Workpiece } from './workpiece.ts';

/** Where metal comes nearest to metal, or first touches it. */
export interface NearPlace {
  readonly mm: number;
  readonly section: string;
  readonly at: Vec;
  /** Of the fixed part: over what of it the two stand beside one another then. */
  readonly depth: DepthRange;
}

/** What a builder reads where it stops, by eye and rule. */
export interface Readings {
  readonly turnRad: number;
  readonly standOffMm: number;
  /** Of each dowel from its hole, in the plane of the faces. */
  readonly dowelGapsMm: readonly number[];
}

/** Where it stops, and what touches there. */
export interface Stopped {
  readonly goes: false;
  readonly leg: number;
  readonly stopsAt: Position;
  readonly touches: NearPlace;
  readonly read: Readings;
}

/** One offering up of the true castings. */
export type Trial = { readonly goes: true } | Stopped;

/** Reading errors, standard deviations: limits of ± 0.3° and ± 0.5 mm. */
const turnSigmaRad = ((0.3 / 1.96) * Math.PI) / 180;
const ruleSigmaMm = 0.5 / 1.96;

/** All the way in, which ends at home. */
export const allTheWay = ({ fit }: Joint): Way[] => waysOf(fit.legs);

export const standing = (position: Position): Way[] => [standingAt(position)];

/** Offers the moving part up, truly: home all the way, or to where it stops. */
export function offerUp(joint: Joint, piece: Workpiece, random: Random): Trial {
  const { legs } = joint.fit;
  const met = decisiveOn(joint, piece, waysOf(legs));
  const instant = met && met.mm === 0 ? instantOf(met.decisive, legs) : null;
  const leg = legs[(instant?.leg ?? 0) - 1];
  if (met === null || instant === null || leg === undefined) return { goes: true };
  const read = {
    turnRad: instant.turnRad + normal(random, turnSigmaRad),
    standOffMm: instant.standOffMm + normal(random, ruleSigmaMm),
    dowelGapsMm: dowelGaps(joint, instant.leg, instant.at).map(({ gapMm }) => gapMm + normal(random, ruleSigmaMm)),
  };
  return { goes: false, leg: instant.leg, stopsAt: positionAlong(leg, instant.at), touches: placeOf(met), read };
}

/** Where it comes nearest on some ways, truly; null where nothing shares depth. */
export function nearestOn(joint: Joint, piece: Workpiece, ways: readonly Way[]): NearPlace | null {
  const met = decisiveOn(joint, piece, ways);
  return met && placeOf(met);
}

type Met = NonNullable<ReturnType<typeof decisiveOn>>;

function decisiveOn(joint: Joint, piece: Workpiece, ways: readonly Way[]) {
  const pairs = pairsOn(sidesOf({ fixed: castingNow(piece), moving: joint.moving }), ways, pairRule(joint));
  const { decisive, clearanceMm } = measureOf(pairs, 0);
  const places = decisive && nearestOf(decisive);
  if (decisive === null || places === null) return null;
  const stands = instantOf(decisive, joint.fit.legs) ?? ways[0]?.leg.to;
  return { decisive, mm: clearanceMm ?? 0, at: places.fixedAt, standOffMm: stands?.standOffMm ?? 0 };
}

function placeOf({ decisive, mm, at, standOffMm }: Met): NearPlace {
  const { fixed, moving } = decisive;
  const own = fixed.depth ?? { fromMm: 0, toMm: 0 };
  const passing = moving.depth ?? own;
  const [fromMm, toMm] = [
    Math.max(own.fromMm, -standOffMm - passing.toMm),
    Math.min(own.toMm, -standOffMm - passing.fromMm),
  ];
  // metal that only comes to share depth stands end to end
  const middleMm = (fromMm + toMm) / 2;
  const depth = fromMm <= toMm ? { fromMm, toMm } : { fromMm: middleMm, toMm: middleMm };
  return { mm, section: fixed.name, at, depth };
}
