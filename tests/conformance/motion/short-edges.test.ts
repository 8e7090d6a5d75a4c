import { Decimal } from 'decimal.js';
import { describe, expect, test } from 'vitest';
import { polygonLoop } from '../../../src/geometry/plane/loop.ts';
import { identity, rotationAbout } from '../../../src/geometry/plane/rigid.ts';
import { polar, type Vec, vec } from '../../../src/geometry/plane/vec.ts';
import { passageOf } from '../../support/judge-passage.ts';
import { Random } from '../../support/random.ts';
import { disc } from '../../support/shapes.ts';

/** Random cases that lose digits, held against 50 digits; ill-conditioned.json holds the single ones. */
const D = Decimal.clone({ precision: 50 });
const d = (x: number): Decimal => new D(x);
const hypot = (x: Decimal, y: Decimal): Decimal => x.times(x).plus(y.times(y)).sqrt();

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
