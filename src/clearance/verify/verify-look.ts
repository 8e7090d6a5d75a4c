import { apply, inverse } from '../../geometry/plane/rigid.ts';
import { type Vec, vec } from '../../geometry/plane/vec.ts';
import type { Shape } from './verify-shape.ts';
import { pathMm, placementAt, type Stretch, type Way } from './verify-way.ts';

/** Two solids, one of which goes a way. */
export interface Passing {
  readonly fixed: Shape;
  readonly moving: Shape;
  readonly way: Way;
}

/** The least gap found (mm, negative: that deep inside), when, and where in the joint frame. */
export interface LeastGap {
  readonly gapMm: number;
  readonly at: number;
  readonly place: Vec;
}

export const noGap: LeastGap = { gapMm: Infinity, at: 0, place: vec(0, 0) };

/** What a self-check may still spend, in points measured against an outline. */
export class Looks {
  made = 0;
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  /** What each of `sharers` may have of what is left. */
  share(sharers: number): number {
    return Math.max(leastShare, (this.#most - this.made) / Math.max(1, sharers));
  }
}

/** However many pairs there are, each gets this much of a look. */
const leastShare = 400;

/** Looks a station may cost on the average, and how many at the very least. */
const looksPerStation = 12;
const leastLooks = 4;

/** How much of its gap a point is carried on before it is looked at again: the rest is what its neighbours may skip. */
const shareOfGap = 0.6;

/** How many of the nearest places found are followed to where they are nearest. */
const followed = 8;

/** How often a place is moved on, or its steps halved, at most. */
const mostRounds = 100;

/** A gap is told from its target at this, mm. */
const tellMm = 1e-6;

/** One side of a passing: stations of one solid, run past the other. */
interface Side {
  readonly shape: Shape;
  /** The gap of a point of `shape`, and where that point is in the joint frame, at an instant. */
  readonly gapMm: (p: Vec, at: number, limitMm: number) => number;
  readonly pointInJoint: (p: Vec, at: number) => Vec;
  readonly pathMm: (p: Vec) => number;
}

/** The nearest that a station came, and when. */
interface Low {
  readonly run: number;
  readonly outline: number;
  readonly gapMm: number;
  readonly at: number;
}

/**
 * The least gap between two solids that can be found on a stretch of the way, looking closely where it comes near
 * `targetMm`. Every station is followed along its path: at a gap of g it cannot come to the target before it has run
 * g − target, so part of that is skipped. What is found is a gap of real points at a real instant, so never too small.
 */
export function leastGap(
  passing: Passing,
  stretch: Stretch,
  targetMm: number,
  looks: Looks,
  mostLooks: number,
): LeastGap {
  const sides = sidesOf(passing, looks);
  const lows = sides.map((side) => lowsOf(side, stretch, targetMm, looks, mostLooks / 2));
  let best = noGap;
  for (const [i, side] of sides.entries()) {
    const near = Math.max(targetMm, 0) + 2 * side.shape.spacingMm * everyOf(side.shape, mostLooks / 2);
    for (const low of hollowsOf(lows[i] as Low[][]).filter(({ gapMm }) => gapMm < near)) {
      const found = follow(side, low, stretch);
      if (found.gapMm < best.gapMm) best = found;
    }
    for (const low of (lows[i] as Low[][]).flat()) if (low.gapMm < best.gapMm) best = foundAt(side, low);
  }
  return best;
}

function sidesOf({ fixed, moving, way }: Passing, looks: Looks): Side[] {
  return [
    {
      shape: moving,
      gapMm: (p, at, limitMm) => {
        looks.made++;
        return fixed.gapMm(apply(placementAt(way, at), p), limitMm);
      },
      pointInJoint: (p, at) => apply(placementAt(way, at), p),
      pathMm: (p) => pathMm(way, apply(placementAt(way, 0), p)),
    },
    {
      shape: fixed,
      gapMm: (p, at, limitMm) => {
        looks.made++;
        return moving.gapMm(apply(inverse(placementAt(way, at)), p), limitMm);
      },
      pointInJoint: (p) => p,
      pathMm: (p) => pathMm(way, p),
    },
  ];
}

/**
 * The lows of the stations, outline by outline: every so manieth where there are too many. Where one stays well off the
 * target, so do its neighbours as far along the outline, and they are passed over.
 */
function lowsOf(side: Side, stretch: Stretch, targetMm: number, looks: Looks, mostLooks: number): Low[][] {
  const { stations } = side.shape;
  const every = everyOf(side.shape, mostLooks);
  const end = looks.made + mostLooks;
  let left = stationCount(side.shape) / every;
  return stations.map((runs, outline) => {
    const lows: Low[] = [];
    let freeRun = -Infinity;
    for (let i = outline % every; i < runs.length; i += every) {
      const run = runs[i] as number;
      const share = Math.max(leastLooks, (end - looks.made) / Math.max(1, left--));
      const p = run < freeRun ? null : side.shape.pointAt(run, outline);
      if (p === null) continue;
      const { freeMm, ...low } = lowOf(side, p, stretch, targetMm, share);
      lows.push({ ...low, run, outline });
      freeRun = run + freeMm;
    }
    return lows;
  });
}

const stationCount = ({ stations }: Shape): number => stations.reduce((sum, runs) => sum + runs.length, 0);

/** Every how manieth station is looked at. */
const everyOf = (shape: Shape, mostLooks: number): number =>
  Math.max(1, Math.ceil((stationCount(shape) * looksPerStation) / mostLooks));

/** The low of one point, and how far it stays off the target throughout. */
function lowOf(side: Side, p: Vec, stretch: Stretch, targetMm: number, mostLooks: number) {
  const path = side.pathMm(p);
  const leastStep = (stretch.to - stretch.from) / mostLooks;
  const goal = Math.max(targetMm, 0);
  // beyond this a look is cut short, and the step that follows is long enough
  const limitMm = goal + 8 * side.shape.spacingMm;
  let [least, leastAt, freeMm] = [Infinity, stretch.from, Infinity];
  for (let at = stretch.from; ; ) {
    const gapMm = side.gapMm(p, at, limitMm);
    if (gapMm < least) [least, leastAt] = [gapMm, at];
    const left = stretch.to - at;
    const step = path === 0 ? left : Math.min(left, Math.max(leastStep, (shareOfGap * (gapMm - goal)) / path));
    freeMm = Math.min(freeMm, gapMm - goal - step * path);
    if (at >= stretch.to || gapMm < targetMm - tellMm || path === 0) return { gapMm: least, at: leastAt, freeMm };
    at = step < left ? at + step : stretch.to;
  }
}

/** The lows that are no higher than their neighbours along the outline, lowest first, as many as are followed. */
const hollowsOf = (lows: readonly (readonly Low[])[]): Low[] =>
  lows
    .flatMap((round) =>
      round.filter((low, i) => {
        const before = round.at(i - 1) as Low;
        const after = round[(i + 1) % round.length] as Low;
        return low.gapMm <= before.gapMm && low.gapMm <= after.gapMm;
      }),
    )
    .sort((a, b) => a.gapMm - b.gapMm)
    .slice(0, followed);

/** Ways to step: along the outline, in time, and both. */
const steps = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [-1, -1],
  [1, -1],
  [-1, 1],
] as const;

/** Goes downhill from a low, along the outline and in time, in ever smaller steps. */
function follow(side: Side, low: Low, stretch: Stretch): LeastGap {
  const { shape } = side;
  const p = shape.pointAt(low.run, low.outline) as Vec;
  const span = stretch.to - stretch.from;
  const timeStep = Math.min(span, shape.spacingMm / (side.pathMm(p) || Infinity));
  let best = low;
  for (let [size, rounds] = [1, 0]; size > 1e-7 && rounds < mostRounds; rounds++) {
    const next = steps
      .filter(([, inTime]) => inTime === 0 || timeStep > 0)
      .map(([along, inTime]) => {
        const run = best.run + along * size * shape.spacingMm;
        const at = Math.max(stretch.from, Math.min(stretch.to, best.at + inTime * size * timeStep));
        const q = shape.pointAt(run, low.outline);
        return {
          ...best,
          run,
          at,
          gapMm: q === null ? Infinity : side.gapMm(q, at, Math.abs(best.gapMm) + shape.spacingMm),
        };
      })
      .reduce((a, b) => (b.gapMm < a.gapMm ? b : a));
    if (next.gapMm < best.gapMm) best = next;
    else size /= 2;
  }
  return foundAt(side, best);
}

const foundAt = (side: Side, { run, outline, gapMm, at }: Low): LeastGap => ({
  gapMm,
  at,
  place: side.pointInJoint(side.shape.pointAt(run, outline) as Vec, at),
});
