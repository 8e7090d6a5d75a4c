import { type ArcEdge, type Edge, pointOnEdge } from '../../geometry/plane/edge.ts';
import type { Box } from '../../geometry/plane/edge-box.ts';
import { edgesOf, type Loop } from '../../geometry/plane/loop.ts';
import { add, length, scale, sub, type Vec, vec } from '../../geometry/plane/vec.ts';
import { hatchSegments } from '../scene/hatch.ts';
import type { ArrowMark, Mark, TextMark } from '../scene/scene.ts';
import type { Style } from '../scene/styles.ts';
import { number } from './svg-paint.ts';

/** An SVG element: a file writes it out, a page makes it. */
export interface SvgNode {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly (SvgNode | string)[];
}

export const node = (
  tag: string,
  attributes: Readonly<Record<string, string>>,
  ...children: readonly (SvgNode | string)[]
): SvgNode => ({ tag, attributes, children });

/** How the marks of one layer of a view come onto the sheet. */
export interface Placing {
  /** Where a point of the view is in SVG, whose y runs down. */
  readonly place: (p: Vec) => Vec;
  readonly scale: number;
  readonly penMm: number;
  readonly style: Style;
  /** The room that hatching leaves to words, in the view's frame. */
  readonly words?: readonly Box[];
  /** Colour of the paper, for the rim of letters. */
  readonly paper: string;
}

/** Length of an arrow head and half its width, in pens. */
const arrowHead = { longPens: 4.5, halfPens: 1.4 };

/** A mark as SVG elements, true to scale, arcs as arcs; line and fill come from the group they stand in. */
export function markNodes(mark: Mark, placing: Placing): SvgNode[] {
  const { place } = placing;
  switch (mark.kind) {
    case 'outline':
      return [outlineNode(mark.loops, placing)];
    case 'run':
      return [path(edgesPath(mark.edges, placing), { fill: 'none' })];
    case 'polyline':
      return [path(`M${mark.points.map((p) => pair(place(p))).join('L')}`, { fill: 'none' })];
    case 'hatch': {
      const lines = hatchSegments(mark.loops, mark.angleRad, mark.pitchMm / placing.scale, placing.words);
      return [path(lines.map(([a, b]) => `M${pair(place(a))}L${pair(place(b))}`).join(''), { fill: 'none' })];
    }
    case 'arrow':
      return arrowNodes(mark, placing);
    case 'text':
      return [textNode(mark, placing)];
  }
}

const path = (d: string, attributes: Readonly<Record<string, string>> = {}): SvgNode =>
  node('path', { ...attributes, d });

export const circleNode = (centre: Vec, radius: number): SvgNode =>
  node('circle', { cx: number(centre.x), cy: number(centre.y), r: number(radius) });

function outlineNode(loops: readonly Loop[], placing: Placing): SvgNode {
  const [only] = loops;
  if (loops.length === 1 && only?.kind === 'circle')
    return circleNode(placing.place(only.centre), only.radius * placing.scale);
  return path(loops.map((loop) => `${edgesPath(edgesOf(loop), placing)}Z`).join(''));
}

function edgesPath(edges: readonly Edge[], placing: Placing): string {
  const [first] = edges;
  if (first === undefined) return '';
  const steps = edges.map((edge) =>
    edge.kind === 'line' ? `L${pair(placing.place(edge.b))}` : arcPath(edge, placing),
  );
  return `M${pair(placing.place(first.a))}${steps.join('')}`;
}

/** More than half a circle goes as two arcs: a whole one has no direction, and a near-whole one a poor centre. */
function arcPath(arc: ArcEdge, { place, scale }: Placing): string {
  const radius = number(arc.radius * scale);
  // y runs down in the file, so anticlockwise is its sweep 0
  const sweep = arc.sweepRad > 0 ? 0 : 1;
  const stops = Math.abs(arc.sweepRad) > Math.PI ? [pointOnEdge(arc, 0.5), arc.b] : [arc.b];
  return stops.map((stop) => `A${radius} ${radius} 0 0 ${sweep} ${pair(place(stop))}`).join('');
}

function arrowNodes({ from, to, heads }: ArrowMark, { place, penMm }: Placing): SvgNode[] {
  const [a, b] = [place(from), place(to)];
  const points = [headPoints(a, b, penMm), ...(heads === 'both' ? [headPoints(b, a, penMm)] : [])];
  return [
    path(`M${pair(a)}L${pair(b)}`, { fill: 'none' }),
    ...points.map((head) => path(`M${head.map(pair).join('L')}Z`, { stroke: 'none' })),
  ];
}

/** A filled head at `b`, smaller where the arrow is too short for it. */
export function headPoints(a: Vec, b: Vec, penMm: number): Vec[] {
  const span = length(sub(b, a));
  if (span === 0) return [b];
  const along = scale(sub(b, a), 1 / span);
  const long = Math.min(arrowHead.longPens * penMm, 0.45 * span);
  const half = (long * arrowHead.halfPens) / arrowHead.longPens;
  const base = add(b, scale(along, -long));
  return [b, add(base, vec(-along.y * half, along.x * half)), add(base, vec(along.y * half, -along.x * half))];
}

/** Letters have a rim of paper, so that they stay legible where they cross a line. */
function textNode({ at, text, sizeMm, anchor, bold }: TextMark, { place, style, paper }: Placing): SvgNode {
  const { x, y } = place(at);
  const attributes = {
    x: number(x),
    y: number(y),
    'font-size': number(sizeMm),
    ...(anchor === 'start' ? {} : { 'text-anchor': anchor }),
    ...(bold ? { 'font-weight': 'bold' } : {}),
    ...(style.slanted ? { 'font-style': 'italic' } : {}),
    stroke: paper,
    'stroke-width': number(0.2 * sizeMm),
    'stroke-linejoin': 'round',
    'paint-order': 'stroke',
  };
  return node('text', attributes, text);
}

const pair = ({ x, y }: Vec): string => `${number(x)},${number(y)}`;
