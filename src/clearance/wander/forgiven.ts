import { staysClear } from '../../geometry/motion/least-distance.ts';
import { noWander, type Wander } from '../../job/wander.ts';
import type { Joint } from '../../joint/joint.ts';
import { pairRule, pairsOn } from '../pairs.ts';
import { waysOf } from '../passings.ts';
import { turningRule } from '../rotating.ts';
import { sidesOf, solidsSweptRound } from '../solids.ts';
import { strays } from './strays.ts';

const degree = Math.PI / 180;

/** How far each may be strayed in by itself. */
export interface Forgiven {
  readonly each: Wander;
  /** As far as was looked: what is forgiven up to here may be more. */
  readonly lookedTo: Wander;
}

/** Nobody strays farther; what is forgiven up to here needs no care. */
const lookedTo: Wander = { turnRad: 15 * degree, standOffMm: 25, shiftMm: 25, tiltRad: 5 * degree };

/** To a ten thousandth of the most. */
const halvings = 14;

/**
 * How far each may be strayed in by itself on the way in before metal meets metal as traced, or comes nearer to what runs
 * round than asked; never too much. Null where the way touches as it is, or there is none.
 */
export function forgivenBy(joint: Joint): Forgiven | null {
  const { legs, clearance } = joint.fit;
  const sides = sidesOf(joint);
  const rule = pairRule(joint);
  const meet = pairsOn(sides, waysOf(legs), rule).some(
    ({ passage, view }) => view === 'as-measured' && passage.state !== 'clear',
  );
  if (legs.length === 0 || meet) return null;
  const turning = turningRule(joint, []).depth;
  const all = [
    { sides, depth: rule.depth, keptMm: 0 },
    ...joint.rotating.map((part) => ({
      sides: { ...sides, fixed: solidsSweptRound(part) },
      depth: turning,
      keptMm: clearance.rotatingMm,
    })),
  ];
  const keeps = (wander: Wander): boolean =>
    all.every(({ sides: of, depth, keptMm }) => {
      for (const { fixed, moving, start, motion, nearerMm } of strays(joint, wander, of, depth, 'as-measured')) {
        if (!staysClear(fixed.tree, moving.tree, start, motion, nearerMm + keptMm)) return false;
      }
      return true;
    });
  if (!keeps(noWander)) return null;
  const most = (of: keyof Wander): number => {
    const limit = lookedTo[of];
    if (keeps({ ...noWander, [of]: limit })) return limit;
    let [free, touches] = [0, limit];
    for (let k = 0; k < halvings; k++) {
      const middle = (free + touches) / 2;
      if (keeps({ ...noWander, [of]: middle })) free = middle;
      else touches = middle;
    }
    return free;
  };
  const each = {
    turnRad: most('turnRad'),
    standOffMm: most('standOffMm'),
    shiftMm: most('shiftMm'),
    tiltRad: most('tiltRad'),
  };
  return { each, lookedTo };
}
