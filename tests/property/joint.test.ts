import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PartFile } from '../../src/files/part-file.ts';
import { mirrorPoint } from '../../src/geometry/plane/loop.ts';
import { apply, type Rigid, rigid } from '../../src/geometry/plane/rigid.ts';
import { type Vec, vec } from '../../src/geometry/plane/vec.ts';
import type { Casting } from '../../src/job/casting.ts';
import { type Role, castingOf as readPart } from '../../src/job/part-to-casting.ts';
import { checkHand } from '../../src/joint/hand.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { moveCasting } from '../../src/joint/move-casting.ts';
import { placeJob } from '../../src/joint/place-job.ts';
import { jobOf } from '../support/jobs.ts';

const coordinate = fc.double({ min: -300, max: 300, noNaN: true });
const point = fc.tuple(coordinate, coordinate).map(([x, y]) => vec(x, y));
const tilt = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
const anyRigid = fc.tuple(tilt, point).map(([turnRad, shift]) => rigid(turnRad, shift));
const shiftOnly = point.map((shift) => rigid(0, shift));

/** Three holes well off one line, as dowels and bolts of one pattern. */
const triangle = fc
  .tuple(point, tilt, fc.double({ min: 60, max: 200, noNaN: true }))
  .map(([middle, turn, size]) =>
    [vec(-size, 0), vec(size, 5), vec(size / 3, size)].map((p) => apply(rigid(turn, middle), p)),
  );

type Shape = { readonly points: readonly Vec[]; readonly bulges: readonly number[]; readonly circle: Vec };
const shape: fc.Arbitrary<Shape> = fc.record({
  points: fc.tuple(point, point, point),
  bulges: fc.tuple(...[0, 1, 2].map(() => fc.double({ min: -1, max: 1, noNaN: true }))),
  circle: point,
});

/** A drawing of a part: one side as it is, the other mirrored, wherever on the paper and however tilted. */
function partFile(holes: readonly Vec[], { points, bulges, circle }: Shape, side: 'as-is' | 'other', on: Rigid) {
  const drawn = (p: Vec): [number, number] => {
    const q = apply(on, side === 'as-is' ? p : mirrorPoint(p));
    return [q.x, q.y];
  };
  const bulge = (i: number) => (side === 'as-is' ? 1 : -1) * (bulges[i] ?? 0);
  const loops = [
    points.map((p, i): [number, number, number] => [...drawn(p), bulge(i)]),
    { circle: drawn(circle), radius: 7 },
  ];
  const part: Omit<PartFile, 'viewedFrom'> = {
    format: 'fettle-part/1',
    name: 'part',
    units: 'mm',
    traceError: 0.5,
    sections: [{ id: 'rib', depth: [12, 90], loops }],
    holes: holes.map((p, i) => ({ id: `H${i + 1}`, kind: 'dowel', at: drawn(p) })),
    hollows: [{ id: 'gallery', loops }],
    doNotCut: [{ id: 'ear', loops }],
    wallReadings: [{ at: drawn(circle), depth: 20, wall: 7 }],
    traced: { loops },
  };
  return part;
}

const read = (part: Omit<PartFile, 'viewedFrom'>, viewedFrom: 'face' | 'back', role: Role): Casting =>
  readPart('part.part.json', { ...part, viewedFrom }, role);

function place(fixed: Casting, moving: Casting, axis: Vec): Joint {
  const dowels = [
    ['H1', 'H1'],
    ['H2', 'H2'],
  ] as const;
  const job = jobOf({ fixed, moving, axis: [axis.x, axis.y], dowels, bolts: [['H3', 'H3']] });
  const reading = placeJob(job);
  if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
  return reading.value;
}

/** Every number of a casting's geometry, in order. */
function numbersOf(casting: Casting): number[] {
  const regions = [...casting.sections, ...casting.hollows, ...casting.doNotCut, casting.traced ?? { loops: [] }];
  const loops = regions.flatMap((region) => region.loops);
  return [
    ...loops.flatMap((loop) =>
      loop.kind === 'circle'
        ? [loop.centre.x, loop.centre.y, loop.radius]
        : loop.vertices.flatMap((v) => [v.x, v.y, v.bulge]),
    ),
    ...[...casting.holes, ...casting.wallReadings].flatMap(({ at }) => [at.x, at.y]),
  ];
}

// a few roundings of coordinates below a thousand, through a fit over at least 120 mm
const rounding = 1e-9;

function expectSamePlace(a: Casting, b: Casting): void {
  const [some, others] = [numbersOf(a), numbersOf(b)];
  expect(others).toHaveLength(some.length);
  const worst = Math.max(...some.map((x, i) => Math.abs(x - (others[i] ?? Number.NaN))));
  expect(worst).toBeLessThan(rounding);
}

