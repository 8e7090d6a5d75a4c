import type { Element } from '@xmldom/xmldom';
import type { Vertex } from '../../geometry/plane/loop.ts';
import { closedRun, ellipsePart, mappedShape, openRun, type Shape } from '../outlines/shape.ts';
import { line, strokesThrough } from '../outlines/stroke.ts';
import { affine, scaled } from './affine.ts';
import { pathShapes } from './svg-path.ts';
import { numbersIn } from './svg-transform.ts';

/** What a shape element draws in its own user units; or in a few words what is wrong with it. */
type ElementReading = readonly Shape[] | string;

type Reader = (element: Element) => ElementReading;

/** What a shape element draws, or what is wrong with it; null for an element of another kind. */
export const readShapes = (element: Element): ElementReading | null =>
  readers.get(element.localName ?? '')?.(element) ?? null;

const readers: ReadonlyMap<string, Reader> = new Map<string, Reader>([
  ['path', (element) => pathShapes(element.getAttribute('d') ?? '')],
  ['rect', rect],
  ['circle', (element) => withLengths(element, ['cx', 'cy', 'r'], (cx, cy, r) => round(cx, cy, r, r))],
  ['ellipse', (element) => withLengths(element, ['cx', 'cy', 'rx', 'ry'], round)],
  ['line', (element) => withLengths(element, ['x1', 'y1', 'x2', 'y2'], straight)],
  ['polyline', (element) => corners(element, false)],
  ['polygon', (element) => corners(element, true)],
]);

/** A plain length of an element, 0 where it has none; NaN where it is no number of user units. */
export function lengthOf(element: Element, name: string): number {
  const text = (element.getAttribute(name) ?? '0').trim().replace(/px$/, '');
  return text === '' ? 0 : Number(text);
}

function withLengths(
  element: Element,
  names: readonly string[],
  draw: (...lengths: number[]) => readonly Shape[],
): ElementReading {
  const lengths = names.map((name) => lengthOf(element, name));
  const wrong = names.find((_, i) => !Number.isFinite(lengths[i]));
  return wrong === undefined ? draw(...lengths) : `${wrong}="${element.getAttribute(wrong)}", no plain number`;
}

function round(cx = 0, cy = 0, rx = 0, ry = 0): readonly Shape[] {
  if (!(rx > 0 && ry > 0)) return [];
  if (rx === ry) return [{ kind: 'circle', centre: { x: cx, y: cy }, radius: rx }];
  return [closedRun(ellipsePart(affine(rx, 0, 0, ry, cx, cy), 0, 2 * Math.PI))];
}

const straight = (x1 = 0, y1 = 0, x2 = 0, y2 = 0): readonly Shape[] => [
  openRun([line({ x: x1, y: y1 }, { x: x2, y: y2 })]),
];

function corners(element: Element, closed: boolean): ElementReading {
  const numbers = numbersIn(element.getAttribute('points') ?? '');
  if (numbers === null || numbers.length % 2 !== 0) return 'points that are no list of x and y';
  const vertices: Vertex[] = [];
  for (let i = 0; i < numbers.length; i += 2) {
    vertices.push({ x: numbers[i] as number, y: numbers[i + 1] as number, bulge: 0 });
  }
  const strokes = strokesThrough(vertices, closed);
  return [closed ? closedRun(strokes) : openRun(strokes)];
}

/** A rectangle with its corners rounded by rx and ry: one stands for both, and neither exceeds half a side. */
function rect(element: Element): ElementReading {
  return withLengths(
    element,
    ['x', 'y', 'width', 'height', 'rx', 'ry'],
    (x = 0, y = 0, width = 0, height = 0, a = 0, b = 0) => {
      if (!(width > 0 && height > 0)) return [];
      const rx = Math.min(element.hasAttribute('rx') ? a : b, width / 2);
      const ry = Math.min(element.hasAttribute('ry') ? b : a, height / 2);
      if (!(rx > 0 && ry > 0)) return [rounded(x, y, width, height, 0)];
      // drawn where both radii are 1, then stretched
      return [mappedShape(scaled(rx, ry), rounded(x / rx, y / ry, width / rx, height / ry, 1))];
    },
  );
}

function rounded(x: number, y: number, width: number, height: number, radius: number): Shape {
  const [right, bottom] = [x + width, y + height];
  const bulge = radius > 0 ? Math.tan(Math.PI / 8) : 0;
  const vertices: Vertex[] = [
    { x: x + radius, y, bulge: 0 },
    { x: right - radius, y, bulge },
    { x: right, y: y + radius, bulge: 0 },
    { x: right, y: bottom - radius, bulge },
    { x: right - radius, y: bottom, bulge: 0 },
    { x: x + radius, y: bottom, bulge },
    { x, y: bottom - radius, bulge: 0 },
    { x, y: y + radius, bulge },
  ];
  return closedRun(strokesThrough(vertices, true));
}
