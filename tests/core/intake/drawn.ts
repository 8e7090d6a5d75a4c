import type { Finding, Reading } from '../../../src/files/finding.ts';
import type { Loop } from '../../../src/geometry/plane/loop.ts';
import { edgesOf } from '../../../src/geometry/plane/loop.ts';
import { outlineAreaMm2 } from '../../../src/geometry/polygons/metal-on-left.ts';
import { readDxf } from '../../../src/intake/drawing/dxf.ts';
import { readSvg } from '../../../src/intake/drawing/svg.ts';
import type { Drawing } from '../../../src/intake/drawing.ts';
import { outlinesOf } from '../../../src/intake/outlines/outlines.ts';

/** Small drawings for tests, and what is read from them. */
export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A tag or several: `[code, value, code, value, …]`. */
export type Tags = readonly (number | string)[];

/** An entity by its kind and its tags, on layer 0 unless they say. */
export const entity = (kind: string, ...tags: Tags): Tags => [0, kind, 8, '0', ...tags];

export interface DxfParts {
  readonly insUnits?: number;
  readonly version?: string;
  readonly codePage?: string;
  readonly layers?: readonly Tags[];
  readonly blocks?: Readonly<Record<string, readonly Tags[]>>;
  readonly entities: readonly Tags[];
}

const section = (name: string, tags: Tags): Tags => [0, 'SECTION', 2, name, ...tags, 0, 'ENDSEC'];

/** The text of a DXF file. */
export function dxf({
  insUnits = 4,
  version = 'AC1015',
  codePage,
  layers = [],
  blocks = {},
  entities,
}: DxfParts): string {
  const tags: Tags = [
    ...section('HEADER', [
      ...[9, '$ACADVER', 1, version],
      ...(codePage === undefined ? [] : [9, '$DWGCODEPAGE', 3, codePage]),
      ...[9, '$INSUNITS', 70, insUnits],
    ]),
    ...section('TABLES', [0, 'TABLE', 2, 'LAYER', ...layers.flatMap((layer) => [0, 'LAYER', ...layer]), 0, 'ENDTAB']),
    ...section(
      'BLOCKS',
      Object.entries(blocks).flatMap(([name, inside]) => [
        ...entity('BLOCK', 2, name, ...base(name)),
        ...inside.flat(),
        0,
        'ENDBLK',
      ]),
    ),
    ...section('ENTITIES', entities.flat()),
    ...[0, 'EOF'],
  ];
  return tags.map((tag, i) => (i % 2 === 0 ? String(tag).padStart(3) : String(tag))).join('\n');
}

/** A block called `name@x,y` has its base point there. */
function base(name: string): Tags {
  const [x = '0', y = '0'] = (name.split('@')[1] ?? '0,0').split(',');
  return [10, x, 20, y];
}

export const line = (x1: number, y1: number, x2: number, y2: number, layer = '0'): Tags => [
  0,
  'LINE',
  8,
  layer,
  10,
  x1,
  20,
  y1,
  11,
  x2,
  21,
  y2,
];

export const circle = (x: number, y: number, radius: number, layer = '0', ...more: Tags): Tags => [
  0,
  'CIRCLE',
  8,
  layer,
  10,
  x,
  20,
  y,
  40,
  radius,
  ...more,
];

/** A closed LWPOLYLINE through [x, y, bulge]. */
export const polyline = (points: readonly (readonly [number, number, number?])[], ...more: Tags): Tags => [
  ...entity('LWPOLYLINE', 90, points.length, 70, 1, ...more),
  ...points.flatMap(([x, y, bulge = 0]) => [10, x, 20, y, 42, bulge]),
];

export function valueIn<T>(reading: Reading<T>): T {
  if (reading.ok) return reading.value;
  throw new Error(`refused: ${JSON.stringify(reading.findings)}`);
}

export function findingsOf(reading: Reading<unknown>): readonly Finding[] {
  if (reading.ok) throw new Error('nothing found wrong');
  return reading.findings;
}

export const dxfDrawing = (parts: DxfParts): Drawing => valueIn(readDxf('a.dxf', bytesOf(dxf(parts))));

/** What an SVG file with these elements holds, 1 mm a user unit. */
export const svgDrawing = (
  elements: string,
  attributes = 'width="100mm" height="100mm" viewBox="0 0 100 100"',
): Drawing => valueIn(readSvg('a.svg', bytesOf(svg(elements, attributes))));

export const svg = (elements: string, attributes: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape" ${attributes}>\n${elements}\n</svg>`;

/** The closed outlines of a drawing, in mm where its units are. */
export const loopsOf = (drawing: Drawing): readonly Loop[] => outlinesOf(drawing.shapes, 1, 0).loops;

export const areaOf = (loop: Loop): number => Math.abs(outlineAreaMm2(edgesOf(loop)));

export const areasOf = (drawing: Drawing): number[] => loopsOf(drawing).map(areaOf);

export function loneLoop(drawing: Drawing): Loop {
  const loops = loopsOf(drawing);
  if (loops.length !== 1) throw new Error(`${loops.length} outlines`);
  return loops[0] as Loop;
}
