import type { Motion } from '../../src/geometry/motion/motion.ts';
import { circleLoop, type Loop, polygonLoop, type Region } from '../../src/geometry/plane/loop.ts';
import { type Rigid, rigid } from '../../src/geometry/plane/rigid.ts';
import { type Vec, vec } from '../../src/geometry/plane/vec.ts';

/** Shapes and motions in the plainest words, for cases written as data; mm and degrees. */
export const radians = (deg: number): number => (deg * Math.PI) / 180;

export const box = (minX: number, minY: number, maxX: number, maxY: number): Region => [
  polygonLoop([vec(minX, minY), vec(maxX, minY), vec(maxX, maxY), vec(minX, maxY)]),
];

export const disc = (x: number, y: number, radius: number): Region => [circleLoop(vec(x, y), radius)];

/** All between two circles about one centre: a wall round a bore. */
export const wallRound = (x: number, y: number, boreRadius: number, outerRadius: number): Region => [
  circleLoop(vec(x, y), boreRadius),
  circleLoop(vec(x, y), outerRadius),
];

/** A loop of [x, y, bulge]. */
export const path = (...vertices: readonly (readonly [number, number, number?])[]): Loop => ({
  kind: 'path',
  vertices: vertices.map(([x, y, bulge = 0]) => ({ x, y, bulge })),
});

/** The part of a ring between two radii and two angles about the origin. */
export function ringSector(innerRadius: number, outerRadius: number, fromDeg: number, toDeg: number): Region {
  const at = (radius: number, deg: number): Vec =>
    vec(radius * Math.cos(radians(deg)), radius * Math.sin(radians(deg)));
  const bulge = Math.tan(radians(toDeg - fromDeg) / 4);
  const corner = (p: Vec, b: number): readonly [number, number, number] => [p.x, p.y, b];
  return [
    path(
      corner(at(innerRadius, fromDeg), 0),
      corner(at(outerRadius, fromDeg), bulge),
      corner(at(outerRadius, toDeg), 0),
      corner(at(innerRadius, toDeg), -bulge),
    ),
  ];
}

export const turned = (deg: number, x = 0, y = 0): Rigid => rigid(radians(deg), vec(x, y));

export const turnBy = (deg: number, poleX = 0, poleY = 0): Motion => ({
  kind: 'turn',
  pole: vec(poleX, poleY),
  angleRad: radians(deg),
});

export const slideBy = (x: number, y: number): Motion => ({ kind: 'slide', by: vec(x, y) });

export const standing: Motion = slideBy(0, 0);
