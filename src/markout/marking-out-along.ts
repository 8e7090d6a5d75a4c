import { angleOf, distance, lerp, sub, type Vec } from '../geometry/plane/vec.ts';
import type { Run } from './marking-out-edges.ts';

/** A run measured along its length, mm. */
export interface MeasuredRun extends Run {
  /** The length to each point. */
  readonly reach: readonly number[];
  readonly lengthMm: number;
}

export function measured(run: Run): MeasuredRun {
  const reach = [0];
  run.points.forEach((p, i) => {
    if (i > 0) reach.push((reach[i - 1] as number) + distance(run.points[i - 1] as Vec, p));
  });
  return { ...run, reach, lengthMm: reach.at(-1) ?? 0 };
}

/** The place a length along a run; a closed run goes round and round, an open one ends at its ends. */
export function pointAlong(run: MeasuredRun, alongMm: number): Vec {
  const { points, reach, lengthMm, closed } = run;
  const s = closed ? alongMm - Math.floor(alongMm / lengthMm) * lengthMm : Math.min(Math.max(alongMm, 0), lengthMm);
  let low = 0;
  let high = reach.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((reach[middle] as number) <= s) low = middle;
    else high = middle;
  }
  const [from, to] = [reach[low] as number, reach[high] as number];
  return lerp(points[low] as Vec, points[high] as Vec, to > from ? (s - from) / (to - from) : 0);
}

/** A corner turns by more than this within `overMm` to either side. */
const cornerRad = Math.PI / 9;
const overMm = 0.5;

/** Where a run turns a corner: lengths along it, in order. A bend of 1.5 mm radius or more is no corner. */
export function cornersAlong(run: MeasuredRun, leastRad = cornerRad): number[] {
  const { reach, lengthMm, closed } = run;
  const inner = closed ? reach.slice(0, -1) : reach.slice(1, -1);
  const bends = inner
    .map((s) => ({ s, turn: turnAt(run, s) }))
    .filter(({ turn }) => turn > leastRad)
    .sort((a, b) => b.turn - a.turn);
  const corners: number[] = [];
  for (const { s } of bends) {
    const apart = (other: number): number =>
      closed ? Math.min(Math.abs(other - s), lengthMm - Math.abs(other - s)) : Math.abs(other - s);
    if (corners.every((other) => apart(other) > 2 * overMm)) corners.push(s);
  }
  return corners.sort((a, b) => a - b);
}

function turnAt(run: MeasuredRun, s: number): number {
  const at = pointAlong(run, s);
  const before = sub(at, pointAlong(run, s - overMm));
  const after = sub(pointAlong(run, s + overMm), at);
  const turn = Math.abs(angleOf(after) - angleOf(before));
  return Math.min(turn, 2 * Math.PI - turn);
}
