import { bulgeOf, type Edge } from '../../geometry/plane/edge.ts';
import { boxOfEdge } from '../../geometry/plane/edge-box.ts';
import { edgesOf, type Loop, type Vertex } from '../../geometry/plane/loop.ts';
import type { Vec } from '../../geometry/plane/vec.ts';

/** A shape of a DXF drawing, mm. */
export type DxfShape =
  | { readonly kind: 'loop'; readonly loop: Loop }
  /** Edges that follow one another, not closed. */
  | { readonly kind: 'run'; readonly edges: readonly Edge[] }
  | { readonly kind: 'line'; readonly a: Vec; readonly b: Vec }
  | { readonly kind: 'text'; readonly at: Vec; readonly text: string; readonly heightMm: number };

/** A layer: capitals, digits, `-`, `_` and `$` alone, 31 letters at most, as release 12 has it. */
export interface DxfLayer {
  readonly name: string;
  /** Colour by number: 1 red, 2 yellow, 3 green, 4 cyan, 5 blue, 6 magenta, 7 black or white. */
  readonly colour: number;
  readonly shapes: readonly DxfShape[];
}

/**
 * An ASCII DXF file of release 12 (AC1009), in mm: LINE, CIRCLE, TEXT, and POLYLINE with bulges for whole outlines. That
 * release has no variable for units and needs no handles, so the comment at its head says mm, and a text and a bar of
 * known length should. Group codes are from memory of the published DXF reference.
 */
export function dxfOf(layers: readonly DxfLayer[]): string {
  const shapes = layers.flatMap((layer) => layer.shapes.map((shape) => ({ name: layerName(layer.name), shape })));
  return [
    tag(999, 'Fettle: all lengths in millimetres, drawn 1 to 1'),
    section('HEADER', [tag(9, '$ACADVER'), tag(1, 'AC1009'), ...extents(layers)]),
    section('TABLES', [lineTypes, layerTable(layers)]),
    section(
      'ENTITIES',
      shapes.map(({ name, shape }) => entity(name, shape)),
    ),
    tag(0, 'EOF'),
  ].join('');
}

const tag = (code: number, value: string | number): string => `${code}\n${value}\n`;

const section = (name: string, content: readonly string[]): string =>
  [tag(0, 'SECTION'), tag(2, name), ...content, tag(0, 'ENDSEC')].join('');

const lineTypes = [
  tag(0, 'TABLE') + tag(2, 'LTYPE') + tag(70, 1),
  tag(0, 'LTYPE') +
    tag(2, 'CONTINUOUS') +
    tag(70, 0) +
    tag(3, 'Solid line') +
    tag(72, 65) +
    tag(73, 0) +
    tag(40, '0.0'),
  tag(0, 'ENDTAB'),
].join('');

const layerTable = (layers: readonly DxfLayer[]): string =>
  [
    tag(0, 'TABLE') + tag(2, 'LAYER') + tag(70, layers.length),
    ...layers.map(
      ({ name, colour }) =>
        tag(0, 'LAYER') + tag(2, layerName(name)) + tag(70, 0) + tag(62, colour) + tag(6, 'CONTINUOUS'),
    ),
    tag(0, 'ENDTAB'),
  ].join('');

const longestName = 31;

const layerName = (name: string): string =>
  name
    .toUpperCase()
    .replaceAll(/[^A-Z0-9$_-]/g, '-')
    .slice(0, longestName);

function entity(layer: string, shape: DxfShape): string {
  switch (shape.kind) {
    case 'loop':
      return outline(layer, shape.loop);
    case 'run':
      return polyline(layer, verticesOf(shape.edges), false);
    case 'line':
      return tag(0, 'LINE') + tag(8, layer) + point(10, shape.a) + point(11, shape.b);
    case 'text':
      return (
        tag(0, 'TEXT') +
        tag(8, layer) +
        point(10, shape.at) +
        tag(40, length(shape.heightMm)) +
        tag(1, plain(shape.text))
      );
  }
}

function outline(layer: string, loop: Loop): string {
  if (loop.kind === 'circle')
    return tag(0, 'CIRCLE') + tag(8, layer) + point(10, loop.centre) + tag(40, length(loop.radius));
  return polyline(layer, loop.vertices, true);
}

function polyline(layer: string, vertices: readonly Vertex[], closed: boolean): string {
  const body = vertices.map(
    (vertex) =>
      tag(0, 'VERTEX') +
      tag(8, layer) +
      point(10, vertex) +
      (vertex.bulge === 0 ? '' : tag(42, vertex.bulge.toFixed(bulgeDigits))),
  );
  const head = tag(0, 'POLYLINE') + tag(8, layer) + tag(66, 1) + point(10, { x: 0, y: 0 }) + tag(70, closed ? 1 : 0);
  return head + body.join('') + tag(0, 'SEQEND') + tag(8, layer);
}

const verticesOf = (edges: readonly Edge[]): Vertex[] => [
  ...edges.map((edge) => ({ ...edge.a, bulge: bulgeOf(edge) })),
  ...edges.slice(-1).map(({ b }) => ({ ...b, bulge: 0 })),
];

/** A bulge this fine moves no arc of a casting by a thousandth of a millimetre. */
const bulgeDigits = 10;

const point = (code: number, { x, y }: Vec): string =>
  tag(code, length(x)) + tag(code + 10, length(y)) + tag(code + 20, '0.0');

function length(mm: number): string {
  const text = mm.toFixed(6);
  return Number(text) === 0 ? '0.0' : text;
}

/** Release 12 knows ASCII, and `%%` codes for a few signs more. */
const plain = (text: string): string =>
  text
    .replaceAll('%', '%%%')
    .replaceAll('°', '%%d')
    .replaceAll('±', '%%p')
    .replaceAll('Ø', '%%c')
    .replaceAll(/[–—−]/g, '-')
    .replaceAll(/[^\x20-\x7e]/g, '?');

function extents(layers: readonly DxfLayer[]): string[] {
  const corners = layers.flatMap(({ shapes }) => shapes.flatMap(cornersOf));
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  if (corners.length === 0) return [];
  const least = (all: readonly number[]): number => all.reduce((a, b) => Math.min(a, b));
  const most = (all: readonly number[]): number => all.reduce((a, b) => Math.max(a, b));
  return [
    tag(9, '$EXTMIN') + point(10, { x: least(xs), y: least(ys) }),
    tag(9, '$EXTMAX') + point(10, { x: most(xs), y: most(ys) }),
  ];
}

function cornersOf(shape: DxfShape): Vec[] {
  switch (shape.kind) {
    case 'line':
      return [shape.a, shape.b];
    case 'text':
      return [shape.at];
    case 'loop':
      return cornersOfEdges(edgesOf(shape.loop));
    case 'run':
      return cornersOfEdges(shape.edges);
  }
}

const cornersOfEdges = (edges: readonly Edge[]): Vec[] =>
  edges.map(boxOfEdge).flatMap(({ minX, minY, maxX, maxY }) => [
    { x: minX, y: minY },
    { x: maxX, y: maxY },
  ]);
