import { round6 } from '../../geometry/plane/rounding.ts';
import type { Progress } from '../../geometry/progress.ts';
import type { Part } from '../../job/part.ts';
import { legsThrough, type Position, positionsOf } from '../../job/path.ts';
import type { Joint } from '../../joint/joint.ts';
import { neededMm2 } from '../bands/needed-area.ts';
import { judge } from '../judge-plan.ts';
import { planPart } from '../plan-part.ts';
import type { Alternative, Change } from './alternative.ts';

const turnsDeg = [1, -1, 2, -2, 3, -3, 5, -5, 8, -8, 10, -10] as const;
const standOffsMm = [2, 5, 10] as const;

/** A way in that saves less than this is no better, mm². */
const leastGainMm2 = 1;

interface WayIn {
  readonly change: Change;
  readonly positions: readonly Position[];
}

/**
 * The ways in that need less metal off than the one asked for, or none: the turned positions turned a little more or
 * less, the swing made at a larger stand-off; one change at a time, the least metal first. Areas and masses are what
 * the clearance alone would take, whatever the cutter, and with the edge as it falls.
 */
export function* otherWaysIn(joint: Joint): Generator<Progress, Alternative[]> {
  const { legs } = joint.fit;
  if (legs.length === 0) return [];
  const part = joint.fit.cut === 'moving' ? 'moving' : 'fixed';
  const uncut = { ...joint, fit: { ...joint.fit, cutter: null, straight: false } };
  const nowMm2 = yield* neededMm2(uncut, part);
  const found: Alternative[] = [];
  const ways = waysOf(positionsOf(legs), part);
  for (const [done, way] of ways.entries()) {
    yield { step: 'other ways in', done, of: ways.length };
    const changed = legsThrough(way.positions);
    if (changed === null) continue;
    const along = { ...uncut, fit: { ...uncut.fit, legs: changed } };
    const needMm2 = yield* neededMm2(along, part);
    if (needMm2 > nowMm2 - leastGainMm2) continue;
    const plan = yield* planPart(along, part);
    const { holds, hindrances } = yield* judge(plan, joint.fit.clearance);
    found.push({ change: way.change, holds, areaMm2: needMm2, massG: plan.cut.massG, against: hindrances });
  }
  // ways whose areas differ by no more than rounding keep their order
  return found.sort((a, b) => round6(a.areaMm2) - round6(b.areaMm2));
}

function waysOf(positions: readonly Position[], part: Part): WayIn[] {
  const isTurned = positions.map(({ turnRad }) => turnRad !== 0);
  if (!isTurned.includes(true)) return [];
  const swings = positions.map(
    ({ turnRad, standOffMm }, i) =>
      standOffMm > 0 && [positions[i - 1], positions[i + 1]].some((next) => next && next.turnRad !== turnRad),
  );
  return [
    ...turnsDeg.map((deg): WayIn => {
      const byRad = (deg * Math.PI) / 180;
      return {
        change: { what: 'turn', part, turnRad: byRad },
        positions: positions.map((p, i) => (isTurned[i] ? { ...p, turnRad: turned(p.turnRad, byRad) } : p)),
      };
    }),
    ...standOffsMm.map(
      (mm): WayIn => ({
        change: { what: 'stand-off', part, standOffMm: mm },
        positions: positions.map((p, i) => (swings[i] ? { ...p, standOffMm: p.standOffMm + mm } : p)),
      }),
    ),
  ];
}

/** More turn is more the way it is turned already. */
const turned = (turnRad: number, byRad: number): number => turnRad + Math.sign(turnRad) * byRad;
