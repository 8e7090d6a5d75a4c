import { Decimal } from 'decimal.js';
import { describe, expect, test } from 'vitest';
import { circleLoop, polygonLoop } from '../../../src/geometry/plane/loop.ts';
import { identity, rigid, rotationAbout } from '../../../src/geometry/plane/rigid.ts';
import { polar, type Vec, vec } from '../../../src/geometry/plane/vec.ts';
import { passageOf } from '../../support/judge-passage.ts';
import { Random } from '../../support/random.ts';
import type { Setting } from '../../support/random-settings.ts';
import { box, disc, path, slideBy, standing, wallRound } from '../../support/shapes.ts';

/**
 * Cases that lose digits, held against 50 digits. Every input is a double and is taken for exactly what it is; the
 * truth is a closed form in decimal arithmetic. What is asked: |answer − truth| ≤ the tolerance the answer gives itself.
 */
const D = Decimal.clone({ precision: 50 });
const d = (x: number): Decimal => new D(x);
const hypot = (x: Decimal, y: Decimal): Decimal => x.times(x).plus(y.times(y)).sqrt();

interface IllCase extends Setting {
  readonly title: string;
  /** Least distance, mm. */
  readonly truth: Decimal;
  /** The tolerance may not be worse than this either, mm. */
  readonly noWorseThanMm: number;
}

const turn = (poleX: number, poleY: number, angleRad: number): Setting['motion'] => ({
  kind: 'turn',
  pole: vec(poleX, poleY),
  angleRad,
});

/** Least distance of two discs, one turned about (px, py) past its nearest: |‖pole − c2‖ − ‖pole − c1‖| − r1 − r2. */
const discsInLine = (
  pole: readonly [number, number],
  c1: readonly [number, number],
  c2: readonly [number, number],
  radii: number,
): Decimal =>
  hypot(d(c1[0]).minus(pole[0]), d(c1[1]).minus(pole[1]))
    .minus(hypot(d(c2[0]).minus(pole[0]), d(c2[1]).minus(pole[1])))
    .abs()
    .minus(radii);

/** Least distance of a disc and a bore over a whole turn about a pole: the centres are farthest apart in line. */
const inBore = (bore: number, radius: number, away: Decimal): Decimal => d(bore).minus(radius).minus(away);

const sliver = 1e-7;

