import { forEachClosePair } from './close-edges.ts';
import type { Edge } from './edge.ts';
import { boxAround, boxAroundEdges } from './edge-box.ts';
import { type Meeting, meetingOf, meetingOfNeighbours } from './edge-meeting.ts';
import { edgesOf, type Loop, type PathLoop, type Region, type Vertex } from './loop.ts';
import { cross, sub, type Vec } from './vec.ts';

export type FaultKind =
  | 'closed-twice'
  | 'zero-length-edge'
  | 'repeated-vertex'
  | 'too-few-vertices'
  | 'no-area'
  | 'crosses'
  | 'touches'
  | 'overlaps'
  | 'too-tangled';

/** What keeps a loop from being an outline, and where (mm); `otherLoop` is `loop` where it is at odds with itself. */
export interface LoopFault {
  readonly kind: FaultKind;
  readonly loop: number;
  readonly otherLoop: number;
  /** The vertex at fault; null where an edge, or the loop as a whole, is. */
  readonly vertex: number | null;
  readonly at: Vec;
}

/** Arcs that come this near, as a fraction of the outlines' extent, count as touching; lines need no such allowance. */
const touchingFraction = 1e-9;

/** One tangled outline must not bury the rest of what is to be said. */
const mostMeetings = 20;

/** Boxes compared before giving up: seconds. Real outlines need some ten to an edge. */
const mostTests = 2e8;

/**
 * Everything that keeps a region from being a sound solid: edges without length, vertices met again, loops that
 * enclose no area, that cross, touch or run along themselves or one another. Of meetings, the first twenty places.
 */
export function loopFaults(region: Region): readonly LoopFault[] {
  const outlines = region.map(enclosingEdges);
  const meetings = meetingFaults(outlines);
  const flat = outlines.flatMap((edges, i) => (meetings.some((m) => crossesItself(m, i)) ? [] : flatFaults(edges, i)));
  const isFlat = (index: number): boolean => flat.some(({ loop }) => loop === index);
  return [
    ...region.flatMap(vertexFaults),
    ...flat,
    ...meetings.filter(({ loop, otherLoop }) => loop !== otherLoop || !isFlat(loop)),
  ];
}

interface PlacedEdge {
  readonly edge: Edge;
  readonly loop: number;
}

const ownFault = (kind: FaultKind, loop: number, vertex: number | null, at: Vec): LoopFault => ({
  kind,
  loop,
  otherLoop: loop,
  vertex,
  at,
});

const isSame = (a: Vec, b: Vec): boolean => a.x === b.x && a.y === b.y;

function vertexFaults(loop: Loop, index: number): LoopFault[] {
  if (loop.kind === 'circle') return [];
  const { vertices } = loop;
  const repeats: LoopFault[] = [];
  for (let i = 1; i < vertices.length; i++) {
    const vertex = vertices[i] as Vertex;
    if (isSame(vertex, vertices[i - 1] as Vertex)) repeats.push(ownFault('zero-length-edge', index, i, vertex));
  }
  const [first] = vertices;
  const last = vertices.at(-1);
  if (first === undefined || last === undefined) return [];
  if (vertices.length > 2 && isSame(first, last)) {
    repeats.push(ownFault('closed-twice', index, vertices.length - 1, last));
  }
  return repeats.length === 0 && isTooShort(vertices) ? [ownFault('too-few-vertices', index, null, first)] : repeats;
}

const isTooShort = (vertices: readonly Vertex[]): boolean =>
  vertices.length < 2 || (vertices.length === 2 && vertices.every(({ bulge }) => bulge === 0));

/** The edges of a loop that have a length; none where they are too few to enclose anything. */
function enclosingEdges(loop: Loop): readonly Edge[] {
  const edges = edgesOf(loop.kind === 'path' ? withoutRepeats(loop) : loop);
  return edges.length > 2 || edges.some(({ kind }) => kind === 'arc') ? edges : [];
}

/** A vertex that stands where the next one does starts no edge. */
function withoutRepeats(loop: PathLoop): PathLoop {
  const { vertices } = loop;
  const repeats = (vertex: Vertex, i: number): boolean => isSame(vertex, vertices[(i + 1) % vertices.length] as Vertex);
  return vertices.some(repeats) ? { kind: 'path', vertices: vertices.filter((v, i) => !repeats(v, i)) } : loop;
}