describe('placing a job', () => {
  test('does not depend on where and how tilted the moving part was drawn', () => {
    fc.assert(
      fc.property(triangle, shape, anyRigid, point, (holes, outline, redrawn, axis) => {
        const fixed = read(partFile(holes, outline, 'as-is', rigid(0, vec(0, 0))), 'face', 'fixed');
        const moving = read(partFile(holes, outline, 'as-is', rigid(0, vec(0, 0))), 'back', 'moving');
        const a = place(fixed, moving, axis);
        const b = place(fixed, moveCasting(moving, redrawn), axis);
        expectSamePlace(a.moving, b.moving);
        expect(b.bolts[0]?.offsetMm).toBeLessThan(rounding);
      }),
    );
  });

  test('a part drawn from its face and from its back comes home the same, as moving part', () => {
    fc.assert(
      fc.property(triangle, shape, anyRigid, anyRigid, (holes, outline, onePaper, otherPaper) => {
        const fixed = read(partFile(holes, outline, 'as-is', rigid(0, vec(0, 0))), 'face', 'fixed');
        // looked at in the joint's own sense, the moving part is seen from its back
        const back = read(partFile(holes, outline, 'as-is', onePaper), 'back', 'moving');
        const face = read(partFile(holes, outline, 'other', otherPaper), 'face', 'moving');
        const [a, b] = [place(fixed, back, vec(0, 0)), place(fixed, face, vec(0, 0))];
        expectSamePlace(a.moving, b.moving);
        expect([a.dowelUp.hand, b.dowelUp.hand]).toEqual(['agrees', 'agrees']);
      }),
    );
  });

  test('a part drawn from its face and from its back comes home the same, as fixed part', () => {
    fc.assert(
      fc.property(triangle, shape, shiftOnly, (holes, outline, otherPaper) => {
        const moving = read(partFile(holes, outline, 'as-is', rigid(0, vec(0, 0))), 'back', 'moving');
        const face = read(partFile(holes, outline, 'as-is', rigid(0, vec(0, 0))), 'face', 'fixed');
        const back = read(partFile(holes, outline, 'other', otherPaper), 'back', 'fixed');
        // the axis goes through the third hole, wherever a drawing has it
        const [a, b] = [face, back].map((fixed) => place(fixed, moving, fixed.holes[2]?.at ?? vec(0, 0)));
        if (a === undefined || b === undefined) throw new Error('not placed');
        expectSamePlace(a.fixed, b.fixed);
        expectSamePlace(a.moving, b.moving);
      }),
    );
  });

  test('a drawing whose viewedFrom is wrong is found mirrored', () => {
    fc.assert(
      fc.property(triangle, shape, anyRigid, (holes, outline, paper) => {
        const fixed = read(partFile(holes, outline, 'as-is', rigid(0, vec(0, 0))), 'face', 'fixed');
        const moving = read(partFile(holes, outline, 'as-is', paper), 'face', 'moving');
        const { dowelUp, notices } = place(fixed, moving, vec(0, 0));
        expect(dowelUp.hand).toBe('mirrored');
        expect(notices.map(({ code }) => code)).toContain('hand-mirrored');
      }),
    );
  });
});

describe('the hand of a noisy pattern', () => {
  const noise = fc.double({ min: -0.5, max: 0.5, noNaN: true });
  const noisy = fc
    .tuple(triangle, fc.array(point, { maxLength: 6 }), anyRigid)
    .chain(([three, more, paper]) =>
      fc
        .tuple(...[...three, ...more].map((p) => fc.tuple(fc.constant(p), noise, noise)))
        .map((holes) => holes.map(([to, dx, dy]) => ({ from: apply(paper, vec(to.x + dx, to.y + dy)), to }))),
    );

  test('is seen through tracing errors of half a millimetre, and so is a mirrored one', () => {
    fc.assert(
      fc.property(noisy, (pairs) => {
        expect(checkHand(pairs).hand).toBe('agrees');
        const mirrored = pairs.map(({ from, to }) => ({ from: mirrorPoint(from), to }));
        expect(checkHand(mirrored).hand).toBe('mirrored');
      }),
    );
  });

  test('on one line is never claimed either way', () => {
    const along = fc.array(fc.double({ min: -300, max: 300, noNaN: true }), { minLength: 3, maxLength: 8 });
    fc.assert(
      fc.property(along, anyRigid, anyRigid, noise, (places, one, other, off) => {
        const pairs = places.map((x, i) => ({
          from: apply(one, vec(x, 0)),
          to: apply(other, vec(x, i === 0 ? off : 0)),
        }));
        expect(checkHand(pairs).hand).toBe('cannot-tell');
      }),
    );
  });
});
