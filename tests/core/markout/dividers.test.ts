import { describe, expect, it } from 'vitest';
import { markingOut } from '../../../src/markout/marking-out.ts';
import { markingWords } from '../../../src/words/marking-words.ts';
import { dowel, holeOf, type JobSpec } from '../../support/jobs.ts';
import { lugJob, plannedDemo, plannedJob } from '../../support/markout-jobs.ts';

type Holes = NonNullable<JobSpec['fixed']>['holes'];

const rowsOf = (spec: JobSpec) => {
  const { joint, plan } = plannedJob(spec);
  return markingOut(joint, plan)[0] ?? [];
};
const withHoles = (holes: Holes, rest: Partial<JobSpec> = {}): JobSpec =>
  lugJob.fixed ? { ...lugJob, ...rest, fixed: { ...lugJob.fixed, holes } } : lugJob;

type Point3 = readonly [number, number, number];

/** Where two spheres meet a plane square to the crank, z up out of the face: two places, by the circles they cut from it. */
function marksAt(a: Point3, ra: number, b: Point3, rb: number, z: number): Point3[] {
  const [rA, rB] = [Math.sqrt(ra ** 2 - (z - a[2]) ** 2), Math.sqrt(rb ** 2 - (z - b[2]) ** 2)];
  const d = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [ux, uy] = [(b[0] - a[0]) / d, (b[1] - a[1]) / d];
  const along = (rA ** 2 - rB ** 2 + d ** 2) / (2 * d);
  const off = Math.sqrt(rA ** 2 - along ** 2);
  return [1, -1].map((side) => [a[0] + along * ux - side * off * uy, a[1] + along * uy + side * off * ux, z]);
}

describe('what dividers are set to', () => {
  it('finds the place in space from the ends of dowels: demo (a), 9 mm proud, 12 mm below the face', () => {
    const { joint, plan } = plannedDemo('transfer-case');
    const rows = markingOut(joint, plan)[0] ?? [];
    expect(rows.length).toBeGreaterThan(3);
    const end = (id: string): Point3 => {
      const hole = joint.fixed.holes.find((one) => one.id === id);
      return [hole?.at.x ?? 0, hole?.at.y ?? 0, hole?.proudMm ?? 0];
    };
    expect(end('D2')[2]).toBe(9);
    for (const { at, dividers, depth } of rows) {
      const [a, b] = dividers ?? [];
      expect(depth?.fromMm).toBe(12);
      const marks = marksAt(end(a?.from ?? ''), a?.setMm ?? 0, end(b?.from ?? ''), b?.setMm ?? 0, -12);
      expect(Math.min(...marks.map(([x, y]) => Math.hypot(x - at.x, y - at.y)))).toBeLessThan(1e-6);
    }
  });

  it('is the third side over the distance in plan and the difference in depth: 3, 4, 5', () => {
    // the cut begins at the face, the dowels stand 8 proud
    for (const { dividers } of rowsOf(lugJob))
      for (const { mm, setMm } of dividers ?? []) expect(setMm).toBeCloseTo(Math.sqrt(mm * mm + 64), 9);
  });

  it('is the distance in plan where holes open at the depth of the place', () => {
    const rows = rowsOf(withHoles([dowel('D1', [-80, 0], 0), dowel('D2', [80, -45], 0)]));
    for (const { dividers } of rows) for (const { mm, setMm } of dividers ?? []) expect(setMm).toBe(mm);
  });

  it('is not known of a dowel that may as well be its hole, but is where its mate stands proud', () => {
    const unsaid = (id: string, at: readonly [number, number]) => holeOf({ id, at, kind: 'dowel', proudStated: false });
    const holes = [unsaid('D1', [-80, 0]), unsaid('D2', [80, -45])];
    const moving = (proudMm: number): Partial<JobSpec> =>
      lugJob.moving
        ? { moving: { ...lugJob.moving, holes: [dowel('P1', [-80, 0], proudMm), dowel('P2', [80, -45], proudMm)] } }
        : {};
    for (const { dividers } of rowsOf(withHoles(holes, moving(0))))
      expect(dividers?.map(({ setMm }) => setMm)).toEqual([null, null]);
    for (const { dividers } of rowsOf(withHoles(holes, moving(7))))
      for (const { mm, setMm } of dividers ?? []) expect(setMm).toBe(mm);
  });

  it('is told from the distance in plan in words, and nothing is set where that is not known', () => {
    const known = markingWords('Pump', 'the axis', 'mm', rowsOf(lugJob)).join(' ');
    expect(known).toContain('Set dividers or a trammel from D1 and D2 to "dividers"');
    const unsaid = [[-80, 0] as const, [80, -45] as const].map((at, i) =>
      holeOf({ id: `D${i + 1}`, at, kind: 'dowel', proudStated: false }),
    );
    const unknown = markingWords('Pump', 'the axis', 'mm', rowsOf(withHoles(unsaid))).join(' ');
    expect(unknown).not.toContain('Set dividers');
    expect(unknown).toContain('How proud D1 and D2 stand is not given');
  });
});
