import type { Edge } from '../plane/edge.ts';
import type { Outline } from '../polygons/metal-on-left.ts';
import { levelMm } from './tolerances.ts';
import type { Travel } from './travel.ts';

/** A piece of a closed outline along which the level does not turn over, in a ring with its neighbours. */
export interface MonotoneRun {
  readonly edge: Edge;
  /** Whether it leads, its level falling, or trails, its level rising; a level run goes with the one before it. */
  readonly leads: boolean;
  /** Whether a pocket too wide to be filled ends where this run starts. */
  endsPocket: boolean;
  previous: MonotoneRun;
  next: MonotoneRun;
  gone: boolean;
}

/** A closed outline as runs, in order. */
export function runsOf(outline: Outline, travel: Travel): MonotoneRun[] {
  const edges = outline.flatMap(travel.monotone);
  const rises = edges.map(({ a, b }) => travel.rise(a, b));
  let leads = (rises.findLast((rise) => Math.abs(rise) > levelMm) ?? 0) < 0;
  const runs = edges.map((edge, i): MonotoneRun => {
    const rise = rises[i] as number;
    if (Math.abs(rise) > levelMm) leads = rise < 0;
    return loose(edge, leads);
  });
  for (const [i, run] of runs.entries()) link(run, runs[(i + 1) % runs.length] as MonotoneRun);
  return runs;
}

/** A run that is not yet part of a ring. */
export function loose(edge: Edge, leads: boolean): MonotoneRun {
  const run = { edge, leads, endsPocket: false, gone: false } as MonotoneRun;
  run.previous = run;
  run.next = run;
  return run;
}

export function link(before: MonotoneRun, after: MonotoneRun): void {
  before.next = after;
  after.previous = before;
}

/** The runs of a ring in order from one of them. */
export function ringFrom(first: MonotoneRun): MonotoneRun[] {
  const runs = [first];
  for (let run = first.next; run !== first; run = run.next) runs.push(run);
  return runs;
}
