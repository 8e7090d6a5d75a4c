import { add, length, scale, type Vec } from '../../geometry/plane/vec.ts';

/** A part of a picture in grey, by rows; its own top left corner is (0, 0). */
export interface GreyWindow {
  readonly width: number;
  readonly height: number;
  /** 0 black to 255 white. */
  readonly grey: Uint8Array;
}

export interface PullLimits {
  /** How far to either side the edge may be, px. */
  readonly reachPx: number;
  /** The least step of grey across it, out of 255. */
  readonly leastStep: number;
}

export const usualPull: PullLimits = { reachPx: 8, leastStep: 20 };

/** `outside`: the line looked along leaves the window. `at-the-end`: the contrast still grows where the reach ends. */
export type PullResult =
  | { readonly ok: true; readonly at: Vec; readonly movedPx: number; readonly step: number }
  | { readonly ok: false; readonly why: 'no-direction' | 'outside' | 'weak' | 'at-the-end' };

/**
 * Moves a traced point along the outline's normal onto the strongest contrast there: grey is read from pixel to pixel
 * along the line, and along one to either side of it, and the top of its change taken from a parabola through three.
 */
export function pullToEdge(window: GreyWindow, from: Vec, normal: Vec, limits: PullLimits = usualPull): PullResult {
  const size = length(normal);
  if (!(size > 0) || !Number.isFinite(size)) return { ok: false, why: 'no-direction' };
  const along = scale(normal, 1 / size);
  const reach = Math.max(1, Math.round(limits.reachPx));
  const profile = profileAlong(window, from, along, reach + 2);
  if (profile === null) return { ok: false, why: 'outside' };
  // change[k] is at k − reach − 1 px from the point, one more at either end than may be taken
  const change = profile.slice(2).map((grey, k) => (grey - (profile[k] as number)) / 2);
  const top = topOf(change);
  const step = stepAcross(change, top);
  if (!(step >= limits.leastStep && standsOut(change, top))) return { ok: false, why: 'weak' };
  if (top === 0 || top === change.length - 1) return { ok: false, why: 'at-the-end' };
  const movedPx = top - reach - 1 + beyondTop(change, top);
  return { ok: true, at: add(from, scale(along, movedPx)), movedPx, step };
}

/** Grey at whole pixels from −half to +half along the line, the mean of three lines side by side. */
function profileAlong(window: GreyWindow, from: Vec, along: Vec, half: number): number[] | null {
  const aside: Vec = { x: -along.y, y: along.x };
  const profile: number[] = [];
  for (let k = -half; k <= half; k += 1) {
    const here = add(from, scale(along, k));
    const three = [-1, 0, 1].map((side) => greyAt(window, add(here, scale(aside, side))));
    if (three.includes(null)) return null;
    profile.push((three as number[]).reduce((sum, grey) => sum + grey, 0) / 3);
  }
  return profile;
}

/** Between the four nearest pixel centres, which lie at halves; null beyond them. */
function greyAt({ width, height, grey }: GreyWindow, { x, y }: Vec): number | null {
  const [column, row] = [Math.floor(x - 0.5), Math.floor(y - 0.5)];
  if (!(column >= 0 && row >= 0 && column + 1 < width && row + 1 < height)) return null;
  const [right, down] = [x - 0.5 - column, y - 0.5 - row];
  const pixel = (i: number, j: number) => grey[(row + j) * width + column + i] as number;
  const upper = pixel(0, 0) * (1 - right) + pixel(1, 0) * right;
  const lower = pixel(0, 1) * (1 - right) + pixel(1, 1) * right;
  return upper * (1 - down) + lower * down;
}

const topOf = (change: readonly number[]): number =>
  change.reduce((top, value, k) => (Math.abs(value) > Math.abs(change[top] as number) ? k : top), 0);

/** The grey gained or lost where it changes the same way as at the top. */
function stepAcross(change: readonly number[], top: number): number {
  const sign = Math.sign(change[top] as number);
  const runs = (k: number) => (change[k] ?? 0) * sign > 0;
  let [first, last] = [top, top];
  while (runs(first - 1)) first -= 1;
  while (runs(last + 1)) last += 1;
  return change.slice(first, last + 1).reduce((sum, value) => sum + value * sign, 0);
}

/** An edge is a change several times that of the metal round it; a shadow that falls off slowly is none. */
const timesTheMiddle = 3;

function standsOut(change: readonly number[], top: number): boolean {
  const sizes = change.map(Math.abs).sort((a, b) => a - b);
  return Math.abs(change[top] as number) > timesTheMiddle * (sizes[Math.floor(sizes.length / 2)] as number);
}

/** From the top of three values to that of the parabola through them, −0.5 to 0.5. */
function beyondTop(change: readonly number[], top: number): number {
  const [before, at, after] = [top - 1, top, top + 1].map((k) => Math.abs(change[k] as number)) as [
    number,
    number,
    number,
  ];
  const curve = before - 2 * at + after;
  return curve < 0 ? (before - after) / (2 * curve) : 0;
}
