import { forEachClosePair } from './close-edges.ts';
import type { Edge } from './edge.ts';
import { boxAround, boxOfEdge } from './edge-box.ts';
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
  const placed = region.map(placedEdges);
  const meetings = meetingFaults(placed.flat());
  const flat = placed.flatMap((edges, i) => (meetings.some((m) => crossesItself(m, i)) ? [] : flatFaults(edges)));
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
  readonly index: number;
  /** How many edges its loop has. */
  readonly count: number;
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
  const repeats = vertices.flatMap((vertex, i) => {
    if (i === 0 || !isSame(vertex, vertices[i - 1] as Vertex)) return [];
    return [ownFault('zero-length-edge', index, i, vertex)];
  });
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
function placedEdges(loop: Loop, index: number): PlacedEdge[] {
  const edges = edgesOf(loop.kind === 'path' ? withoutRepeats(loop) : loop);
  const enclosing = edges.length > 2 || edges.some(({ kind }) => kind === 'arc') ? edges : [];
  return enclosing.map((edge, i) => ({ edge, loop: index, index: i, count: edges.length }));
}

/** A vertex that stands where the next one does starts no edge. */
const withoutRepeats = ({ vertices }: PathLoop): PathLoop => ({
  kind: 'path',
  vertices: vertices.filter((vertex, i) => !isSame(vertex, vertices[(i + 1) % vertices.length] as Vertex)),
});

function meetingFaults(placed: readonly PlacedEdge[]): LoopFault[] {
  const edges = placed.map(({ edge }) => edge);
  const toleranceMm = touchingFraction * extentMm(edges);
  const faults = new Map<string, LoopFault>();
  const finished = forEachClosePair(edges, toleranceMm, mostTests, (i, j) => {
    const [e, f] = [placed[Math.max(i, j)] as PlacedEdge, placed[Math.min(i, j)] as PlacedEdge];
    const meeting = meetingOfPlaced(e, f, toleranceMm);
    if (meeting !== null) keepGravest(faults, placeKey(e, f, meeting), meetingFault(e, f, meeting));
    return faults.size < mostMeetings;
  });
  const [first] = placed;
  if (first === undefined || finished || faults.size > 0) return [...faults.values()];
  return [ownFault('too-tangled', first.loop, null, first.edge.a)];
}

/** How far edges reach from the origin. */
function extentMm(edges: readonly Edge[]): number {
  const { minX, minY, maxX, maxY } = boxAround(edges.map(boxOfEdge));
  return edges.length === 0 ? 0 : Math.max(-minX, -minY, maxX, maxY);
}

/** Four edges meet where an outline comes to a vertex again: one place, one fault. */
const placeKey = (e: PlacedEdge, f: PlacedEdge, { at }: Meeting): string => `${e.loop} ${f.loop} ${at.x} ${at.y}`;

function keepGravest(faults: Map<string, LoopFault>, key: string, fault: LoopFault): void {
  const known = faults.get(key);
  if (known === undefined || gravity(fault) > gravity(known)) faults.set(key, fault);
}

const gravity = ({ kind }: LoopFault): number => ['touches', 'repeated-vertex', 'overlaps', 'crosses'].indexOf(kind);

function meetingOfPlaced(e: PlacedEdge, f: PlacedEdge, toleranceMm: number): Meeting | null {
  if (e.loop === f.loop && isNext(f, e)) return meetingOfNeighbours(f.edge, e.edge, toleranceMm);
  if (e.loop === f.loop && isNext(e, f)) return meetingOfNeighbours(e.edge, f.edge, toleranceMm);
  return meetingOf(e.edge, f.edge, toleranceMm);
}

const isNext = (e: PlacedEdge, f: PlacedEdge): boolean => f.index === (e.index + 1) % e.count;

function meetingFault(e: PlacedEdge, f: PlacedEdge, { kind, at }: Meeting): LoopFault {
  const isVertexOf = ({ edge }: PlacedEdge): boolean => isSame(edge.a, at) || isSame(edge.b, at);
  const again = kind === 'touches' && e.loop === f.loop && isVertexOf(e) && isVertexOf(f);
  return { kind: again ? 'repeated-vertex' : kind, loop: e.loop, otherLoop: f.loop, vertex: null, at };
}

const crossesItself = ({ kind, loop, otherLoop }: LoopFault, index: number): boolean =>
  kind === 'crosses' && loop === index && otherLoop === index;

/** A loop is flat that encloses no more than the rounding of adding it up. */
function flatFaults(edges: readonly PlacedEdge[]): LoopFault[] {
  const [first] = edges;
  if (first === undefined) return [];
  let [twice, terms] = [0, 0];
  for (const { edge } of edges) {
    const [a, b] = [sub(edge.a, first.edge.a), sub(edge.b, first.edge.a)];
    const bow = edge.kind === 'arc' ? edge.radius ** 2 * (edge.sweepRad - Math.sin(edge.sweepRad)) : 0;
    twice += cross(a, b) + bow;
    terms += Math.abs(a.x * b.y) + Math.abs(a.y * b.x) + Math.abs(bow);
  }
  return Math.abs(twice) <= 1e-14 * terms ? [ownFault('no-area', first.loop, null, first.edge.a)] : [];
}
