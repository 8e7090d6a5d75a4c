import { appendArc } from '../plane/arc-points.ts';
import { add, cross, scale, sub, type Vec, vec } from '../plane/vec.ts';
import { type Polygon, signedAreaMm2 } from '../polygons/polygons.ts';
import { type PointBlocks, pointBlocks } from './point-blocks.ts';
import { cornerBetween, corneredWays, type StraightCorner, withArc } from './straight-corner.ts';
import { type LaidLine, laidLines, type Meeting, type Outlines } from './straight-lines.ts';
import type { CutRun } from './straight-run.ts';
import { arcToleranceMm } from './tolerances.ts';

/** No flat is shorter, mm, but where the casting's outline ends it. */
export const leastFlatMm = 10;

/** A path so far: it comes onto a line at a length along it, by a corner from a step before or from the outline. */
interface Step {
  readonly ontoMm: number;
  /** Where the flat begins, past the arc; −∞ where the outline does. */
  readonly flatFromMm: number;
  /** Metal taken by what is behind, to the origin, mm². */
  readonly takenMm2: number;
  readonly line: number;
  readonly corner: StraightCorner | null;
  readonly before: Step | null;
}

/**
 * The metal to take beyond a cut's edge so that lines laid on it, with arcs in the internal corners, are the edge instead,
 * from outline to outline: of all such paths over the lines the one that takes the least. Null where there is none.
 * Lines run through metal only, so that whatever path they make leaves all of the edge behind it. An arc is at most half
 * a flat wider than it must be: where there is more room, a flat fits.
 */
export function straightPath(run: CutRun, outlines: Outlines, radiusMm: number): Polygon | null {
  const lines = laidLines(run, outlines);
  const search: PathSearch = {
    run,
    lines,
    edge: pointBlocks(run.ring.slice(0, run.end + 1), false),
    radiusMm,
    area: areasFrom(run),
  };
  const steps = lines.map((_, i) => stepsFromOutline(search, i));
  let best: PathEnd | null = null;
  for (const [i, line] of lines.entries()) {
    if ((steps[i] as Step[]).length === 0) continue;
    const to = arrivals(steps[i] as Step[], line, search.area.origin);
    const ended = endedInOutline(search, line, to);
    if (ended !== null && ended.takenMm2 < (best?.takenMm2 ?? Number.POSITIVE_INFINITY)) best = ended;
    for (let j = i + 1; j < lines.length; j++) (steps[j] as Step[]).push(...stepsBetween(search, i, j, to));
  }
  return best && regionBehind(run, lines, best.step);
}

interface PathSearch {
  readonly run: CutRun;
  readonly lines: readonly LaidLine[];
  readonly edge: PointBlocks;
  readonly radiusMm: number;
  readonly area: Areas;
}

interface PathEnd {
  readonly step: Step;
  readonly takenMm2: number;
}

/** A path may begin on a line that comes from the casting's outline just before the edge. */
function stepsFromOutline({ run, lines, area }: PathSearch, i: number): Step[] {
  const line = lines[i] as LaidLine;
  const { edge, alongMm: ontoMm } = line.back;
  if (edge < run.before) return [];
  const flatFromMm = Number.NEGATIVE_INFINITY;
  return [{ ontoMm, flatFromMm, takenMm2: area.before(line), line: i, corner: null, before: null }];
}

/** The best path that ends on a line where that meets the casting's outline just after the edge. */
function endedInOutline({ run, area }: PathSearch, line: LaidLine, to: Arrivals): PathEnd | null {
  const { edge, alongMm } = line.ahead;
  const step = edge >= run.end && edge < run.after ? to.least(alongMm, alongMm) : null;
  return step && { step, takenMm2: step.takenMm2 + area.along(line, step.ontoMm, alongMm) + area.after(line) };
}

/** The best paths that go on from one line to another. */
function stepsBetween({ lines, edge, radiusMm, area }: PathSearch, i: number, j: number, to: Arrivals): Step[] {
  const [line, next] = [lines[i] as LaidLine, lines[j] as LaidLine];
  const bare = cornerBetween(line, next);
  if (bare === null || comingTo(withArc(bare, radiusMm), to) === null) return [];
  return corneredWays(bare, [line, next], edge, radiusMm, radiusMm + leastFlatMm / 2).flatMap((corner) => {
    const before = comingTo(corner, to);
    if (before === null) return [];
    const { fromMm, ontoMm, arcMm } = corner;
    const takenMm2 = before.takenMm2 + area.along(line, before.ontoMm, fromMm) - sparedMm2(corner);
    return [{ ontoMm, flatFromMm: ontoMm + arcMm, takenMm2, line: j, corner, before }];
  });
}

/** The path that takes least to where a corner's arc begins, along a flat long enough. */
const comingTo = ({ fromMm, arcMm }: StraightCorner, to: Arrivals): Step | null =>
  to.least(fromMm - arcMm - leastFlatMm, fromMm - arcMm);

