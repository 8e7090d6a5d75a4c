import type { Vertex } from '../../geometry/plane/loop.ts';
import { distance, type Vec } from '../../geometry/plane/vec.ts';
import { ChainEnds } from './chain-ends.ts';
import { type Gap, joinGaps, openGaps } from './gaps.ts';
import { chordLength, firstOf, lastOf, type OpenLine, runTheSame, turnedRound } from './open-line.ts';
import { nodesOf } from './point-grid.ts';
import { sameEndMm } from './tolerances.ts';

/** Where more than two lines meet, so that nobody but their drawer knows which go on into which. */
export interface Branch {
  readonly at: Vec;
  readonly lines: number;
}

/** What became of open lines: closed outlines, and everything that stood in the way of more. */
export interface Chaining {
  /** Closed outlines as vertices in order; the last edge leads back to the first vertex. */
  readonly closed: readonly (readonly Vertex[])[];
  readonly joined: readonly Gap[];
  readonly gaps: readonly Gap[];
  readonly branches: readonly Branch[];
  /** Lines drawn over another and lines of no length; neither is kept. */
  readonly doubles: number;
  readonly dots: number;
}

/**
 * Chains lines end to end into closed outlines, whatever their order and sense. Ends within `sameEndMm` are one
 * point; wider gaps up to `joinMm` are closed as `joinGaps` says. Where three or more lines meet nothing is guessed:
 * the place is listed and no line goes on. Lines drawn twice count once; lines of no length are dropped.
 */
export function chainLines(drawn: readonly OpenLine[], joinMm: number): Chaining {
  const long = drawn.filter((line) => line.vertices.length > 1 && chordLength(line) > sameEndMm);
  const rings = long.filter(isRing);
  const open = withNodes(long.filter((line) => !isRing(line)));
  const kept = withoutDoubles(open);
  const lines = kept.map(({ line }) => line);
  const ends = new ChainEnds(lines);
  const branches = linkAtNodes(ends, kept);
  const joined = joinGaps(ends, joinMm);
  return {
    closed: [...rings.map((ring) => ring.vertices.slice(0, -1)), ...closedChains(lines, ends)],
    joined,
    gaps: openGaps(ends, joinMm),
    branches,
    doubles: open.length - lines.length,
    dots: drawn.length - long.length,
  };
}

const isRing = (line: OpenLine): boolean => distance(firstOf(line), lastOf(line)) <= sameEndMm;

/** A line with the nodes of its two ends. */
interface NodedLine {
  readonly line: OpenLine;
  readonly from: number;
  readonly to: number;
}

function withNodes(lines: readonly OpenLine[]): NodedLine[] {
  const nodes = nodesOf(
    lines.flatMap((line) => [firstOf(line), lastOf(line)]),
    sameEndMm,
  );
  return lines.map((line, i) => ({ line, from: nodes[2 * i] as number, to: nodes[2 * i + 1] as number }));
}

/** Lines between the same two nodes are compared, in both senses, with the first few that were kept there. */
const mostCompared = 32;

function withoutDoubles(lines: readonly NodedLine[]): NodedLine[] {
  const between = new Map<string, OpenLine[]>();
  return lines.filter(({ line, from, to }) => {
    const key = `${Math.min(from, to)} ${Math.max(from, to)}`;
    const kept = between.get(key);
    if (kept === undefined) between.set(key, [line]);
    else if (kept.some((other) => areTheSame(other, line))) return false;
    else if (kept.length < mostCompared) kept.push(line);
    return true;
  });
}

const areTheSame = (one: OpenLine, other: OpenLine): boolean =>
  runTheSame(one.vertices, other.vertices) || runTheSame(one.vertices, turnedRound(other).vertices);

/** Links the ends where just two meet; ends where more meet are held back and listed. */
function linkAtNodes(ends: ChainEnds, lines: readonly NodedLine[]): Branch[] {
  const byNode = new Map<number, number[]>();
  lines.forEach(({ from, to }, i) => {
    for (const [node, end] of [
      [from, 2 * i],
      [to, 2 * i + 1],
    ] as const) {
      const there = byNode.get(node);
      if (there === undefined) byNode.set(node, [end]);
      else there.push(end);
    }
  });
  const branches: Branch[] = [];
  for (const meeting of byNode.values()) {
    const [one, other] = meeting as [number, number];
    if (meeting.length === 2) ends.link(one, other, ends.point(one));
    if (meeting.length <= 2) continue;
    for (const end of meeting) ends.hold(end);
    branches.push({ at: ends.point(one), lines: meeting.length });
  }
  return branches;
}

function closedChains(lines: readonly OpenLine[], ends: ChainEnds): Vertex[][] {
  const walked = new Set<number>();
  for (const end of ends.unlinked()) walk(lines, ends, end, walked);
  const closed: Vertex[][] = [];
  for (let line = 0; line < lines.length; line++) {
    if (!walked.has(line)) closed.push(walk(lines, ends, 2 * line, walked));
  }
  return closed;
}

/** The vertices from an end along its chain, until it comes to a free end or back to where it began. */
function walk(lines: readonly OpenLine[], ends: ChainEnds, start: number, walked: Set<number>): Vertex[] {
  const vertices: Vertex[] = [];
  let end = start;
  while (end >= 0 && !walked.has(end >> 1)) {
    walked.add(end >> 1);
    const line = lines[end >> 1] as OpenLine;
    const ahead = end & 1 ? turnedRound(line) : line;
    const [first, ...rest] = ahead.vertices.slice(0, -1) as [Vertex, ...Vertex[]];
    vertices.push({ ...ends.meetingOf(end), bulge: first.bulge }, ...rest);
    end = ends.partnerOf(end ^ 1);
  }
  return vertices;
}