const cases: readonly IllCase[] = [
  ...[1e-3, 1e-6, 1e-9, 1e-12].map((off) => ({
    title: `nearly concentric circles 180 and 181, centres ${off} mm apart, a whole turn`,
    fixed: wallRound(0, 0, 181, 250),
    moving: disc(off, 0, 180),
    start: identity,
    motion: turn(0, 0, 2 * Math.PI),
    truth: inBore(181, 180, d(off)),
    noWorseThanMm: 1e-6,
  })),
  {
    title: 'nearly concentric circles about a pole 1e-9 mm beside both',
    fixed: wallRound(0, 0, 181, 250),
    moving: disc(1e-9, 0, 180),
    start: identity,
    motion: turn(0, 1e-9, 7),
    // the moving centre runs round the pole at √2·1e-9 and comes to 1e-9 + √2·1e-9 from the bore's
    truth: inBore(181, 180, d(1e-9).plus(hypot(d(1e-9), d(1e-9)))),
    noWorseThanMm: 1e-6,
  },
  ...[1e-5, 2e-6].map((gap) => ({
    title: `nearly tangent arcs, passing ${gap} mm apart`,
    fixed: disc(0, 113 + gap, 6),
    moving: disc(102, 0, 5),
    start: rigid(1, vec(0, 0)),
    motion: turn(0, 0, 1),
    truth: d(113 + gap).minus(113),
    noWorseThanMm: 1e-6,
  })),
  {
    title: 'nearly tangent arcs of 1e5 mm, passing 1e-4 mm apart',
    fixed: disc(0, 1e5 + 1e-4, 5e4),
    moving: disc(0, -1e5, 5e4),
    start: rigid(0.01, vec(0, 0)),
    motion: slideBy(0, 1e5 - 1),
    // the start turns the moving centre to 1e5·sin 0.01 beside
    truth: hypot(
      D.sin(d(0.01)).times(1e5),
      d(1e5 + 1e-4)
        .plus(D.cos(d(0.01)).times(1e5))
        .minus(1e5 - 1),
    ).minus(1e5),
    noWorseThanMm: 1e-6,
  },
  {
    title: 'an edge through the pole, a pin ahead of it',
    fixed: disc(50, 40, 1),
    moving: box(-100, -30, 100, 0),
    start: identity,
    motion: turn(0, 0, 0.5),
    // distance of (50, 40) from the line through the pole at 0.5 rad
    truth: d(40)
      .times(D.cos(d(0.5)))
      .minus(d(50).times(D.sin(d(0.5))))
      .minus(1),
    noWorseThanMm: 1e-6,
  },
  {
    title: 'an edge that misses the pole by 1e-12 mm',
    fixed: disc(50, 40, 1),
    moving: box(-100, -30, 100, 1e-12),
    start: identity,
    motion: turn(0, 0, 0.5),
    truth: d(40)
      .times(D.cos(d(0.5)))
      .minus(d(50).times(D.sin(d(0.5))))
      .minus(1)
      .minus(1e-12),
    noWorseThanMm: 1e-6,
  },
  {
    title: 'a vertex on the pole, the far corner passing a wall',
    fixed: box(-100, 150, 100, 160),
    moving: box(0, 0, 100, 100),
    start: identity,
    motion: turn(0, 0, 2),
    truth: d(150).minus(hypot(d(100), d(100))),
    noWorseThanMm: 1e-6,
  },
  {
    title: 'a vertex 1e-13 mm from the pole, nearest to a wall all along',
    fixed: box(-100, -60, 100, -50),
    moving: [polygonLoop([vec(1e-13, 0), vec(100, 110), vec(-100, 110)])],
    start: identity,
    motion: turn(0, 0, 0.2),
    truth: d(50),
    noWorseThanMm: 1e-6,
  },
  ...[1e6, 1e9, 1e12].flatMap((far) => [
    {
      title: `a pole ${far} mm away, a turn that carries 100 mm`,
      fixed: disc(0, 20, 5),
      moving: disc(-50, 0, 5),
      start: identity,
      motion: turn(0, far, 100 / far),
      truth: discsInLine([0, far], [-50, 0], [0, 20], 10),
      noWorseThanMm: 1e-3,
    },
    {
      title: `a pole ${far} mm away, a turn that carries 0.1 mm`,
      fixed: disc(0, 20, 5),
      moving: disc(-50, 0, 5),
      start: identity,
      motion: turn(0, far, 0.1 / far),
      truth: endDistance([0, far], [-50, 0], [0, 20], 0.1 / far).minus(10),
      noWorseThanMm: 1e-3,
    },
  ]),
  {
    title: 'slivers: a step of 1e-7 mm in a face passed by a corner',
    fixed: [
      polygonLoop(
        [
          vec(-50, 0),
          vec(0, 0),
          vec(0, sliver),
          vec(sliver, sliver),
          vec(sliver, 0),
          vec(50, 0),
          vec(50, 20),
          vec(-50, 20),
        ].map((p) => vec(p.x, -p.y)),
      ),
    ],
    moving: [polygonLoop([vec(-80, 3), vec(-85, 20), vec(-75, 20)])],
    start: identity,
    motion: slideBy(160, 0),
    truth: d(3),
    noWorseThanMm: 1e-6,
  },
  {
    title: 'slivers: a tooth of 1e-7 mm, turned past a wall',
    fixed: wallRound(0, 0, 101, 120),
    moving: [polygonLoop([vec(0, 0), vec(100, 0), vec(100 + sliver, sliver), vec(100, 2 * sliver), vec(0, 50)])],
    start: identity,
    motion: turn(0, 0, 1),
    truth: d(101).minus(hypot(d(100 + sliver), d(sliver))),
    noWorseThanMm: 1e-6,
  },
  {
    title: 'an arc of 1e-7 mm in a face',
    fixed: [path([-50, 0], [0, 0, -1], [sliver, 0], [50, 0], [50, -20], [-50, -20])],
    moving: disc(-80, 8, 5),
    start: identity,
    motion: slideBy(160, 0),
    truth: d(3).minus(d(sliver).div(2)),
    noWorseThanMm: 1e-6,
  },
  {
    title: 'an arc so flat that its radius is 1e9 mm',
    fixed: [path([-10, 0, 2.5e-9], [10, 0], [10, 20], [-10, 20])],
    moving: disc(-80, -8, 5),
    start: identity,
    motion: slideBy(160, 0),
    // it bulges by bulge·half a chord
    truth: d(3).minus(d(2.5e-9).times(10)),
    noWorseThanMm: 1e-3,
  },
  {
    title: 'coordinates of 1e5 mm',
    fixed: disc(1e5, 1e5, 500),
    moving: disc(99_000, 1e5 - 123.456, 400),
    start: identity,
    motion: standing,
    truth: hypot(d(1000), d(1e5).minus(1e5 - 123.456)).minus(900),
    noWorseThanMm: 1e-6,
  },
  {
    title: 'coordinates of 1e5 mm, turned about the origin',
    fixed: disc(1e5, 1e5, 500),
    moving: disc(1e5 + 1500, 1e5 + 1500, 400),
    start: rigid(-0.1, vec(0, 0)),
    motion: turn(0, 0, 0.3),
    truth: discsInLine([0, 0], [1e5, 1e5], [1e5 + 1500, 1e5 + 1500], 900),
    noWorseThanMm: 1e-6,
  },
  {
    title: 'a turn of 1e-9 rad',
    fixed: disc(200, 30, 5),
    moving: disc(200, 0, 5),
    start: identity,
    motion: turn(0, 0, 1e-9),
    truth: endDistance([0, 0], [200, 0], [200, 30], 1e-9).minus(10),
    noWorseThanMm: 1e-6,
  },
  {
    title: 'a turn of −1e-9 rad away: nearest at the start',
    fixed: disc(200, 30, 5),
    moving: disc(200, 0, 5),
    start: identity,
    motion: turn(0, 0, -1e-9),
    truth: d(20),
    noWorseThanMm: 1e-6,
  },
  ...[1000, -1000].map((deg) => ({
    title: `a turn of ${deg}°`,
    fixed: disc(0, -212, 6),
    moving: disc(200, 0, 5),
    start: identity,
    motion: turn(0, 0, (deg * Math.PI) / 180),
    truth: d(1),
    noWorseThanMm: 1e-6,
  })),
];

