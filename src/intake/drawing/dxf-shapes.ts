import type { Vertex } from '../../geometry/plane/loop.ts';
import { type Vec, vec } from '../../geometry/plane/vec.ts';
import { closedRun, ellipsePart, mappedShape, openRun, type Shape } from '../outlines/shape.ts';
import { arcStrokes, line, strokesThrough } from '../outlines/stroke.ts';
import { type Affine, affine, scaled, unmoved } from './affine.ts';
import { splineStrokes } from './dxf-spline.ts';
import { type Entity, numberOf, numbersOf } from './dxf-tags.ts';

/** A shape, or in a few words why the entity has none in the plane of the drawing. */
type ShapeReading = Shape | string;

type Reader = (entity: Entity, vertices: readonly Entity[]) => ShapeReading;

/** Heights that differ by no more than this are one. */
const sameHeight = 1e-4;

/** LINE, ELLIPSE, SPLINE and 3D POLYLINE hold the drawing's own coordinates; the rest theirs, by the extrusion. */
const readers: Readonly<Record<string, Reader>> = {
  LINE: drawnLine,
  CIRCLE: byExtrusion(circle),
  ARC: byExtrusion(arc),
  LWPOLYLINE: byExtrusion((entity) => through(lightVertices(entity), isClosed(entity))),
  POLYLINE: polyline,
  ELLIPSE: ellipse,
  SPLINE: spline,
};

/** What an entity draws, in the coordinates of the drawing or block it stands in. */
export function shapeOf(entity: Entity, vertices: readonly Entity[]): ShapeReading {
  return readers[entity.kind]?.(entity, vertices) ?? entity.kind;
}

/**
 * From an entity's own coordinates to the drawing's, by its extrusion direction: straight up leaves them, straight
 * down mirrors x (the format's arbitrary-axis rule then gives the x axis (−1, 0, 0) and the y axis (0, 1, 0));
 * null where it is tilted.
 */
export function extrusionOf(entity: Entity): Affine | null {
  const [x, y, z] = [numberOf(entity, 210), numberOf(entity, 220), numberOf(entity, 230, 1)];
  if (z === 0 || Math.hypot(x, y) > 1e-9 * Math.abs(z)) return null;
  return z > 0 ? unmoved : scaled(-1, 1);
}

function byExtrusion(read: Reader): Reader {
  return (entity, vertices) => {
    const map = extrusionOf(entity);
    if (map === null) return outOfPlane(entity);
    const shape = read(entity, vertices);
    return typeof shape === 'string' ? shape : mappedShape(map, shape);
  };
}

const outOfPlane = ({ kind }: Entity): string => `${kind} out of the drawing's plane`;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

const pointAt = (entity: Entity, code: number): Vec => vec(numberOf(entity, code), numberOf(entity, code + 10));

const isLevel = (heights: readonly number[]): boolean =>
  heights.every((height) => Math.abs(height - (heights[0] as number)) <= sameHeight);

const isClosed = (entity: Entity): boolean => (numberOf(entity, 70) & 1) === 1;

function through(vertices: readonly Vertex[], closed: boolean): Shape {
  const strokes = strokesThrough(vertices, closed);
  return closed ? closedRun(strokes) : openRun(strokes);
}

function drawnLine(entity: Entity): ShapeReading {
  if (!isLevel([numberOf(entity, 30), numberOf(entity, 31)])) return outOfPlane(entity);
  return openRun([line(pointAt(entity, 10), pointAt(entity, 11))]);
}

function circle(entity: Entity): ShapeReading {
  const radius = numberOf(entity, 40);
  return radius > 0 ? { kind: 'circle', centre: pointAt(entity, 10), radius } : 'CIRCLE of no radius';
}

/** Anticlockwise from its start angle to its end angle; the same angle twice is a whole turn. */
function arc(entity: Entity): ShapeReading {
  const [radius, from, to] = [numberOf(entity, 40), numberOf(entity, 50), numberOf(entity, 51)];
  if (!(radius > 0)) return 'ARC of no radius';
  const turn = (to - from) % 360;
  const sweep = turn > 0 ? turn : turn + 360;
  return openRun(arcStrokes(pointAt(entity, 10), radius, radians(from), radians(sweep)));
}

/** The vertices of an LWPOLYLINE: each 10 starts one, the 20 and 42 after it are its own. */
function lightVertices({ tags, from, to }: Entity): Vertex[] {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  for (let i = from; i < to; i++) {
    const value = Number(tags.values[i]);
    const last = vertices.at(-1);
    if (tags.codes[i] === 10) vertices.push({ x: value, y: 0, bulge: 0 });
    else if (last !== undefined && tags.codes[i] === 20) last.y = value;
    else if (last !== undefined && tags.codes[i] === 42) last.bulge = value;
  }
  return vertices;
}

const polylineFlags = { in3d: 8, mesh: 16, polyface: 64 } as const;
/** A vertex that only steers a fitted curve. */
const steeringVertex = 16;

function polyline(entity: Entity, children: readonly Entity[]): ShapeReading {
  const flags = numberOf(entity, 70);
  if (flags & (polylineFlags.mesh | polylineFlags.polyface)) return 'POLYLINE mesh';
  const drawn = children.filter((vertex) => (numberOf(vertex, 70) & steeringVertex) === 0);
  const vertices = drawn.map((vertex) => ({ ...pointAt(vertex, 10), bulge: numberOf(vertex, 42) }));
  if ((flags & polylineFlags.in3d) === 0) return byExtrusion(() => through(vertices, isClosed(entity)))(entity, []);
  if (!isLevel(drawn.map((vertex) => numberOf(vertex, 30)))) return outOfPlane(entity);
  return through(vertices, isClosed(entity));
}

/** The unit circle under the ellipse's two axes; the minor is the extrusion × the major, times the ratio. */
function ellipse(entity: Entity): ShapeReading {
  const up = extrusionOf(entity);
  if (up === null || Math.abs(numberOf(entity, 31)) > sameHeight) return outOfPlane(entity);
  const [centre, major] = [pointAt(entity, 10), pointAt(entity, 11)];
  const ratio = numberOf(entity, 40, 1) * up.a;
  const turn = (numberOf(entity, 42, 2 * Math.PI) - numberOf(entity, 41)) % (2 * Math.PI);
  const sweep = turn > 1e-9 ? turn : turn + 2 * Math.PI;
  const round = affine(major.x, major.y, -major.y * ratio, major.x * ratio, centre.x, centre.y);
  return openRun(ellipsePart(round, numberOf(entity, 41), Math.min(sweep, 2 * Math.PI)));
}

function spline(entity: Entity): ShapeReading {
  if (!isLevel(numbersOf(entity, 30))) return outOfPlane(entity);
  const strokes = splineStrokes(entity);
  return typeof strokes === 'string' ? strokes : openRun(strokes);
}