function meetingFaults(outlines: readonly (readonly Edge[])[]): LoopFault[] {
  const toleranceMm = touchingFraction * extentMm(outlines);
  const all = numbered(outlines);
  const faults = new Map<string, LoopFault>();
  const finished = forEachClosePair(outlines, toleranceMm, mostTests, (i, j) => {
    const meeting = meetingOfPlaced(all, Math.max(i, j), Math.min(i, j), toleranceMm);
    if (meeting === null) return true;
    const [e, f] = [placeOf(all, Math.max(i, j)), placeOf(all, Math.min(i, j))];
    keepGravest(faults, placeKey(e, f, meeting), meetingFault(e, f, meeting));
    return faults.size < mostMeetings;
  });
  const first = outlines.findIndex((edges) => edges.length > 0);
  const [edge] = outlines[first] ?? [];
  if (edge === undefined || finished || faults.size > 0) return [...faults.values()];
  return [ownFault('too-tangled', first, null, edge.a)];
}

/** Edges by their number through all outlines, with the outline of each, and of each outline its first and its last. */
interface NumberedEdges {
  readonly edges: readonly Edge[];
  readonly loops: Int32Array;
  readonly firsts: Int32Array;
  readonly lasts: Int32Array;
}

function numbered(outlines: readonly (readonly Edge[])[]): NumberedEdges {
  const edges = outlines.flat();
  const loops = new Int32Array(edges.length);
  const firsts = new Int32Array(outlines.length);
  const lasts = new Int32Array(outlines.length);
  let start = 0;
  for (const [loop, { length }] of outlines.entries()) {
    firsts[loop] = start;
    loops.fill(loop, start, start + length);
    start += length;
    lasts[loop] = start - 1;
  }
  return { edges, loops, firsts, lasts };
}

const placeOf = ({ edges, loops }: NumberedEdges, i: number): PlacedEdge => ({
  edge: edges[i] as Edge,
  loop: loops[i] as number,
});

/** How far edges reach from the origin. */
function extentMm(outlines: readonly (readonly Edge[])[]): number {
  const { minX, minY, maxX, maxY } = boxAround(outlines.map(boxAroundEdges));
  return outlines.every(({ length }) => length === 0) ? 0 : Math.max(-minX, -minY, maxX, maxY);
}

/** Four edges meet where an outline comes to a vertex again: one place, one fault. */
const placeKey = (e: PlacedEdge, f: PlacedEdge, { at }: Meeting): string => `${e.loop} ${f.loop} ${at.x} ${at.y}`;

function keepGravest(faults: Map<string, LoopFault>, key: string, fault: LoopFault): void {
  const known = faults.get(key);
  if (known === undefined || gravity(fault) > gravity(known)) faults.set(key, fault);
}

const gravity = ({ kind }: LoopFault): number => ['touches', 'repeated-vertex', 'overlaps', 'crosses'].indexOf(kind);

function meetingOfPlaced(all: NumberedEdges, i: number, j: number, toleranceMm: number): Meeting | null {
  const [e, f] = [all.edges[i] as Edge, all.edges[j] as Edge];
  if (isNext(all, j, i)) return meetingOfNeighbours(f, e, toleranceMm);
  if (isNext(all, i, j)) return meetingOfNeighbours(e, f, toleranceMm);
  return meetingOf(e, f, toleranceMm);
}

/** Whether the edge numbered `next` starts where the one numbered `i` ends. */
function isNext({ loops, firsts, lasts }: NumberedEdges, i: number, next: number): boolean {
  const loop = loops[i] as number;
  return i === lasts[loop] ? next === firsts[loop] : next === i + 1;
}

function meetingFault(e: PlacedEdge, f: PlacedEdge, { kind, at }: Meeting): LoopFault {
  const isVertexOf = ({ edge }: PlacedEdge): boolean => isSame(edge.a, at) || isSame(edge.b, at);
  const again = kind === 'touches' && e.loop === f.loop && isVertexOf(e) && isVertexOf(f);
  return { kind: again ? 'repeated-vertex' : kind, loop: e.loop, otherLoop: f.loop, vertex: null, at };
}

const crossesItself = ({ kind, loop, otherLoop }: LoopFault, index: number): boolean =>
  kind === 'crosses' && loop === index && otherLoop === index;

/** A loop is flat that encloses no more than the rounding of adding it up. */
function flatFaults(edges: readonly Edge[], loop: number): LoopFault[] {
  const [first] = edges;
  if (first === undefined) return [];
  let [twice, terms] = [0, 0];
  for (const edge of edges) {
    const [a, b] = [sub(edge.a, first.a), sub(edge.b, first.a)];
    const bow = edge.kind === 'arc' ? edge.radius ** 2 * (edge.sweepRad - Math.sin(edge.sweepRad)) : 0;
    twice += cross(a, b) + bow;
    terms += Math.abs(a.x * b.y) + Math.abs(a.y * b.x) + Math.abs(bow);
  }
  return Math.abs(twice) <= 1e-14 * terms ? [ownFault('no-area', loop, null, first.a)] : [];
}