/** Distance of a point from another that has been turned about a pole. */
function endDistance(
  pole: readonly [number, number],
  moving: readonly [number, number],
  fixed: readonly [number, number],
  angleRad: number,
): Decimal {
  const [x, y] = [d(moving[0]).minus(pole[0]), d(moving[1]).minus(pole[1])];
  const [cos, sin] = [D.cos(d(angleRad)), D.sin(d(angleRad))];
  return hypot(
    x.times(cos).minus(y.times(sin)).plus(pole[0]).minus(fixed[0]),
    x.times(sin).plus(y.times(cos)).plus(pole[1]).minus(fixed[1]),
  );
}

const powers = [300, 1e4, 1e6, 1e7].flatMap((far) => [0.002, 0.02, 0.2, 2].map((sideMm) => ({ far, sideMm })));

/** A square about the origin, askew. */
const askew = (sideMm: number, turnRad: number) =>
  polygonLoop([0, 1, 2, 3].map((i) => polar(vec(0, 0), sideMm / Math.SQRT2, turnRad + (i * Math.PI) / 2)));

describe('short edges and far poles', () => {
  // Source: the moving square's middle runs through the fixed one's: they foul, whatever the angles.
  test.each(powers)(
    'a square of $sideMm mm turned about a pole $far mm away through another fouls it',
    ({ far, sideMm }) => {
      for (let i = 0; i < 50; i++) {
        const random = new Random(i);
        const pole = polar(vec(0, 0), far, random.between(-4, 4));
        const angleRad = 100 / far;
        const answer = passageOf({
          fixed: [askew(sideMm, random.between(0, 4))],
          moving: [askew(sideMm, random.between(0, 4))],
          start: rotationAbout(pole, -angleRad / 2),
          motion: { kind: 'turn', pole, angleRad },
        });
        expect(answer.state).toBe('fouls');
      }
    },
  );

  // Source: distance of a line from the pole, |a × b| / |b − a|, in decimals.
  test.each(powers)('a disc faces the foot of an edge of $sideMm mm, $far mm from the pole', ({ far, sideMm }) => {
    for (let i = 0; i < 20; i++) {
      const random = new Random(i);
      const toward = random.between(-4, 4);
      const pole = polar(vec(0, 0), far, toward);
      const square = askew(sideMm, toward + Math.PI / 4 + random.between(-0.1, 0.1) * Math.min(1, sideMm / far));
      const centre = polar(pole, far - 10, toward + Math.PI + 0.3 / far);
      const answer = passageOf({
        fixed: disc(centre.x, centre.y, 2),
        moving: [square],
        start: identity,
        motion: { kind: 'turn', pole, angleRad: 1 / far },
      });
      const nearest = square.vertices.map((a, k) => footMm(pole, a, square.vertices[(k + 1) % 4] as Vec));
      const truth = Decimal.min(...nearest)
        .minus(hypot(d(centre.x).minus(pole.x), d(centre.y).minus(pole.y)))
        .minus(2);
      expect(
        truth
          .minus(answer.distanceMm ?? Number.NaN)
          .abs()
          .toNumber(),
      ).toBeLessThanOrEqual(answer.toleranceMm);
    }
  });
});

