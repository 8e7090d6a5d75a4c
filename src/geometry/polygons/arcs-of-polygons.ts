import type { Side } from '../plane/arc-points.ts';
import { circleLoop, type Loop, type PathLoop, polygonLoop, type Region, type Vertex } from '../plane/loop.ts';
import { loopFaults } from '../plane/loop-faults.ts';
import { round6 } from '../plane/rounding.ts';
import { sub, type Vec, vec } from '../plane/vec.ts';
import { type Channel, channelOf, offCircleMm, radiiOf } from './arc-channel.ts';
import { fitsFrom, leastEdges, toldAlong } from './arc-fits.ts';
import { metalOnLeft, type Outline, outlineAreaMm2 } from './metal-on-left.ts';
import { type Polygon, type Polygons, signedAreaMm2 } from './polygons.ts';

/** Loops of lines and arcs in place of polygons, and how far from those they come at most. */
export interface ArcLoops {
  readonly loops: Region;
  readonly offMm: number;
}

/** How often outlines that would touch are put back before all are. */
const mostRounds = 4;

/**
 * The solid of some polygons, metal on the left, with runs of their edges told as what they stand for, lines and true
 * arcs: a solid that holds them (`outside`) or lies in them (`inside`), by `withinMm` at most. All vertices lie on the
 * grid of answers. Outlines that neither touch nor cross still do not: one whose arcs would keeps its edges.
 *
 * Each run is as long as one arc can tell it, one after the other, from where the first ends: that is a place where
 * the outline changes, and no place within an arc. Where nothing is told by arcs a polygon stays as it is.
 */
export function loopsWithArcs(polygons: Polygons, side: Side, withinMm: number): ArcLoops {
  const told = polygons.map((polygon) => toldByArcs(polygon, side, withinMm));
  for (let round = 0; round < mostRounds && told.some((one) => one !== null); round++) {
    const loops = polygons.map((polygon, i) => told[i]?.loop ?? polygonLoop(polygon));
    const atFault = [
      ...loopFaults(loops).flatMap(({ loop, otherLoop }) => [loop, otherLoop]),
      ...turnedOver(loops, polygons),
    ].filter((loop) => told[loop] !== null);
    if (atFault.length === 0) return { loops, offMm: Math.max(0, ...told.map((one) => one?.offMm ?? 0)) };
    for (const loop of atFault) told[loop] = null;
  }
  return { loops: polygons.map(polygonLoop), offMm: 0 };
}

/** Loops that are holes now and were none, or the other way about: circles that went past one another without a touch. */
function turnedOver(loops: Region, polygons: Polygons): number[] {
  const outlines = metalOnLeft(loops);
  return polygons.flatMap((polygon, i) => {
    const wasHole = signedAreaMm2(polygon) < 0;
    return outlineAreaMm2(outlines[i] as Outline) < 0 === wasHole ? [] : [i];
  });
}

interface Told {
  readonly loop: Loop;
  readonly offMm: number;
}

/** The channel lies to the right of a polygon, so what errs inside is run the other way round. */
function toldByArcs(polygon: Polygon, side: Side, withinMm: number): Told | null {
  const points = side === 'outside' ? polygon : polygon.toReversed();
  const told = asCircle(points, withinMm) ?? asPath(channelOf(points, withinMm));
  if (told === null || side === 'outside' || told.loop.kind === 'circle') return told;
  return { ...told, loop: reversedLoop(told.loop) };
}

/** A circle round or within a polygon, by whether it goes round anticlockwise or clockwise. */
function asCircle(points: Polygon, withinMm: number): Told | null {
  const third = Math.floor(points.length / 3);
  if (points.length < 2 * leastEdges) return null;
  const centre = centreOf(points[0] as Vec, points[third] as Vec, points[2 * third] as Vec);
  const sense = signedAreaMm2(points);
  const radii = radiiOf([...points, points[0] as Vec], centre, sense);
  if (radii === null) return null;
  const radius = round6((radii.leastMm + radii.mostMm + (sense > 0 ? withinMm : -withinMm)) / 2);
  const offMm = offCircleMm(radii, radius, sense);
  return radius <= 0 || offMm === null || offMm > withinMm ? null : { loop: circleLoop(centre, radius), offMm };
}

/** Of the circle through three points, on the grid of answers. */
function centreOf(a: Vec, b: Vec, c: Vec): Vec {
  const [u, v] = [sub(b, a), sub(c, a)];
  const [uu, vv, twice] = [u.x * u.x + u.y * u.y, v.x * v.x + v.y * v.y, 2 * (u.x * v.y - u.y * v.x)];
  return vec(round6(a.x + (v.y * uu - u.y * vv) / twice), round6(a.y + (u.x * vv - v.x * uu) / twice));
}

/** Begun again from where the first run ends; null where none is told by an arc. */
function asPath(channel: Channel): Told | null {
  const count = channel.points.length;
  const { value: first } = fitsFrom(channel, 0, count).next();
  if (first === undefined) return null;
  const told = toldAlong(channel, first.from + first.fit.count, count);
  return told && { loop: { kind: 'path', vertices: told.vertices.slice(0, -1) }, offMm: told.offMm };
}

/** The same loop run the other way round. */
function reversedLoop({ vertices }: PathLoop): PathLoop {
  const last = vertices.length - 1;
  return {
    kind: 'path',
    vertices: vertices.map((_, i) => {
      const { x, y } = vertices[last - i] as Vertex;
      return { x, y, bulge: 0 - (vertices.at(last - i - 1) as Vertex).bulge };
    }),
  };
}
