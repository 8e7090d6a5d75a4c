import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { closePockets } from '../../../src/geometry/motion/close-pockets.ts';
import { type Motion, motionAt } from '../../../src/geometry/motion/motion.ts';
import { type MonotoneRun, runsOf } from '../../../src/geometry/motion/runs.ts';
import { sweptRegion } from '../../../src/geometry/motion/swept-region.ts';
import { travelOf } from '../../../src/geometry/motion/travel.ts';
import { boxAround, boxOfEdge } from '../../../src/geometry/plane/edge-box.ts';
import { edgesOf, type Loop, moveRegion, polygonLoop, type Region } from '../../../src/geometry/plane/loop.ts';
import { apply, compose, identity, type Rigid } from '../../../src/geometry/plane/rigid.ts';
import { distance, length, polar, scale, vec } from '../../../src/geometry/plane/vec.ts';
import { metalOnLeft } from '../../../src/geometry/polygons/metal-on-left.ts';
import { areaMm2 } from '../../../src/geometry/polygons/polygons.ts';
import { GeosPlane } from '../../support/oracles/geos-plane.ts';
import { Random } from '../../support/random.ts';
import { randomSetting } from '../../support/random-settings.ts';
import { box, disc, path, ringSector, slideBy, turnBy, wallRound } from '../../support/shapes.ts';

const toleranceMm = 1e-4;
const degree = Math.PI / 180;

/** Ten teeth 2 wide and 8 high, 3 apart, on a bar 47 × 10. */
function comb(): Region {
  const teeth = Array.from(
    { length: 10 },
    (_, i) =>
      [
        [5 * i + 2, 10],
        [5 * i + 2, 18],
        [5 * i, 18],
        [5 * i, 10],
      ] as const,
  );
  // the first and last teeth stand flush with the ends of the bar
  const points = teeth.reverse().flat().slice(1, -1);
  return [path([0, 0], [47, 0], ...points)];
}

/** A ring R36–44 with thirty teeth of 6°, 6° apart, out to R50 and, in its bore, in to R30. */
function toothedRing(): Region {
  const rim = (root: number, tip: number) =>
    path(
      ...Array.from({ length: 30 }, (_, i) => {
        const corner = (radius: number, deg: number, arcDeg: number): readonly [number, number, number] => [
          radius * Math.cos(deg * degree),
          radius * Math.sin(deg * degree),
          Math.tan((arcDeg * degree) / 4),
        ];
        return [
          corner(tip, 12 * i, 6),
          corner(tip, 12 * i + 6, 0),
          corner(root, 12 * i + 6, 6),
          corner(root, 12 * i + 12, 0),
        ];
      }).flat(),
    );
  return [rim(44, 50), rim(36, 30)];
}

