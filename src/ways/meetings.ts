import { passageOf } from '../clearance/passages.ts';
import { still } from '../geometry/motion/motion.ts';
import { greatestToleranceMm } from '../geometry/motion/tolerances.ts';
import { rigid } from '../geometry/plane/rigid.ts';
import { vec } from '../geometry/plane/vec.ts';
import type { DepthRange } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import type { Metal } from './metals.ts';
import { type Strip, type StripPair, stripsOf } from './strips.ts';
import type { WayPoint } from './way-along.ts';

/** Metal of the two parts that is nearer than asked at a turn and a stand-off. */
export interface Meeting {
  /** The section; null where nobody has traced. */
  readonly fixed: string | null;
  readonly moving: string | null;
  /** `unknown` where nobody has looked whether there is metal, or it cannot be told. */
  readonly how: 'fouls' | 'near' | 'unknown';
  /** Null where it fouls, or is not known. */
  readonly distanceMm: number | null;
  /** Where they share depth there, from the fixed face; null through every depth. */
  readonly depth: DepthRange | null;
}

export interface Met {
  readonly onDowels: boolean;
  readonly meetings: readonly Meeting[];
}

const axis = vec(0, 0);

/** What stands in the way at one place of the map of turns, what fouls first and the nearest before others. */
export function metAt(joint: Joint, at: WayPoint): Met {
  const strips = stripsOf(joint);
  // at a stand-off between two strips less is shared than in either, and nothing that is not in both
  const here = strips.filter(({ fromMm, toMm }) => fromMm <= at.standOffMm && at.standOffMm <= toMm);
  const shared = sharedBy(here);
  const meetings = shared.flatMap((pair) => meetingOf(pair, at, joint.fit.clearance.wayInMm));
  return {
    onDowels: here.length > 0 && here.every(({ onDowels }) => onDowels),
    meetings: meetings.sort((a, b) => rank[a.how] - rank[b.how] || (a.distanceMm ?? 0) - (b.distanceMm ?? 0)),
  };
}

const rank: Readonly<Record<Meeting['how'], number>> = { fouls: 0, near: 1, unknown: 2 };

const sharedBy = ([strip, ...others]: readonly Strip[]): StripPair[] =>
  (strip?.pairs ?? []).filter((pair) => others.every(({ pairs }) => pairs.includes(pair)));

function meetingOf(pair: StripPair, { turnRad, standOffMm }: WayPoint, wayInMm: number): Meeting[] {
  const { fixed, moving, ownMm } = pair;
  const askedMm = ownMm ?? wayInMm;
  const passage = passageOf(fixed.solid.tree, moving.solid.tree, rigid(turnRad, axis), still);
  const { state, toleranceMm, distanceMm } = passage;
  const fouls = state === 'fouls';
  if (!fouls && toleranceMm <= greatestToleranceMm && (distanceMm === null || distanceMm >= askedMm)) return [];
  const isKnown = !(fixed.solid.untraced || moving.solid.untraced) && toleranceMm <= greatestToleranceMm;
  return [
    {
      fixed: nameOf(fixed.solid),
      moving: nameOf(moving.solid),
      how: isKnown ? (fouls ? 'fouls' : 'near') : 'unknown',
      distanceMm: isKnown && !fouls ? distanceMm : null,
      depth: sharedDepth(pair, standOffMm),
    },
  ];
}

const nameOf = ({ name, untraced }: Metal['solid']): string | null => (untraced ? null : name);

function sharedDepth({ fixed: { solid }, rangeMm }: StripPair, standOffMm: number): DepthRange | null {
  if (solid.depth === null || rangeMm === null) return solid.depth;
  const { fromMm, toMm } = solid.depth;
  return {
    fromMm: Math.max(fromMm, toMm + rangeMm.fromMm - standOffMm),
    toMm: Math.min(toMm, fromMm + rangeMm.toMm - standOffMm),
  };
}
