import { passageOf } from '../clearance/passages.ts';
import type { Motion } from '../geometry/motion/motion.ts';
import { greatestToleranceMm } from '../geometry/motion/tolerances.ts';
import { identity, rigid } from '../geometry/plane/rigid.ts';
import { type Vec, vec } from '../geometry/plane/vec.ts';
import { grownTree } from './metals.ts';
import type { StripPair } from './strips.ts';
import { type TurnRange, widthRad } from './turns.ts';

/** How near metal may come, and how much farther it may be taken to reach where it is grown by that; mm. */
export interface Nearness {
  readonly clearanceMm: number;
  readonly arcsMm: number;
}

const axis = vec(0, 0);

/** Radians by which a blocked range is told too wide: more than a contact's own error. */
const slackRad = 4e-9;

/**
 * The turns, of those asked about, at which two that share depth come nearer than asked, whatever the
 * stand-off: all at which they overlap once one of them is grown by the clearance, which is complete, since a turn about
 * the axis is one motion of the kernel. At some of them they may be as far apart as the clearance and `arcsMm`. With the
 * moving part carried `aside` it turns about there; null where it is on the axis.
 */
export function blockedTurns(pair: StripPair, near: Nearness, asked: TurnRange, aside: Vec | null): TurnRange[] {
  // off the axis what runs round it is metal like any other
  if (pair.ownMm !== null && aside === null) return staysTooNear(pair, pair.ownMm) ? [asked] : [];
  const { arcsMm } = near;
  const clearanceMm = pair.ownMm ?? near.clearanceMm;
  const growsFixed = pair.moving.solid.untraced;
  const fixed = growsFixed ? grownTree(pair.fixed, clearanceMm, arcsMm) : pair.fixed.solid.tree;
  const moving = growsFixed ? pair.moving.solid.tree : grownTree(pair.moving, clearanceMm, arcsMm);
  const spanRad = widthRad(asked);
  const pole = aside ?? axis;
  const turn: Motion = { kind: 'turn', pole, angleRad: spanRad };
  const { overlaps, toleranceMm } = passageOf(fixed, moving, rigid(asked.fromRad, pole), turn);
  if (toleranceMm > greatestToleranceMm) return [asked];
  return overlaps.map(({ from, to }) => ({
    fromRad: Math.max(asked.fromRad, asked.fromRad + from * spanRad - slackRad),
    toRad: Math.min(asked.toRad, asked.fromRad + to * spanRad + slackRad),
  }));
}

/** What runs round the axis is the same at every turn. */
function staysTooNear({ fixed, moving }: StripPair, ownMm: number): boolean {
  const still: Motion = { kind: 'turn', pole: axis, angleRad: 0 };
  const { state, distanceMm } = passageOf(fixed.solid.tree, moving.solid.tree, identity, still);
  return state === 'fouls' || (distanceMm !== null && distanceMm < ownMm);
}
