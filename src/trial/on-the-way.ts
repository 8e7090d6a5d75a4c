import { pointAt } from '../geometry/motion/motion.ts';
import { rigid } from '../geometry/plane/rigid.ts';
import { distance, length, type Vec } from '../geometry/plane/vec.ts';
import type { HolePair } from '../job/job.ts';
import { type Leg, type Position, positionAlong } from '../job/path.ts';

/** An instant of the way in: `leg` counts from 1, `at` runs 0–1 along it. */
export interface OnTheWay {
  readonly leg: number;
  readonly at: number;
  readonly position: Position;
}

/** What a reading of a position along a leg is of: the turn where it turns, rad, else how far it slides, mm. */
export const runsBy = ({ motion, from, to }: Leg): { readonly per: 'turn' | 'slide'; readonly whole: number } =>
  motion.kind === 'turn' && motion.angleRad !== 0
    ? { per: 'turn', whole: Math.abs(motion.angleRad) }
    : {
        per: 'slide',
        whole: Math.hypot(motion.kind === 'slide' ? length(motion.by) : 0, to.standOffMm - from.standOffMm),
      };

/** How the moving part's points go where they stand, per rad or mm that the leg runs; in the plane. */
export function paceAt({ motion, ...leg }: Leg, movingAt: Vec): Vec {
  const { per, whole } = runsBy({ motion, ...leg });
  if (motion.kind === 'slide') return whole === 0 ? { x: 0, y: 0 } : { x: motion.by.x / whole, y: motion.by.y / whole };
  const sign = per === 'turn' ? Math.sign(motion.angleRad) : 0;
  return { x: -sign * (movingAt.y - motion.pole.y), y: sign * (movingAt.x - motion.pole.x) };
}

const samples = 200;

/** The instant of the way in that is nearest to a position: a degree counts as a millimetre. Null where there is no way in. */
export function nearestOnTheWay(legs: readonly Leg[], { standOffMm, turnRad, shift }: Position): OnTheWay | null {
  const off = (position: Position): number =>
    Math.hypot(
      position.standOffMm - standOffMm,
      ((position.turnRad - turnRad) * 180) / Math.PI,
      distance(position.shift, shift),
    );
  return leastAlong(legs, off)?.instant ?? null;
}

/** The instant at which a dowel stands so far from its hole; null where it never does. */
export function whereDowelStands(
  legs: readonly Leg[],
  pair: HolePair,
  gapMm: number,
  standOffMm: number | null,
): OnTheWay | null {
  const found = leastAlong(legs, (position, leg, at) =>
    Math.hypot(
      dowelGapOn(leg, pair, at) - gapMm,
      standOffMm === null ? 0 : position.standOffMm - standOffMm,
      // on a slide along the crank it stands so all the way: where it turns is what is meant
      standOffMm === null && runsBy(leg).per === 'slide' ? 1e-3 : 0,
    ),
  );
  return found !== null && found.off < nearEnoughMm ? found.instant : null;
}

const nearEnoughMm = 0.5;

function leastAlong(
  legs: readonly Leg[],
  off: (position: Position, leg: Leg, at: number) => number,
): { readonly instant: OnTheWay; readonly off: number } | null {
  let least: { instant: OnTheWay; off: number } | null = null;
  for (const [i, leg] of legs.entries()) {
    const offAt = (at: number): number => off(positionAlong(leg, at), leg, at);
    let best = 0;
    for (let k = 1; k <= samples; k++) if (offAt(k / samples) < offAt(best)) best = k / samples;
    const at = narrowed(offAt, Math.max(0, best - 1 / samples), Math.min(1, best + 1 / samples));
    if (least === null || offAt(at) < least.off)
      least = { instant: { leg: i + 1, at, position: positionAlong(leg, at) }, off: offAt(at) };
  }
  return least;
}

/** Where a function is least between two places, by thirds. */
function narrowed(of: (at: number) => number, from: number, to: number): number {
  let [a, b] = [from, to];
  for (let k = 0; k < 60; k++) {
    const third = (b - a) / 3;
    if (of(a + third) <= of(b - third)) b -= third;
    else a += third;
  }
  return (a + b) / 2;
}

/** How fast a dowel's distance from its hole changes, mm per rad or mm that the leg runs. */
export function dowelPace(leg: Leg, pair: HolePair, at: number): number {
  const step = 1e-4;
  const [a, b] = [Math.max(0, at - step), Math.min(1, at + step)];
  const { whole } = runsBy(leg);
  return whole === 0 ? 0 : Math.abs(dowelGapOn(leg, pair, b) - dowelGapOn(leg, pair, a)) / ((b - a) * whole);
}

const dowelGapOn = (leg: Leg, { fixed, moving }: HolePair, at: number): number =>
  distance(fixed.at, pointAt(rigid(leg.from.turnRad, leg.from.shift), leg.motion, at, moving.at));
