import type { LoopFile } from '../../src/files/part-file.ts';

/** A point of a part's own drawing, in its units, y up. */
export type XY = readonly [x: number, y: number];

export type CircleFile = Extract<LoopFile, { circle: unknown }>;
export type Points = Exclude<LoopFile, { circle: unknown }>;
export type VertexFile = Points[number];

const from = ([ax, ay]: XY, [bx, by]: XY): XY => [bx - ax, by - ay];
const cross = ([ax, ay]: XY, [bx, by]: XY): number => ax * by - ay * bx;
const dot = ([ax, ay]: XY, [bx, by]: XY): number => ax * bx + ay * by;
const length = ([x, y]: XY): number => Math.hypot(x, y);

export const apart = (a: XY, b: XY): number => length(from(a, b));

export const xyOf = ([x, y]: VertexFile): XY => [x, y];

/** Nine places keep an arc within 1e-6 of a chord 1000 long; 0 is a straight edge and is not written. */
export function vertexAt([x, y]: XY, bulge = 0): VertexFile {
  const rounded = Math.round(bulge * 1e9) / 1e9;
  return rounded === 0 ? [x, y] : [x, y, rounded];
}

/**
 * The bulge of the arc from `a` over `p` to `b`; 0 where `p` lies on the straight edge, null where no arc does it: `p` on
 * an end, or in line beyond one. The angle at `p` is half the rest of the circle, so bulge = (v × u)/(|u||v| − u·v).
 */
export function bulgeThrough(a: XY, p: XY, b: XY): number | null {
  const [u, v] = [from(p, a), from(p, b)];
  const reach = length(u) * length(v);
  const below = reach - dot(u, v);
  return reach === 0 || below <= 1e-12 * reach ? null : cross(v, u) / below;
}

/** Flatter than this by its height over its longest side, three points are in a line. */
const flat = 1e-6;

/** The circle through three points; null where two are the same or all are in a line. */
export function circleThrough(a: XY, b: XY, c: XY): CircleFile | null {
  const [u, v] = [from(a, b), from(a, c)];
  const [uu, vv, twice] = [dot(u, u), dot(v, v), cross(u, v)];
  const longest = Math.max(uu, vv, dot(from(b, c), from(b, c)));
  if (Math.abs(twice) <= flat * longest) return null;
  const centre: XY = [(v[1] * uu - u[1] * vv) / (2 * twice), (u[0] * vv - v[0] * uu) / (2 * twice)];
  return { circle: [a[0] + centre[0], a[1] + centre[1]], radius: length(centre) };
}

interface Arc {
  readonly centre: XY;
  readonly radius: number;
  readonly startRad: number;
  readonly sweepRad: number;
}

/** Centre = middle of the chord + ((1/b − b)/4)·J(chord), J a quarter turn anticlockwise. */
export function arcOf(a: XY, b: XY, bulge: number): Arc {
  const [dx, dy] = from(a, b);
  const out = (1 / bulge - bulge) / 4;
  const centre: XY = [(a[0] + b[0]) / 2 - out * dy, (a[1] + b[1]) / 2 + out * dx];
  return {
    centre,
    radius: (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
    startRad: Math.atan2(a[1] - centre[1], a[0] - centre[0]),
    sweepRad: 4 * Math.atan(bulge),
  };
}

/** Where an edge runs level or upright, its ends left out: with those, all that bounds it across and up. */
export function extremesOf(a: XY, b: XY, bulge: number): XY[] {
  if (bulge === 0) return [];
  const { centre, radius, startRad, sweepRad } = arcOf(a, b, bulge);
  const quarters: readonly XY[] = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ];
  return quarters.flatMap(([x, y], i): XY[] => {
    const turn = Math.sign(sweepRad) * ((i * Math.PI) / 2 - startRad) + 4 * Math.PI;
    return turn % (2 * Math.PI) < Math.abs(sweepRad) ? [[centre[0] + radius * x, centre[1] + radius * y]] : [];
  });
}

/** The point a fraction `t` along an edge. */
export function alongEdge(a: XY, b: XY, bulge: number, t: number): XY {
  if (bulge === 0) return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
  const { centre, radius, startRad, sweepRad } = arcOf(a, b, bulge);
  const angle = startRad + sweepRad * t;
  return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
}

/** How far along an edge (0 to 1) the point of it lies that is nearest to `p`. */
export function nearestAlong(a: XY, b: XY, bulge: number, p: XY): number {
  const chord = from(a, b);
  if (bulge === 0) return Math.min(1, Math.max(0, dot(from(a, p), chord) / (dot(chord, chord) || 1)));
  const { centre, startRad, sweepRad } = arcOf(a, b, bulge);
  const angle = Math.atan2(p[1] - centre[1], p[0] - centre[0]);
  const turn = ((Math.sign(sweepRad) * (angle - startRad)) % (2 * Math.PI)) + 2 * Math.PI;
  const t = (turn % (2 * Math.PI)) / Math.abs(sweepRad);
  if (t <= 1) return t;
  return apart(a, p) <= apart(b, p) ? 0 : 1;
}