/** Areas in closed form, by area in polar coordinates: ½(R² − r²) times the angle each radius comes to cover. */
const closedForms: readonly { name: string; solid: Region; motion: Motion; areaMm2: number }[] = [
  {
    name: 'a rib R190–205 spanning 4° turned 15° covers 19° of its ring',
    solid: ringSector(190, 205, 88, 92),
    motion: turnBy(15),
    areaMm2: 982.402,
  },
  {
    name: 'the same turned the other way',
    solid: ringSector(190, 205, 88, 92),
    motion: turnBy(-15),
    areaMm2: ((205 ** 2 - 190 ** 2) / 2) * 19 * degree,
  },
  {
    name: 'a disc turned 30° covers itself and the ring it crosses',
    solid: disc(10, 0, 5),
    motion: turnBy(30),
    areaMm2: Math.PI * 25 + ((15 ** 2 - 5 ** 2) / 2) * 30 * degree,
  },
  {
    name: 'a disc about the pole stays where it is',
    solid: disc(0, 0, 5),
    motion: turnBy(77),
    areaMm2: Math.PI * 25,
  },
  {
    name: 'a ring about the pole keeps its bore',
    solid: wallRound(0, 0, 3, 5),
    motion: turnBy(77),
    areaMm2: Math.PI * 16,
  },
  {
    name: 'a disc over the pole turned by more than a circle covers the disc its far side reaches',
    solid: disc(3, 0, 5),
    motion: turnBy(400),
    areaMm2: Math.PI * 64,
  },
  {
    name: 'a disc turned by nearly a circle overlaps its own track',
    solid: disc(30, 0, 5),
    motion: turnBy(359),
    areaMm2: Math.PI * (35 ** 2 - 25 ** 2),
  },
  {
    name: 'a box with a corner on the pole turned 90° covers half a disc and a box',
    solid: box(0, 0, 3, 4),
    motion: turnBy(90),
    areaMm2: 12 + (Math.PI * 25) / 4,
  },
  {
    name: 'an edge through the pole: a bar turned half a circle covers its disc but for one sliver off its corners',
    solid: box(-5, -1, 5, 0),
    motion: turnBy(180),
    // the sliver is the integral of 2r·acos(5/r) from 5 to √26
    areaMm2: 26 * Math.PI - (26 * Math.atan(1 / 5) - 5),
  },
  {
    name: 'a disc slid 5 mm covers itself and its width times the way',
    solid: disc(3, 0, 5),
    motion: slideBy(3, 4),
    areaMm2: Math.PI * 25 + 50,
  },
  {
    name: 'a ring slid by more than its bore closes it',
    solid: wallRound(0, 0, 2, 5),
    motion: slideBy(0, 4.1),
    areaMm2: Math.PI * 25 + 41,
  },
  {
    name: 'a bore slid by less than itself keeps a lens of two circles',
    solid: wallRound(0, 0, 2, 5),
    motion: slideBy(0, 2),
    areaMm2: Math.PI * 25 + 20 - (2 * 4 * Math.acos(0.5) - Math.sqrt(12)),
  },
  {
    name: 'a pole 1e12 mm off: the turn is a slide of 5 mm',
    solid: disc(3, 0, 5),
    motion: turnBy(5e-12 / degree, 1e12, 0),
    areaMm2: Math.PI * 25 + 50,
  },
  {
    name: 'a comb slid by less than its gaps keeps them',
    solid: comb(),
    motion: slideBy(2, 0),
    areaMm2: 49 * 10 + 10 * 4 * 8,
  },
  {
    name: 'a comb slid the other way, by a hair less than its gaps',
    solid: comb(),
    motion: slideBy(-2.99, 0),
    areaMm2: 49.99 * 10 + 10 * 4.99 * 8,
  },
  { name: 'a comb slid by its gaps fills them', solid: comb(), motion: slideBy(3, 0), areaMm2: 50 * 18 },
  {
    name: 'a toothed ring turned by half its gaps keeps the other half, outside and in its bore',
    solid: toothedRing(),
    motion: turnBy(3),
    areaMm2: ((44 ** 2 - 36 ** 2) / 2 + ((50 ** 2 - 44 ** 2 + 36 ** 2 - 30 ** 2) / 2) * (3 / 4)) * 2 * Math.PI,
  },
  {
    name: 'a toothed ring turned by its gaps fills them',
    solid: toothedRing(),
    motion: turnBy(-6),
    areaMm2: Math.PI * (50 ** 2 - 30 ** 2),
  },
  { name: 'no turn at all', solid: box(1, 1, 4, 3), motion: turnBy(0), areaMm2: 6 },
  { name: 'no slide at all', solid: box(1, 1, 4, 3), motion: slideBy(0, 0), areaMm2: 6 },
];

describe('the swept region has its closed-form area, never less outside and never more inside', () => {
  it.each(closedForms)('$name', ({ solid, motion, areaMm2: expected }) => {
    const outside = sweptRegion(solid, identity, motion, toleranceMm);
    const inside = sweptRegion(solid, identity, motion, toleranceMm, 'inside');
    // the outline is under 1000 mm long in every case, and the value of the rib is given to 0.0005
    const slack = 1000 * outside.boundMm;
    expect(areaMm2(outside.polygons)).toBeGreaterThan(expected - 6e-4);
    expect(areaMm2(outside.polygons)).toBeLessThan(expected + slack);
    expect(areaMm2(inside.polygons)).toBeLessThan(expected + 6e-4);
    expect(areaMm2(inside.polygons)).toBeGreaterThan(expected - slack);
  });
});

