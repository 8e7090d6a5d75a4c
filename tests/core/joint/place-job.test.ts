import { describe, expect, test } from 'vitest';
import { vec } from '../../../src/geometry/plane/vec.ts';
import type { Job } from '../../../src/job/job.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import { placeJob } from '../../../src/joint/place-job.ts';
import { box, castingOf, disc, dowel, jobOf, outline, ringPiece } from '../../support/jobs.ts';

function placed(job: Job): Joint {
  const reading = placeJob(job);
  if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
  return reading.value;
}

const full = castingOf({
  name: 'full',
  sections: [{ id: 'rib', depth: [12, 90], loops: [outline([10, 0, 0.4], [20, 0], [20, 10]), disc(15, 5, 1)] }],
  holes: [dowel('A', [10, 0]), dowel('B', [10, 100])],
  hollows: [{ id: 'gallery', loops: [disc(10, 0, 3)] }],
  doNotCut: [{ id: 'ear', loops: [disc(20, 0, 3)] }],
  wallReadings: [{ at: [10, 20] }],
  traced: { depth: [0, 90], loops: [disc(0, 0, 260)] },
});

describe('placing the fixed part', () => {
  test('shifts everything that belongs to it, so that the crank axis is the origin', () => {
    const { fixed } = placed(jobOf({ fixed: full, axis: [10, 20] }));
    expect(fixed.holes.map((h) => h.at)).toEqual([vec(0, -20), vec(0, 80)]);
    expect(fixed.sections[0]?.loops).toEqual([outline([0, -20, 0.4], [10, -20], [10, -10]), disc(5, -15, 1)]);
    expect(fixed.sections[0]?.depth).toEqual({ fromMm: 12, toMm: 90 });
    expect(fixed.hollows[0]?.loops).toEqual([disc(0, -20, 3)]);
    expect(fixed.doNotCut[0]?.loops).toEqual([disc(10, -20, 3)]);
    expect(fixed.wallReadings[0]?.at).toEqual(vec(0, 0));
    expect(fixed.traced).toEqual({ depth: { fromMm: 0, toMm: 90 }, loops: [disc(-10, -20, 260)] });
  });

  test('leaves a drawing that is already about the axis untouched', () => {
    expect(placed(jobOf({ fixed: full })).fixed).toBe(full);
  });
});

describe('placing the moving part', () => {
  test('carries everything that belongs to it home on its dowels', () => {
    // the drawing lies a quarter turn clockwise: A must go to (0, 0), B to (−100, 0)
    const fixed = castingOf({ holes: [dowel('D1', [0, 0], 9), dowel('D2', [-100, 0], 9)] });
    const dowels = [['D1', 'A'] as const, ['D2', 'B'] as const];
    const { moving, dowelUp } = placed(jobOf({ fixed, moving: full, dowels }));
    expect(dowelUp.turnRad).toBeCloseTo(Math.PI / 2, 9);
    expect(dowelUp.shift.x).toBeCloseTo(0, 9);
    expect(dowelUp.shift.y).toBeCloseTo(-10, 9);
    const [rib] = moving.sections;
    if (rib?.loops[0]?.kind !== 'path' || rib.loops[1]?.kind !== 'circle') throw new Error('loops changed their kind');
    expect(rib.loops[0].vertices[1]?.x).toBeCloseTo(0, 12);
    expect(rib.loops[0].vertices[1]?.y).toBeCloseTo(10, 12);
    expect(rib.loops[0].vertices[0]?.bulge).toBe(0.4);
    expect(rib.loops[1].centre.x).toBeCloseTo(-5, 12);
    expect(moving.wallReadings[0]?.at.x).toBeCloseTo(-20, 12);
    expect(moving.traced?.loops[0]).toMatchObject({ kind: 'circle', radius: 260 });
  });

  test('puts its own origin on the axis, up as drawn, when no dowels are paired', () => {
    const joint = placed(jobOf({ moving: full, axis: [10, 20] }));
    expect(joint.moving).toBe(full);
    expect(joint.dowelUp).toMatchObject({
      turnRad: 0,
      shift: { x: 0, y: 0 },
      rmsMm: null,
      spacingErrorMm: null,
      pairs: [],
    });
    expect(joint.fitRmsMm).toBe(0);
  });

  test('takes dowels in the joint frame, not in the fixed drawing', () => {
    const fixed = castingOf({ holes: [dowel('D1', [110, 20], 9)] });
    const moving = castingOf({ holes: [dowel('P1', [3, 4])] });
    const { dowelUp } = placed(jobOf({ fixed, moving, axis: [10, 20], dowels: [['D1', 'P1']] }));
    expect(dowelUp.shift).toEqual(vec(97, -4));
  });

  test("the fit's paired holes stand where the castings' holes stand", () => {
    const fixed = castingOf({ holes: [dowel('D1', [110, 20], 9), dowel('D2', [-90, 20], 9)] });
    const moving = castingOf({ holes: [dowel('P1', [3, 4]), dowel('P2', [3, 204])] });
    const dowels = [['D1', 'P1'] as const, ['D2', 'P2'] as const];
    const joint = placed(jobOf({ fixed, moving, axis: [10, 20], dowels }));
    expect(joint.fit.dowels.map((pair) => pair.fixed)).toEqual(joint.fixed.holes);
    expect(joint.fit.dowels.map((pair) => pair.moving)).toEqual(joint.moving.holes);
    expect(joint.fit.axis).toEqual(vec(10, 20));
  });
});

test('parts on the crank are drawn about it and stay as they are', () => {
  const clutch = castingOf({
    name: 'clutch',
    sections: [{ loops: [ringPiece(120, 129, -30, 30)], depth: [-92, -46] }],
  });
  expect(placed(jobOf({ rotating: [clutch], axis: [10, 20] })).rotating).toEqual([clutch]);
});

test('a harmless job with nothing paired warns only that its hand is not checked', () => {
  const fixed = castingOf({ sections: [{ loops: [box(0, 0, 10, 10)] }] });
  expect(placed(jobOf({ fixed })).notices.map(({ code }) => code)).toEqual(['hand-cannot-tell']);
});

test.each([
  ['fixed', [0, 0], [100, 0]],
  ['moving', [100, 0], [0, 0]],
] as const)('two dowel pairs on one place of the %s part are an error that names the second', (_part, f, m) => {
  const fixed = castingOf({ holes: [dowel('D1', [0, 0]), dowel('D2', f)] });
  const moving = castingOf({ holes: [dowel('P1', [0, 0]), dowel('P2', m)] });
  const dowels = [['D1', 'P1'] as const, ['D2', 'P2'] as const];
  const reading = placeJob(jobOf({ file: 'swap.fit.json', fixed, moving, dowels }));
  expect(reading).toMatchObject({ ok: false, findings: [{ file: 'swap.fit.json', at: 'dowels[1]' }] });
  if (!reading.ok) expect(reading.findings[0]?.found).toContain('[D2, P2] stands where dowels[0] stands');
});
