import type { Element } from '@xmldom/xmldom';
import { shown } from '../../files/shown.ts';
import { type DrawingItem, fault, step, unread } from '../gathered.ts';
import { mappedShape } from '../outlines/shape.ts';
import { type Affine, chained, moved } from './affine.ts';
import { lengthOf, readShapes } from './svg-shapes.ts';
import { innerScale, viewBoxOf } from './svg-size.ts';
import { transformOf } from './svg-transform.ts';

/** Where the walk stands. */
interface Level {
  readonly map: Affine;
  readonly layer: LayerName;
  readonly depth: number;
}

/** A marked layer goes before any group's id, the inner before the outer; of ids the outermost counts. */
interface LayerName {
  readonly name: string;
  readonly from: 'nothing' | 'id' | 'mark';
}

/** What is never drawn where it stands. */
const silent = new Set(
  (
    'defs symbol clipPath mask marker pattern linearGradient radialGradient filter metadata title desc style script ' +
    'namedview animate animateTransform set'
  ).split(' '),
);
const containers = new Set(['g', 'a', 'switch']);

const deepest = 256;

/** All that an SVG root draws; `map` takes its user units to the drawing's. */
export function* drawnInSvg(root: Element, map: Affine): Generator<DrawingItem> {
  const byId = elementsById(root);
  yield* drawnInside(byId, root, { map, layer: { name: 'outline', from: 'nothing' }, depth: 0 });
}

type ById = ReadonlyMap<string, Element>;

function* drawnInside(byId: ById, element: Element, level: Level): Generator<DrawingItem> {
  for (const child of elementsIn(element)) yield* drawnBy(byId, child, level);
}

function* drawnBy(byId: ById, element: Element, around: Level): Generator<DrawingItem> {
  const name = element.localName ?? '';
  if (silent.has(name)) return;
  yield step;
  const transform = element.getAttribute('transform') ?? '';
  const map = transformOf(transform);
  if (isHidden(element)) yield unread('hidden');
  else if (around.depth > deepest) {
    yield fault(elementInFile(element), `elements more than ${deepest} deep`, 'fewer, and no reference to itself');
  } else if (map === null) {
    yield fault(elementInFile(element), `transform ${shown(transform)}`, 'a list of transforms');
  } else {
    if (property(element, 'transform') !== transform.trim()) yield unread('transform in a style');
    const level = { map: chained(around.map, map), layer: layerOf(element, around.layer), depth: around.depth + 1 };
    yield* drawnAt(byId, element, level);
  }
}

function* drawnAt(byId: ById, element: Element, level: Level): Generator<DrawingItem> {
  const name = element.localName ?? '';
  if (containers.has(name)) yield* drawnInside(byId, element, level);
  else if (name === 'svg') yield* picture(byId, element, element, level);
  else if (name === 'use') yield* reference(byId, element, level);
  else yield* shapesOf(element, level);
}

function* shapesOf(element: Element, { map, layer }: Level): Generator<DrawingItem> {
  const place = elementInFile(element);
  const drawn = readShapes(element);
  if (drawn === null) yield unread(element.localName ?? '');
  else if (typeof drawn === 'string') yield fault(place, drawn, 'a shape that can be drawn');
  else for (const shape of drawn) yield { kind: 'shape', shape: mappedShape(map, shape), layer: layer.name, place };
}

/** What an inner svg or a referred symbol holds, fitted into the width and height that `frame` states. */
function* picture(byId: ById, frame: Element, content: Element, level: Level): Generator<DrawingItem> {
  const box = viewBoxOf(content);
  const [x, y, width, height] = ['x', 'y', 'width', 'height'].map((name) => lengthOf(frame, name)) as Four;
  if (box !== null && !(width > 0 && height > 0)) {
    yield unread('picture in a picture without a size of its own');
    return;
  }
  const corner = moved({ x: -(box?.x ?? 0), y: -(box?.y ?? 0) });
  const map = chained(level.map, moved({ x, y }), innerScale(content, width, height), corner);
  yield* drawnInside(byId, content, { ...level, map });
}

function* reference(byId: ById, element: Element, level: Level): Generator<DrawingItem> {
  const href = element.getAttribute('href') ?? element.getAttribute('xlink:href') ?? '';
  const target = href.startsWith('#') ? byId.get(href.slice(1)) : undefined;
  if (target === undefined) {
    yield fault(elementInFile(element), `a reference to ${shown(href)}`, 'an id that the file holds');
  } else if (target.localName === 'symbol') {
    yield* picture(byId, element, target, level);
  } else {
    const map = chained(level.map, moved({ x: lengthOf(element, 'x'), y: lengthOf(element, 'y') }));
    yield* drawnBy(byId, target, { ...level, map });
  }
}

type Four = [number, number, number, number];

function* elementsIn(element: Element): Generator<Element> {
  for (let node = element.firstChild; node !== null; node = node.nextSibling) {
    if (node.nodeType === 1) yield node as Element;
  }
}

function elementsById(root: Element): Map<string, Element> {
  const byId = new Map<string, Element>();
  for (const element of root.getElementsByTagName('*')) {
    const id = element.getAttribute('id');
    if (id !== null && !byId.has(id)) byId.set(id, element);
  }
  return byId;
}

/** A property that an element sets, its style going before its attribute. */
function property(element: Element, name: string): string {
  const inStyle = new RegExp(`(?:^|;)\\s*${name}\\s*:\\s*([^;!]*)`).exec(element.getAttribute('style') ?? '')?.[1];
  return (inStyle ?? element.getAttribute(name) ?? '').trim();
}

const isHidden = (element: Element): boolean =>
  property(element, 'display') === 'none' || /^(hidden|collapse)$/.test(property(element, 'visibility'));

function layerOf(element: Element, around: LayerName): LayerName {
  if (element.localName !== 'g') return around;
  const label = element.getAttribute('inkscape:label');
  if (element.getAttribute('inkscape:groupmode') === 'layer' && label) return { name: label, from: 'mark' };
  const id = element.getAttribute('id');
  return id && around.from === 'nothing' ? { name: id, from: 'id' } : around;
}

function elementInFile(element: Element): string {
  const id = element.getAttribute('id');
  return `line ${element.lineNumber}, <${element.localName}${id === null ? '' : ` id="${id}"`}>`;
}
