import { regionContains } from '../../geometry/motion/containment.ts';
import { buildOutlineTree } from '../../geometry/motion/outline-tree.ts';
import { type Edge, pointOnEdge } from '../../geometry/plane/edge.ts';
import { type Box, boxesMeet, boxOfEdge } from '../../geometry/plane/edge-box.ts';
import { edgesOfRegion, type Region } from '../../geometry/plane/loop.ts';
import { crossingsAlong } from './edge-crossings.ts';

export interface EdgeVisibility {
  readonly seen: readonly Edge[];
  readonly hidden: readonly Edge[];
}

/** Above so many pairs of edges a line is told by its middle alone, so that a scanned outline draws in no time. */
const mostPairs = 4e6;

/** The edges of a region parted into those one sees and those behind any of the regions in front. */
export function partHidden(region: Region, inFront: readonly Region[]): EdgeVisibility {
  let parted: EdgeVisibility = { seen: edgesOfRegion(region), hidden: [] };
  for (const cover of inFront) {
    const { seen, hidden } = partBehind(parted.seen, cover);
    parted = { seen, hidden: [...parted.hidden, ...hidden] };
  }
  return parted;
}

function partBehind(edges: readonly Edge[], cover: Region): EdgeVisibility {
  const tree = buildOutlineTree(cover);
  const covering = edgesOfRegion(cover).map((edge) => ({ edge, box: boxOfEdge(edge) }));
  const pieces = edges.length * covering.length > mostPairs ? edges : edges.flatMap((edge) => piecesOf(edge, covering));
  const isHidden = (piece: Edge): boolean => {
    const middle = pointOnEdge(piece, 0.5);
    return regionContains(tree, middle.x, middle.y);
  };
  return { seen: pieces.filter((piece) => !isHidden(piece)), hidden: pieces.filter(isHidden) };
}

function piecesOf(edge: Edge, covering: readonly { readonly edge: Edge; readonly box: Box }[]): Edge[] {
  const box = boxOfEdge(edge);
  const stops = covering
    .filter((cover) => boxesMeet(box, cover.box, 0))
    .flatMap((cover) => crossingsAlong(edge, cover.edge))
    .sort((a, b) => a - b);
  const ends = [0, ...stops, 1];
  return ends.slice(1).flatMap((to, i) => {
    const from = ends[i] as number;
    return to - from < 1e-9 ? [] : [pieceOf(edge, from, to)];
  });
}

function pieceOf(edge: Edge, from: number, to: number): Edge {
  if (from === 0 && to === 1) return edge;
  const a = from === 0 ? edge.a : pointOnEdge(edge, from);
  const b = to === 1 ? edge.b : pointOnEdge(edge, to);
  if (edge.kind === 'line') return { kind: 'line', a, b };
  return { ...edge, a, b, startRad: edge.startRad + edge.sweepRad * from, sweepRad: edge.sweepRad * (to - from) };
}

/** Edges gathered into runs that follow one another, so that dashes do not start afresh at every vertex. */
export function runsOf(edges: readonly Edge[]): Edge[][] {
  const runs: Edge[][] = [];
  for (const edge of edges) {
    const run = runs.at(-1);
    const end = run?.at(-1)?.b;
    if (run !== undefined && end !== undefined && end.x === edge.a.x && end.y === edge.a.y) run.push(edge);
    else runs.push([edge]);
  }
  return runs;
}
