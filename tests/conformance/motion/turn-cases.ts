import { identity } from '../../../src/geometry/plane/rigid.ts';
import { box, disc, path, ringSector, turnBy, turned, wallRound } from '../../support/shapes.ts';
import { closedForm, type MotionCase } from './motion-case.ts';

const degrees = (rad: number): number => (rad * 180) / Math.PI;
/** A bar whose two outer corners lie at a radius, pointing along +x. */
const tip = (radius: number) => box(150, -4, Math.sqrt(radius ** 2 - 16), 4);

const plate = box(10, -30, 14, 30);
// the face meets the boss where 10 = 3·cos θ + 7.6
const plateMeets = degrees(Math.acos(2.4 / 3));
// centres 10 apart, 100 and 109.5 from the pole
const discsMeet = degrees(Math.acos((100 ** 2 + 109.5 ** 2 - 10 ** 2) / (2 * 100 * 109.5)));
// the inner corner of the pin, 0.1 off its middle line, meets the face of the bar, 0.1 off its own
const barMeetsPin = degrees(2 * Math.asin(0.1 / Math.hypot(200, 0.1)));

/** Turns about a pole. Angles are positive anticlockwise. */
export const turnCases: readonly MotionCase[] = [
  {
    title: 'the face of a plate passes the round of a boss squarely, between the ends of both',
    fixed: disc(3, 0, 5),
    moving: plate,
    start: turned(-60),
    motion: turnBy(120),
    source: 'closed form: face 10 from the pole, boss reaches 3 + 5',
    expected: { state: 'clear', distanceMm: 2, at: 0.5, overlaps: [] },
    ...closedForm,
  },
  {
    title: 'the same with the boss as two half circles that meet away from the plate',
    fixed: [path([-2, 0, 1], [8, 0, 1])],
    moving: plate,
    start: turned(-60),
    motion: turnBy(120),
    source: 'closed form: face 10 from the pole, boss reaches 3 + 5',
    expected: { state: 'clear', distanceMm: 2, at: 0.5, overlaps: [] },
    ...closedForm,
  },
  {
    title: 'a boss 0.6 mm too large is touched tangentially: no vertex is near',
    fixed: disc(3, 0, 7.6),
    moving: plate,
    start: turned(-60),
    motion: turnBy(120),
    source: 'closed form: 10 = 3·cos θ + 7.6',
    expected: {
      state: 'fouls',
      distanceMm: 0,
      at: (60 - plateMeets) / 120,
      overlaps: [[(60 - plateMeets) / 120, (60 + plateMeets) / 120]],
    },
    ...closedForm,
  },
  {
    title: 'two rounds pass one another in line with the pole',
    fixed: disc(0, 113, 6),
    moving: disc(100, 0, 5),
    start: turned(60),
    motion: turnBy(60),
    source: 'closed form: 113 − 6 − (100 + 5)',
    expected: { state: 'clear', distanceMm: 2, at: 0.5, overlaps: [] },
    ...closedForm,
  },
  {
    title: 'two rounds touch tangentially',
    fixed: disc(0, 109.5, 5),
    moving: disc(100, 0, 5),
    start: turned(60),
    motion: turnBy(60),
    source: 'closed form: cosine rule, centres 10 apart at radii 100 and 109.5',
    expected: {
      state: 'fouls',
      distanceMm: 0,
      at: (30 - discsMeet) / 60,
      overlaps: [[(30 - discsMeet) / 60, (30 + discsMeet) / 60]],
    },
    ...closedForm,
  },
  ...[15, -15, 90, 360, 450].map(
    (deg): MotionCase => ({
      title: `a tip at radius 205 turned ${deg}° in a wall of radius 206.5 keeps 1.5 all the way`,
      fixed: wallRound(0, 0, 206.5, 250),
      moving: tip(205),
      start: identity,
      motion: turnBy(deg),
      source: 'closed form: 206.5 − 205',
      expected: { state: 'clear', distanceMm: 1.5, overlaps: [] },
      ...closedForm,
    }),
  ),
  {
    title: 'the same with the wall 0.5 off the axis, over a full turn: 1.0',
    fixed: wallRound(0.5, 0, 206.5, 250),
    moving: tip(205),
    start: identity,
    motion: turnBy(360),
    source: 'closed form: 206.5 − 0.5 − 205',
    expected: { state: 'clear', distanceMm: 1, overlaps: [] },
    ...closedForm,
  },
  {
    title: 'a rounded tip at radius 205 keeps 1.5 as well',
    fixed: wallRound(0, 0, 206.5, 250),
    moving: ringSector(190, 205, -2, 2),
    start: identity,
    motion: turnBy(15),
    source: 'closed form: 206.5 − 205',
    expected: { state: 'clear', distanceMm: 1.5, overlaps: [] },
    ...closedForm,
  },
  {
    title: 'a pin that only a turn beyond 360° meets is met',
    fixed: ringSector(195, 205, 0, 1),
    moving: ringSector(195, 205, 5, 350),
    start: identity,
    motion: turnBy(12),
    source: 'closed form: the gap ahead is 360 − 350 = 10°',
    expected: { state: 'fouls', distanceMm: 0, at: 10 / 12, overlaps: [[10 / 12, 1]] },
    ...closedForm,
  },
  {
    title: 'a turn of 450° past a pin at 80° ahead overlaps twice',
    fixed: ringSector(195, 205, 80, 81),
    moving: ringSector(195, 205, 0, 1),
    start: identity,
    motion: turnBy(450),
    source: 'closed form: from 79° to 81°, and 360° later',
    expected: {
      state: 'fouls',
      distanceMm: 0,
      at: 79 / 450,
      overlaps: [
        [79 / 450, 81 / 450],
        [439 / 450, 441 / 450],
      ],
    },
    ...closedForm,
  },
  {
    title: 'a turn of 450° is no turn of 90°: it meets a pin 200° ahead',
    fixed: ringSector(195, 205, 200, 201),
    moving: ringSector(195, 205, 0, 1),
    start: identity,
    motion: turnBy(450),
    source: 'closed form: from 199° to 201°',
    expected: { state: 'fouls', distanceMm: 0, at: 199 / 450, overlaps: [[199 / 450, 201 / 450]] },
    ...closedForm,
  },
  {
    title: 'a pin behind the start is met after 358°, going on past a full circle',
    fixed: disc(0, -200, 1),
    moving: disc(200, 0, 1),
    start: turned(-88),
    motion: turnBy(357.8),
    source: 'closed form: centres 2 apart at radius 200 are 2·asin(1/200) apart; the pin is 358° ahead',
    expected: {
      state: 'fouls',
      distanceMm: 0,
      at: (358 - degrees(2 * Math.asin(1 / 200))) / 357.8,
      overlaps: [[(358 - degrees(2 * Math.asin(1 / 200))) / 357.8, 1]],
    },
    ...closedForm,
  },
  {
    title: 'and just not met when the turn ends 1.9° before it',
    fixed: disc(0, -200, 1),
    moving: disc(200, 0, 1),
    start: turned(-88),
    motion: turnBy(356.1),
    source: 'closed form: chord of 1.9° at radius 200, less two radii',
    expected: { state: 'clear', distanceMm: 400 * Math.sin((0.95 * Math.PI) / 180) - 2, at: 1, overlaps: [] },
    ...closedForm,
  },
  {
    title: 'a pin of 0.2 mm, passed between two samples a degree apart, is met',
    fixed: box(200, -0.1, 210, 0.1),
    moving: box(190, -0.1, 204, 0.1),
    start: turned(-0.5),
    motion: turnBy(1),
    source: 'closed form: corner of the pin level with a face of the bar',
    expected: {
      state: 'fouls',
      distanceMm: 0,
      at: 0.5 - barMeetsPin,
      overlaps: [[0.5 - barMeetsPin, 0.5 + barMeetsPin]],
    },
    ...closedForm,
  },
  {
    title: 'a round pin of 0.2 mm at radius 250 is met by a round one',
    fixed: disc(250, 0, 0.1),
    moving: disc(250, 0, 0.1),
    start: turned(-0.5),
    motion: turnBy(1),
    source: 'closed form: centres 0.2 apart at radius 250',
    expected: {
      state: 'fouls',
      distanceMm: 0,
      at: 0.5 - degrees(2 * Math.asin(0.1 / 250)),
      overlaps: [[0.5 - degrees(2 * Math.asin(0.1 / 250)), 0.5 + degrees(2 * Math.asin(0.1 / 250))]],
    },
    ...closedForm,
  },
];
