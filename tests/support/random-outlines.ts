import { circleLoop, edgesOf, type Loop, moveRegion, polygonLoop, type Region } from '../../src/geometry/plane/loop.ts';
import { rigid } from '../../src/geometry/plane/rigid.ts';
import { distance, polar, vec } from '../../src/geometry/plane/vec.ts';
import { crossings, edgeGap } from './oracles/edge-gap.ts';
import type { Random } from './random.ts';

/** A random simple solid about the origin, some `sizeMm` in radius: straight and curved, with and without holes. */
export function randomRegion(random: Random, sizeMm: number): Region {
  const make = random.pick([
    polygon,
    polygon,
    curved,
    curved,
    curved,
    bigArcs,
    circle,
    lens,
    ring,
    plateWithHole,
    needle,
  ]);
  for (;;) {
    const region = moveRegion(make(random, sizeMm), rigid(random.between(-4, 4), vec(0, 0)));
    if (isSimple(region)) return region;
  }
}

type Maker = (random: Random, sizeMm: number) => Region;

/** A star of straight edges, simple by construction. */
export function randomPolygon(random: Random, sizeMm: number): Region {
  return [polygonLoop(starPoints(random, sizeMm, random.whole(3, 12)))];
}

const polygon: Maker = randomPolygon;

const curved: Maker = (random, size) => [bulged(random, size, random.whole(3, 9), 0.5, 0.7)];

/** Few vertices and arcs of well over half a circle. */
const bigArcs: Maker = (random, size) => [bulged(random, size, random.whole(2, 4), 2.5, 0.9)];

const circle: Maker = (random, size) => [circleLoop(vec(0, 0), size * random.between(0.2, 1))];

const lens: Maker = (random, size) => {
  const half = size * random.between(0.4, 1);
  const bulge = (): number => random.magnitude(0.02, 0.9);
  return [
    pathLoop([
      { x: -half, y: 0, bulge: bulge() },
      { x: half, y: 0, bulge: bulge() },
    ]),
  ];
};

const ring: Maker = (random, size) => {
  const inner = size * random.between(0.4, 0.8);
  return [circleLoop(vec(0, 0), size), circleLoop(vec(random.between(-0.1, 0.1) * size, 0), inner)];
};

const plateWithHole: Maker = (random, size) => {
  const loops = random.chance(0.5) ? [bulged(random, size, random.whole(3, 8), 0.4, 0.7)] : [...polygon(random, size)];
  const hole = random.chance(0.5) ? [circleLoop(vec(0, 0), size * 0.25)] : randomPolygon(random, size * 0.3);
  return [...loops, ...hole];
};

const needle: Maker = (random, size) => [
  polygonLoop([
    vec(-size, 0),
    vec(size, size * random.magnitude(1e-5, 1e-1)),
    vec(size * random.between(-0.9, 0.9), size * random.magnitude(0.02, 0.5)),
  ]),
];

const pathLoop = (vertices: Extract<Loop, { kind: 'path' }>['vertices']): Loop => ({ kind: 'path', vertices });

function bulged(random: Random, size: number, count: number, most: number, share: number): Loop {
  const vertices = starPoints(random, size, count).map((p) => ({
    ...p,
    bulge: random.chance(share) ? random.pick([-1, 1]) * random.magnitude(0.01, most) : 0,
  }));
  return pathLoop(count === 2 ? vertices.map((v) => ({ ...v, bulge: v.bulge || 0.3 })) : vertices);
}

const starPoints = (random: Random, size: number, count: number) =>
  Array.from({ length: count }, (_, i) =>
    polar(vec(0, 0), size * random.between(0.35, 1), ((i + random.between(-0.3, 0.3)) * 2 * Math.PI) / count),
  );

/** Edges meet only where one ends and the next begins, and loops keep apart; by brute force. */
export function isSimple(region: Region): boolean {
  const edges = region.flatMap((loop, l) => edgesOf(loop).map((edge, i, all) => ({ edge, l, i, count: all.length })));
  return edges.every((e, k) =>
    edges.slice(k + 1).every((f) => {
      const ahead = e.l === f.l && (e.i + 1) % e.count === f.i;
      const behind = e.l === f.l && (f.i + 1) % f.count === e.i;
      if (!ahead && !behind) return edgeGap(e.edge, f.edge).mm > 1e-3;
      const shared = [...(ahead ? [e.edge.b] : []), ...(behind ? [f.edge.b] : [])];
      return crossings(e.edge, f.edge).every((p) => shared.some((q) => distance(p, q) < 1e-6));
    }),
  );
}
