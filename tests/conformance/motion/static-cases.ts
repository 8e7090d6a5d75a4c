import { identity } from '../../../src/geometry/plane/rigid.ts';
import { box, disc, path, slideBy, standing, turnBy, turned, wallRound } from '../../support/shapes.ts';
import { closedForm, type MotionCase } from './motion-case.ts';

const at = (
  title: string,
  fixed: MotionCase['fixed'],
  moving: MotionCase['moving'],
  mm: number,
  source: string,
): MotionCase => ({
  title,
  fixed,
  moving,
  start: identity,
  motion: standing,
  source: `closed form: ${source}`,
  expected: { state: 'clear', distanceMm: mm, at: 0, overlaps: [] },
  ...closedForm,
});

/** The upper half disc of radius 10 about the origin. */
const dome = [path([10, 0, 1], [-10, 0])];

/** Solids standing still, every pair of edge kinds. */
export const staticCases: readonly MotionCase[] = [
  at('corner and corner', box(0, 0, 10, 10), box(13, 14, 20, 20), 5, 'hypot(3, 4)'),
  at('corner and line', box(0, 0, 10, 10), [path([12, 5], [20, 0], [20, 10])], 2, '12 − 10'),
  at('circle and circle', disc(0, 0, 10), disc(30, 40, 20), 20, '50 − 30'),
  at('circle within a hole', wallRound(0, 0, 50, 60), disc(3, 4, 20), 25, '50 − 20 − 5'),
  at('circle and line', disc(0, 0, 10), box(12, -50, 20, 50), 2, '12 − 10'),
  at(
    'circle and slanted line',
    disc(0, 0, 10),
    [path([30, 0], [40, 0], [0, 40], [0, 30])],
    15 * Math.SQRT2 - 10,
    '30/√2 − 10',
  ),
  at('circle and the end of a line', disc(0, 0, 10), box(9, 12, 20, 20), 5, 'hypot(9, 12) − 10'),
  at('arc: the nearest point of its circle is in its span', dome, disc(0, 15, 2), 3, '15 − 2 − 10'),
  at('arc: the nearest point of its circle is not in its span, its chord is', dome, disc(0, -15, 2), 13, '15 − 2'),
  at("arc: the nearest point is an arc's end", dome, disc(13, -4, 1), 4, 'hypot(3, 4) − 1'),
  at(
    'arc of more than half a circle round a pin',
    [path([20, -15, -2.5], [20, 15, 0], [30, 15, 0], [30, -15, 0])],
    disc(60, 0, 5),
    25,
    '60 − 5 − 30',
  ),
  at(
    'hollow side of an arc',
    [path([-20, 0, 1], [20, 0, 0], [30, 0, 0], [30, -40, 0], [-30, -40, 0], [-30, 0, 0])],
    disc(0, -5, 3),
    12,
    '20 − 5 − 3',
  ),
];

const pressed = (mm: number): MotionCase[] => {
  const state = mm === 0 ? 'touches' : 'fouls';
  const given = (
    title: string,
    fixed: MotionCase['fixed'],
    moving: MotionCase['moving'],
    start = identity,
    motion = standing,
  ): MotionCase => ({
    title: `${title}, ${mm === 0 ? 'just touching' : `${mm} mm deep`}`,
    fixed,
    moving,
    start,
    motion,
    source: `definition: an overlap deeper than a micrometre is a foul, a contact is not; ${mm} mm by construction`,
    expected: { state, distanceMm: 0 },
    tolerance: 1e-9,
    toleranceReason: 'states are exact',
  });
  return [
    given('corner on face', box(0, 0, 10, 10), [path([10 - mm, 5], [20, 0], [20, 10])]),
    given('face on face', box(0, 0, 10, 10), box(10 - mm, 0, 20, 10)),
    given('disc on face', box(0, -50, 10, 50), disc(20 - mm, 0, 10)),
    given('disc on disc', disc(0, 0, 10), disc(0, 40 - mm, 30)),
    given('disc in hole, much smaller', wallRound(0, 0, 50, 60), disc(30 + mm, 0, 20)),
    given('disc in hole, away from 3 o’clock', wallRound(0, 0, 50, 60), disc(0, 30 + mm, 20)),
    given('disc of 206.4 in a bore of 206.5', wallRound(0, 0, 206.5, 250), disc(0, 0.1 + mm, 206.4)),
    given('disc of 206.4 in a bore of 206.5, at 9 o’clock', wallRound(0, 0, 206.5, 250), disc(-0.1 - mm, 0, 206.4)),
    given('pin in its own hole', wallRound(0, 0, 10, 20), disc(0, mm, 10)),
    given('pin in its own hole, at 9 o’clock', wallRound(0, 0, 10, 20), disc(-mm, 0, 10)),
    given('spigot R180 in its own bore', wallRound(0, 0, 180, 200), disc(mm, mm / 10, 180)),
    given(
      'dome against its own hollow',
      [path([-20, 0, 1], [20, 0, 0], [20, -30, 0], [-20, -30, 0])],
      [path([-20, -mm, 1], [20, -mm, 0])],
    ),
    given(
      'disc slid into a corner of two faces',
      [path([0, 0], [50, 0], [50, 50])],
      disc(-20, 10, 10),
      identity,
      slideBy(20 + (mm === 0 ? 10 - 10 * Math.SQRT2 : 10 - 10 * Math.SQRT2 + mm * Math.SQRT2), 0),
    ),
    given(
      'disc slid to the bottom of a bore',
      wallRound(0, 0, 206.5, 250),
      disc(0, 0, 206.4),
      identity,
      slideBy(-0.1 - mm, 0),
    ),
    given('tip turned into a wall', wallRound(mm, 0, 206.5, 250), disc(0, 6.5, 200), turned(0), turnBy(360)),
  ];
};

/** Touching and 0.01 mm deep: where the same outline lies all but on itself as well. */
export const touchOrFoulCases: readonly MotionCase[] = [...pressed(0), ...pressed(0.01), ...pressed(0.001)];