/** How far from the pole an edge comes nearest, mm; its foot if inside. */
function footMm(pole: Vec, a: Vec, b: Vec): Decimal {
  const [ax, ay, bx, by] = [d(a.x).minus(pole.x), d(a.y).minus(pole.y), d(b.x).minus(pole.x), d(b.y).minus(pole.y)];
  const [dx, dy] = [bx.minus(ax), by.minus(ay)];
  const squared = dx.times(dx).plus(dy.times(dy));
  const t = ax.times(dx).plus(ay.times(dy)).div(squared).neg();
  if (t.lte(0) || t.gte(1)) return Decimal.min(hypot(ax, ay), hypot(bx, by));
  return ax.times(by).minus(ay.times(bx)).abs().div(squared.sqrt());
}

describe('an ill-conditioned case is answered within the tolerance it gives', () => {
  test.each(cases)('$title', ({ title: _, truth, noWorseThanMm, ...setting }) => {
    const answer = passageOf(setting);
    expect(answer.toleranceMm).toBeLessThanOrEqual(noWorseThanMm);
    const error = truth
      .minus(answer.distanceMm ?? Number.NaN)
      .abs()
      .toNumber();
    expect(error).toBeLessThanOrEqual(answer.toleranceMm);
  });

  test('nearer than its tolerance it is called touching, whatever the last digits say', () => {
    for (const gap of [1e-9, 1e-12, 1e-15, 0]) {
      const setting = {
        fixed: [circleLoop(vec(0, 113 + gap), 6)],
        moving: disc(102, 0, 5),
        start: rigid(1, vec(0, 0)),
        motion: turn(0, 0, 1),
      };
      expect(passageOf(setting).state).toBe('touches');
    }
  });
});
