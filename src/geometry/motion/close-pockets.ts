import type { Vec } from '../plane/vec.ts';
import { link, loose, type MonotoneRun, ringFrom } from './runs.ts';
import { levelMm } from './tolerances.ts';
import { partOfEdge, pointAlong, type Travel } from './travel.ts';

/**
 * Fills the pockets of an outline that are no wider, along the travel, than its reach. The metal on one side of such a
 * pocket passes over all of it, so filling it leaves the swept region as it is; and with it goes nearly all the noise
 * of a scanned outline, whose every notch would otherwise sweep a band of its own across all the others. A hole closed
 * altogether leaves no runs.
 *
 * Each place where the level turns over is looked at once: a tooth stays a tooth, and a pocket found too wide is not
 * made narrower by filling another.
 */
export function closePockets(runs: readonly MonotoneRun[], travel: Travel): readonly MonotoneRun[] {
  let kept = runs[0];
  for (const run of runs) {
    if (run.gone || run.previous.leads === run.leads) continue;
    const pocket = pocketAt(run, travel);
    if (pocket === 'closed all round') return [];
    if (pocket !== null) kept = fill(pocket, travel);
  }
  return kept === undefined ? [] : ringFrom(kept);
}

/** One wall of a pocket, followed run by run from the pocket's end towards its mouth. */
interface Wall {
  readonly onward: 'previous' | 'next';
  run: MonotoneRun;
  /** How far the level at the far end of `run` lies from that of the pocket's end, mm, and how much farther along. */
  heightMm: number;
  advance: number;
}

/** The wall that comes before the end along the outline, and the one that comes after. */
interface Pocket {
  readonly end: Vec;
  readonly opens: 1 | -1;
  readonly before: Wall;
  readonly after: Wall;
  /** The least and greatest advance seen. */
  least: number;
  most: number;
}

/** The pocket that ends where `after` begins, up to its lower lip; null for a tooth or where wider than the reach. */
function pocketAt(after: MonotoneRun, travel: Travel): Pocket | 'closed all round' | null {
  const pocket: Pocket = {
    end: after.edge.a,
    opens: after.leads ? -1 : 1,
    before: { onward: 'previous', run: after.previous, heightMm: 0, advance: 0 },
    after: { onward: 'next', run: after, heightMm: 0, advance: 0 },
    least: 0,
    most: 0,
  };
  follow(pocket, pocket.before, after.previous, travel);
  follow(pocket, pocket.after, after, travel);
  for (let isPocket = false; pocket.most - pocket.least <= travel.reach; ) {
    const [lower, higher] = byHeight(pocket);
    if (!isPocket && lower.heightMm > levelMm) {
      if (width(pocket, travel) <= 0) return null;
      isPocket = true;
      after.endsPocket = true;
    }
    const run = lower.run[lower.onward];
    if (run === higher.run) return isPocket ? 'closed all round' : null;
    if (run.leads !== lower.run.leads) return isPocket ? pocket : null;
    follow(pocket, lower, run, travel);
  }
  return null;
}

function follow(pocket: Pocket, wall: Wall, run: MonotoneRun, travel: Travel): void {
  wall.run = run;
  const [near, far] = wall.onward === 'next' ? [run.edge.a, run.edge.b] : [run.edge.b, run.edge.a];
  const stray = travel.stray(run.edge);
  pocket.least = Math.min(pocket.least, wall.advance - stray);
  pocket.most = Math.max(pocket.most, wall.advance + stray);
  wall.heightMm = pocket.opens * travel.rise(pocket.end, far);
  wall.advance += travel.advance(near, far);
  pocket.least = Math.min(pocket.least, wall.advance - stray);
  pocket.most = Math.max(pocket.most, wall.advance + stray);
}

const byHeight = ({ before, after }: Pocket): readonly [lower: Wall, higher: Wall] =>
  before.heightMm <= after.heightMm ? [before, after] : [after, before];

/** How far the trailing wall lies ahead of the leading one at the level the lower has reached; negative for a tooth. */
function width(pocket: Pocket, travel: Travel): number {
  const [lower, higher] = byHeight(pocket);
  const { run } = higher;
  const far = higher.onward === 'next' ? run.edge.b : run.edge.a;
  const level = pointAlong(run.edge, atHeight(pocket, run, lower.heightMm, travel));
  const ahead = higher.advance + travel.advance(far, level) - lower.advance;
  return higher.run.leads ? -ahead : ahead;
}

/** The fraction of a run's way at which it reaches a height, by the Illinois form of false position. */
function atHeight(pocket: Pocket, run: MonotoneRun, heightMm: number, travel: Travel): number {
  const above = (t: number): number => pocket.opens * travel.rise(pocket.end, pointAlong(run.edge, t)) - heightMm;
  let [s, t] = [0, 1];
  let [f, g] = [above(s), above(t)];
  if (f === 0 || f > 0 === g > 0) return Math.abs(f) <= Math.abs(g) ? 0 : 1;
  for (let i = 0; i < 60; i++) {
    const u = (s * g - t * f) / (g - f);
    const h = above(u);
    if (Math.abs(h) <= 1e-3 * levelMm) return u;
    if (h > 0 === g > 0) f /= 2;
    else [s, f] = [t, g];
    [t, g] = [u, h];
  }
  return t;
}

/** Cuts the higher wall at the lower lip, joins the two along their level, and takes the pocket out of the ring. */
function fill(pocket: Pocket, travel: Travel): MonotoneRun {
  const { before, after } = pocket;
  const [lower, higher] = byHeight(pocket);
  const cutAt = atHeight(pocket, higher.run, lower.heightMm, travel);
  const far = higher.onward === 'next' ? higher.run.edge.b : higher.run.edge.a;
  const cut = pointAlong(higher.run.edge, cutAt);
  const cutAdvance = higher.advance + travel.advance(far, cut);
  const outer = { first: before.run.previous, last: after.run.next };
  for (let run = before.run; run !== outer.last; run = run.next) run.gone = true;
  const { leads, edge } = higher.run;
  const lid =
    lower === before
      ? loose(travel.track(before.run.edge.a, cutAdvance - before.advance), leads)
      : loose(travel.track(cut, after.advance - cutAdvance), leads);
  const rest = loose(lower === before ? partOfEdge(edge, cutAt, 1) : partOfEdge(edge, 0, cutAt), leads);
  const ring = lower === before ? [outer.first, lid, rest, outer.last] : [outer.first, rest, lid, outer.last];
  for (let i = 1; i < ring.length; i++) link(ring[i - 1] as MonotoneRun, ring[i] as MonotoneRun);
  return lid;
}
