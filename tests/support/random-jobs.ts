import { moveRegion, type Region } from '../../src/geometry/plane/loop.ts';
import { rigid } from '../../src/geometry/plane/rigid.ts';
import { polar, type Vec, vec } from '../../src/geometry/plane/vec.ts';
import { castingOf, dowel, type JobSpec, type PositionSpec } from './jobs.ts';
import type { Random } from './random.ts';
import { randomRegion } from './random-outlines.ts';

/** A job of every kind the check tells apart: clear or fouling, with and without depths, rotating parts, untraced metal. */
export function randomJob(random: Random): JobSpec {
  const away = random.pick([0, 60, 120, 200]);
  return {
    fixed: castingOf({ name: 'block', ...randomPart(random, 3, 120, vec(0, 0)), holes: dowels(random, 'D', 9) }),
    moving: castingOf({
      name: 'housing',
      ...randomPart(random, 2, 80, polar(vec(0, 0), away, random.between(-3, 3))),
      holes: dowels(random, 'P', 0),
    }),
    rotating: random.chance(0.3)
      ? [
          castingOf({
            name: 'clutch',
            sections: [{ id: 'cover', depth: [-40, -5], loops: placed(random, random.between(10, 60), vec(0, 0)) }],
          }),
        ]
      : [],
    dowels: random.chance(0.5)
      ? [
          ['D1', 'P1'],
          ['D2', 'P2'],
        ]
      : [],
    offerUp: random.chance(0.8) ? randomWay(random) : [],
    // random sections may lie anywhere: what is asked of them is the figures
    nothingShares: true,
    clearance: { homeMm: random.between(0.5, 4), wayInMm: random.between(0.5, 4), rotatingMm: random.between(1, 5) },
  };
}

const dowels = (random: Random, name: string, proudMm: number) =>
  [-150, 150].map((x, i) =>
    dowel(
      `${name}${i + 1}`,
      [x + random.between(-0.2, 0.2), random.between(-0.2, 0.2)],
      proudMm,
      14 + random.between(0, 0.1),
    ),
  );

function randomPart(random: Random, mostSections: number, sizeMm: number, middle: Vec) {
  const sections = Array.from({ length: random.whole(1, mostSections) }, (_, i) => ({
    id: `section-${i + 1}`,
    depth: random.chance(0.2)
      ? null
      : random.pick([
          [0, 12],
          [12, 50],
          [-30, 0],
          [-20, 15],
          [40, 90],
        ] as const),
    loops: placed(random, sizeMm * random.between(0.3, 1), middle),
    traceErrorMm: random.between(0, 1.5),
  }));
  const traced = random.chance(0.15)
    ? { depth: null, loops: placed(random, random.between(100, 400), vec(0, 0)) }
    : null;
  return { sections, traced };
}

const placed = (random: Random, sizeMm: number, at: Vec): Region =>
  moveRegion(randomRegion(random, sizeMm), rigid(random.between(-3, 3), at));

/** In beside home, a turn, a slide, all three at once, and home. */
function randomWay(random: Random): PositionSpec[] {
  const standOff = random.between(5, 60);
  const turn = random.pick([0, 10, 30, -90, 200]);
  const shift = random.chance(0.4) ? ([random.between(-30, 30), random.between(-30, 30)] as const) : ([0, 0] as const);
  const mostTurn = Math.abs(turn) > 180 && shift[0] !== 0 ? 90 : turn;
  return [
    { standOff: standOff + random.between(0, 80), turn: mostTurn, shift },
    { standOff, turn: mostTurn, shift },
    { standOff: standOff * random.pick([0.3, 1]), turn: 0, shift: random.chance(0.5) ? shift : [0, 0] },
    {},
  ];
}
