import { describe, expect, it } from 'vitest';
import { mirrorPoint } from '../../../src/geometry/plane/loop.ts';
import { apply, rigid } from '../../../src/geometry/plane/rigid.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import type { Hole } from '../../../src/job/casting.ts';
import { matchHoles } from '../../../src/joint/match-holes.ts';
import { boltHole, dowel, tapped } from '../../support/jobs.ts';
import { Random } from '../../support/random.ts';

const block: readonly Hole[] = [
  dowel('D1', [-150, 10], 9),
  dowel('D2', [150, -30], 9),
  tapped('B1', [70, 140]),
  tapped('B2', [-60, 120]),
  tapped('B3', [120, 60]),
  tapped('B4', [-90, -100]),
];

/** The same holes as another drawing has them, in another order and under other names. */
function drawnAnew(
  holes: readonly Hole[],
  turnDeg: number,
  off: (i: number) => [number, number] = () => [0, 0],
): Hole[] {
  const motion = rigid((turnDeg * Math.PI) / 180, vec(31, -12));
  return holes
    .map((hole, i): Hole => {
      const { x, y } = apply(motion, hole.at);
      const at: [number, number] = [x + off(i)[0], y + off(i)[1]];
      const id = `M${i + 1}`;
      return hole.kind === 'dowel' ? dowel(id, at, 0) : boltHole(id, at);
    })
    .reverse();
}

const named = (match: ReturnType<typeof matchHoles>): string[] | undefined =>
  match?.pairs.map(({ fixed, moving }) => `${fixed.id} ${moving.id}`);
const all = ['D1 M1', 'D2 M2', 'B1 M3', 'B2 M4', 'B3 M5', 'B4 M6'];

describe('holes of two parts, brought together', () => {
  it.each([0, 13, -90, 179])('are paired whatever their order, names and a turn by %i°', (turnDeg) => {
    const match = matchHoles(block, drawnAnew(block, turnDeg));
    expect(named(match)).toEqual(all);
    expect(match?.largestMm).toBeLessThan(1e-9);
    expect(match?.turnRad).toBeCloseTo((-turnDeg * Math.PI) / 180, 9);
    expect(match?.otherTurnsRad).toEqual([]);
  });

  it('are told with the worst and the root mean square of what is left', () => {
    const random = new Random(3);
    const errors = block.map((): [number, number] => [random.between(-0.4, 0.4), random.between(-0.4, 0.4)]);
    const match = matchHoles(
      block,
      drawnAnew(block, 20, (i) => errors[i] as [number, number]),
    );
    expect(named(match)).toEqual(all);
    const offs = match?.pairs.map(({ offMm }) => offMm) ?? [];
    expect(match?.largestMm).toBe(Math.max(...offs));
    expect(match?.rmsMm).toBeCloseTo(Math.hypot(...offs) / Math.sqrt(offs.length), 12);
    // least squares leave no more than the errors made
    expect(match?.rmsMm).toBeLessThanOrEqual(Math.hypot(...errors.flat()) / Math.sqrt(errors.length));
  });

  it('leave out what has no fellow, and what is of another kind', () => {
    const other = drawnAnew([...block.slice(0, 5), tapped('X', [0, -140])], 20);
    expect(named(matchHoles(block, other))).toEqual(all.slice(0, 5));
    const bolts = block.map((hole) => (hole.kind === 'dowel' ? tapped(hole.id, [hole.at.x, hole.at.y]) : hole));
    expect(named(matchHoles(block, drawnAnew(bolts, 20)))).toEqual(all.slice(2));
  });

  it('are told to fit otherwise too where they do, turned least first', () => {
    const dowels = block.slice(0, 2);
    const match = matchHoles(dowels, drawnAnew(dowels, 20));
    expect(named(match)).toEqual(['D1 M1', 'D2 M2']);
    expect(match?.otherTurnsRad.map(Math.abs)).toEqual([expect.closeTo(Math.PI, 9)]);
    const six = Array.from({ length: 6 }, (_, i): Hole => {
      const rad = (i * Math.PI) / 3;
      return tapped(`B${i}`, [100 * Math.cos(rad), 100 * Math.sin(rad)]);
    });
    expect(matchHoles(six, drawnAnew(six, 7))?.otherTurnsRad).toHaveLength(5);
  });

  it('are told to fit better seen from the other side', () => {
    const mirrored = drawnAnew(block, 20).map((hole) => ({ ...hole, at: mirrorPoint(hole.at) }));
    expect(matchHoles(block, mirrored)?.fitsMirrored).toBe(true);
    expect(matchHoles(block, drawnAnew(block, 20))?.fitsMirrored).toBe(false);
  });

  it('are none where no two stand alike', () => {
    expect(matchHoles(block, [])).toBeNull();
    expect(matchHoles(block, [dowel('P1', [0, 0], 0), dowel('P2', [40, 0], 0)])).toBeNull();
  });

  it('are found among sixty', () => {
    const random = new Random(8);
    const many = Array.from({ length: 60 }, (_, i) =>
      tapped(`B${i}`, [random.between(-300, 300), random.between(-300, 300)]),
    );
    expect(matchHoles(many, drawnAnew(many, 40))?.pairs).toHaveLength(60);
  });
});
