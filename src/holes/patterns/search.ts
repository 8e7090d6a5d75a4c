import type { Vec } from '../../geometry/plane/vec.ts';
import { holeGrid } from './hole-grid.ts';
import { fewestPairs, type MatchOptions } from './pattern.ts';
import { countNear, isAsGood, isSamePosition, type Position, positionNear } from './position.ts';
import { trialMotions } from './trial-motions.ts';

/** The positions at which two patterns come together best, most holes first and then nearest, and what was tried. */
export interface Search {
  readonly positions: readonly Position[];
  readonly trials: number;
  /** False where the search was cut short. */
  readonly allTried: boolean;
}

/** So many positions are tried at the most, and so many holes looked at in them. */
const mostTrials = 200_000;
const mostLooks = 20_000_000;
/** Positions that are kept: more are no answer to anybody. */
const mostPositions = 48;

const hairRad = 1e-9;

/** Positions are told from the best one down to so many holes fewer; of a few holes only the best, since chance makes more. */
const fewerTold = (best: number): number => (best < 6 ? 0 : Math.max(1, Math.floor(best / 10)));

/** Tries every position at which holes come upon holes, in bounded time. */
export function searchPositions(fixed: readonly Vec[], moving: readonly Vec[], options: MatchOptions): Search {
  // a position from two holes misses the others by about twice what those two are off
  const wide: MatchOptions = { ...options, reachMm: 2 * options.reachMm };
  const grid = holeGrid(fixed, wide.reachMm);
  const fewest = fewestPairs(options);
  const most = Math.min(mostTrials, Math.ceil(mostLooks / Math.max(1, moving.length)));
  let [trials, best] = [0, fewest];
  let known: Position[] = [];
  for (const motion of trialMotions(fixed, moving, options)) {
    if (trials === most) return { positions: ranked(known), trials, allTried: false };
    trials += 1;
    const least = Math.max(fewest, best - fewerTold(best));
    if (countNear(grid, moving, motion, wide, least) < least) continue;
    if (known.some((position) => isSamePosition(position.motion, motion, moving, options))) continue;
    const position = positionNear(grid, moving, motion, options, fewest);
    if (position === null || position.pairs.length < least) continue;
    if (known.some((other) => isSamePosition(other.motion, position.motion, moving, options))) continue;
    best = Math.max(best, position.pairs.length);
    known = [...known, position].filter(({ pairs }) => pairs.length >= best - fewerTold(best));
    if (known.length > 2 * mostPositions) known = ranked(known);
  }
  return { positions: ranked(known), trials, allTried: true };
}

/** The best first; of those that are as good as any the one turned least stands at their head. */
function ranked(positions: readonly Position[]): Position[] {
  const sorted = [...positions].sort((a, b) => b.pairs.length - a.pairs.length || a.rmsMm - b.rmsMm);
  const [best, ...rest] = sorted.slice(0, mostPositions);
  if (best === undefined) return [];
  const turned = ({ motion }: Position): number => Math.abs(Math.atan2(motion.sin, motion.cos));
  const lead = rest.reduce(
    (least, other) => (isAsGood(other, best) && turned(other) < turned(least) - hairRad ? other : least),
    best,
  );
  return [lead, ...[best, ...rest].filter((position) => position !== lead)];
}