/** What an arc leaves of a corner: R²(tan ½θ − ½θ). */
const sparedMm2 = ({ radiusMm, turnRad }: StraightCorner): number =>
  turnRad > 0 ? 0 : radiusMm * radiusMm * (Math.tan(-turnRad / 2) + turnRad / 2);

interface Arrivals {
  /** The path that takes least to go on at `flatToMm`, its flat begun by `latestMm` or by the outline. */
  readonly least: (latestMm: number, flatToMm: number) => Step | null;
}

/** Paths that come onto a line, ready to be asked which to go on from. */
function arrivals(steps: readonly Step[], line: LaidLine, origin: Vec): Arrivals {
  // along a line what is taken grows evenly, so that paths can be weighed at its start
  const evenly = -cross(sub(line.at, origin), line.along) / 2;
  const weight = (step: Step): number => step.takenMm2 - evenly * step.ontoMm;
  const sorted = steps.toSorted((a, b) => a.flatFromMm - b.flatFromMm);
  const lightest: Step[] = [];
  for (const step of sorted) {
    const best = lightest.at(-1);
    lightest.push(best !== undefined && weight(best) <= weight(step) ? best : step);
  }
  const least = (latestMm: number, flatToMm: number): Step | null => {
    let [from, to] = [0, sorted.length];
    while (from < to) {
      const middle = (from + to) >> 1;
      if ((sorted[middle] as Step).flatFromMm <= latestMm) from = middle + 1;
      else to = middle;
    }
    const step = lightest[from - 1];
    return step === undefined || step.ontoMm >= flatToMm ? null : step;
  };
  return { least };
}

interface Areas {
  readonly origin: Vec;
  readonly before: (line: LaidLine) => number;
  readonly along: (line: LaidLine, fromMm: number, toMm: number) => number;
  readonly after: (line: LaidLine) => number;
}

/** Areas swept about the start of the edge: the outline's as it runs, a line's the other way round; mm². */
function areasFrom({ ring, end }: CutRun): Areas {
  const origin = ring[0] as Vec;
  const swept = (a: Vec, b: Vec): number =>
    ((a.x - origin.x) * (b.y - origin.y) - (a.y - origin.y) * (b.x - origin.x)) / 2;
  const upTo = new Float64Array(ring.length + 1);
  for (let i = 0; i < ring.length; i++) {
    upTo[i + 1] = (upTo[i] as number) + swept(ring[i] as Vec, ring[(i + 1) % ring.length] as Vec);
  }
  const to = (i: number): number => upTo[i] as number;
  return {
    origin,
    before: ({ back, ...line }) =>
      to(ring.length) - to(back.edge + 1) + swept(metAt(line, back), ring[(back.edge + 1) % ring.length] as Vec),
    along: ({ at, along }, fromMm, toMm) => (-cross(sub(at, origin), along) / 2) * (toMm - fromMm),
    after: ({ ahead, ...line }) => to(ahead.edge) - to(end) + swept(ring[ahead.edge] as Vec, metAt(line, ahead)),
  };
}

const metAt = ({ at, along }: Pick<LaidLine, 'at' | 'along'>, { alongMm }: Meeting): Vec =>
  add(at, scale(along, alongMm));

/** What lies between a path and the outline behind it: along the outline and the edge, and back along the path. */
function regionBehind({ ring, end }: CutRun, lines: readonly LaidLine[], last: Step): Polygon | null {
  const path: Vec[] = [];
  const endLine = lines[last.line] as LaidLine;
  let startLine = endLine;
  for (let step: Step | null = last; step !== null; step = step.before) {
    startLine = lines[step.line] as LaidLine;
    if (step.corner !== null && step.before !== null) {
      path.unshift(...cornerPoints(step.corner, lines[step.before.line] as LaidLine, startLine));
    }
  }
  if (endLine.ahead.edge > startLine.back.edge) return null;
  const region = [
    metAt(startLine, startLine.back),
    ...ring.slice(startLine.back.edge + 1),
    ...ring.slice(0, end + 1),
    ...ring.slice(end + 1, endLine.ahead.edge + 1),
    metAt(endLine, endLine.ahead),
    ...path.reverse(),
  ];
  return signedAreaMm2(region) > 0 ? region : null;
}

function cornerPoints({ at, arcMm, radiusMm, turnRad }: StraightCorner, from: LaidLine, onto: LaidLine): Vec[] {
  if (arcMm === 0) return [at];
  const start = sub(at, scale(from.along, arcMm));
  const centre = add(start, scale(vec(from.along.y, -from.along.x), radiusMm));
  const points = [start];
  appendArc(points, start, centre, turnRad, arcToleranceMm, 'inside');
  return [...points, add(at, scale(onto.along, arcMm))];
}