describe('against GEOS, as the union of many copies', () => {
  let geos: GeosPlane;
  beforeAll(async () => {
    geos = await GeosPlane.start();
  });
  afterEach(() => geos.free());

  const copies = 40;
  /** Chords of inward arcs lie in the open, so GEOS is given this much that is not there. */
  const chordMm = 1e-5;

  it.each(Array.from({ length: 24 }, (_, i) => i))(
    'random setting %i: no copy leaves it, and it is not larger',
    (seed) => {
      const { moving, start, motion: whole } = randomSetting(new Random(seed));
      const motion = shortened(whole);
      const placements = Array.from({ length: copies + 1 }, (_, i) => compose(motionAt(motion, i / copies), start));
      const union = geos.union(...placements.map((at) => geos.region(moveRegion(moving, at), chordMm)));
      const outside = geos.shape(sweptRegion(moving, start, motion, toleranceMm).polygons);
      const inside = geos.shape(sweptRegion(moving, start, motion, toleranceMm, 'inside').polygons);
      const perimeter = geos.lengthMm(outside) + 1;
      expect(geos.areaMm2(geos.difference(union, outside))).toBeLessThan((chordMm + 2e-6) * perimeter);
      expect(geos.areaMm2(geos.difference(inside, outside))).toBeLessThan(1e-6 * perimeter);
      // between copies the sweep bulges by at most a sagitta and a notch of one step
      const step = greatestStep(moving, placements);
      expect(geos.areaMm2(geos.difference(inside, geos.buffer(union, step / 2 + 1e-3, 8)))).toBeLessThan(
        1e-6 * perimeter,
      );
    },
  );
});

describe('a rough outline', () => {
  it.each([
    [0.05, 15],
    [0.5, 15],
    [4, 15],
    [4, -2],
  ])('with noise of %f mm turned %f° covers what GEOS makes of its copies', async (noiseMm, turnDeg) => {
    const geos = await GeosPlane.start();
    const solid = roughRing(new Random(7), noiseMm);
    const motion = turnBy(turnDeg, 3, -2);
    const copies = 100;
    const placements = Array.from({ length: copies + 1 }, (_, i) => motionAt(motion, i / copies));
    const union = geos.union(...placements.map((at) => geos.region(moveRegion(solid, at), 1)));
    const { polygons } = sweptRegion(solid, identity, motion, toleranceMm);
    const swept = geos.shape(polygons);
    const step = greatestStep(solid, placements);
    expect(geos.areaMm2(geos.difference(union, swept))).toBeLessThan(2e-6 * geos.lengthMm(swept));
    expect(geos.areaMm2(geos.difference(swept, geos.buffer(union, step / 2 + 1e-3, 8)))).toBeLessThan(1e-9);
    geos.free();
  });

  it('keeps few of its notches: all narrower than the way are filled before anything is swept', () => {
    const travel = travelOf(turnBy(15));
    const turnings = (runs: readonly MonotoneRun[]): number =>
      runs.filter((run) => run.leads !== run.previous.leads).length;
    for (const outline of metalOnLeft(roughRing(new Random(3), 0.5, 5000))) {
      const runs = runsOf(outline, travel);
      expect(turnings(runs)).toBeGreaterThan(2000);
      expect(turnings(closePockets(runs, travel))).toBeLessThan(60);
    }
  });
});

/** A waved ring whose outline and bore have a noise on every one of many short edges. */
function roughRing(random: Random, noiseMm: number, count = 240): Region {
  const rim = (radius: number): Loop =>
    polygonLoop(
      Array.from({ length: count }, (_, i) => {
        const angle = (2 * Math.PI * i) / count;
        const waved = radius + 3 * Math.sin(5 * angle) + 1.5 * Math.sin(23 * angle);
        return polar(vec(0, 0), waved + noiseMm * random.between(-0.5, 0.5), angle);
      }),
    );
  return [rim(60), rim(40)];
}

/** The motion, or so much of it that no point of a solid within 300 mm of the origin travels much over 10 mm. */
function shortened(motion: Motion): Motion {
  if (motion.kind === 'slide') return { kind: 'slide', by: scale(motion.by, Math.min(1, 10 / length(motion.by))) };
  const most = 10 / (length(motion.pole) + 300);
  return { ...motion, angleRad: Math.max(-most, Math.min(most, motion.angleRad)) };
}

/** How far the farthest point of a solid goes from one placement to the next, by the corners of a box round it. */
const greatestStep = (solid: Region, placements: readonly Rigid[]): number => {
  const { minX, minY, maxX, maxY } = boxAround(solid.flatMap(edgesOf).map(boxOfEdge));
  const corners = [vec(minX, minY), vec(minX, maxY), vec(maxX, minY), vec(maxX, maxY)];
  return Math.max(...corners.map((p) => distance(apply(placements[0] as Rigid, p), apply(placements[1] as Rigid, p))));
};
