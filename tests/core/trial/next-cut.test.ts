import { describe, expect, it } from 'vitest';
import { polygonise } from '../../../src/geometry/polygons/polygonise.ts';
import { areaMm2 } from '../../../src/geometry/polygons/polygons.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { positionAlong } from '../../../src/job/path.ts';
import { analysisOf } from '../../../src/pipeline/analysis.ts';
import { contactAt } from '../../../src/trial/contact.ts';
import { asTraced } from '../../../src/trial/correction.ts';
import { jointExplained } from '../../../src/trial/next-joint.ts';
import { offeredWith } from '../../../src/trial/offered-as.ts';
import { explain } from '../../../src/trial/solve.ts';
import { demoToDraw } from '../../support/demos.ts';

const { joint, plan: planned } = demoToDraw('transfer-case');
if (planned === null) throw new Error('nothing is planned');
const plan = planned;
const tables = drain(analysisOf(joint).tables());
const leg = joint.fit.legs[1];
const leastOnLeg = (offered: ReturnType<typeof offeredWith>): number => {
  if (leg === undefined) throw new Error('no second leg');
  const gaps = Array.from({ length: 201 }, (_, k) => contactAt(offered, positionAlong(leg, k / 200), asTraced)?.gapMm);
  return Math.min(...gaps.map((gap) => gap ?? Number.POSITIVE_INFINITY));
};
const areaOf = (offered: ReturnType<typeof offeredWith>): number =>
  offered.joint.fixed.sections
    .filter(({ id, depth }) => id === 'ribs' && depth !== null && depth.fromMm <= 20 && depth.toMm > 20)
    .reduce((sum, { loops }) => sum + areaMm2(polygonise(loops, 1e-3, 'outside')), 0);

describe('the castings as they are offered up', () => {
  it('uncut foul; to the first line they clear, by less than asked; to the planned line by what is asked', () => {
    const { wayInMm } = joint.fit.clearance;
    expect(leastOnLeg(offeredWith(joint, plan, tables, { kind: 'none' }))).toBeLessThan(0);
    const first = leastOnLeg(offeredWith(joint, plan, tables, { kind: 'first' }));
    expect(first).toBeGreaterThan(0);
    expect(first).toBeLessThan(wayInMm);
  });

  it('lose to the first line what the plan says, in outlines without films', () => {
    const [uncut, first] = [
      offeredWith(joint, plan, tables, { kind: 'none' }),
      offeredWith(joint, plan, tables, { kind: 'first' }),
    ];
    const band = plan.cuts[0]?.sections[0]?.bands[0];
    // a hair of 0.01 mm all along a cut of some 70 mm
    expect(Math.abs(areaOf(uncut) - areaOf(first) - (band?.firstAreaMm2 ?? 0))).toBeLessThan(1.5);
    for (const { id, depth, loops } of first.joint.fixed.sections.filter(({ id }) => id === 'ribs')) {
      expect(loops.length, `${id} ${depth?.fromMm}`).toBeLessThan(6);
    }
  });

  it('lose as much as was measured: half a millimetre more than planned leaves so much more clearance', () => {
    const measured = (moreMm: number) =>
      offeredWith(joint, plan, tables, {
        kind: 'measured',
        places: (tables[0] ?? []).map(({ place, plannedMm }) => ({ place, takeOffMm: plannedMm + moreMm })),
      });
    expect(areaOf(measured(0.5))).toBeLessThan(areaOf(measured(0)) - 10);
    expect(areaOf(measured(-0.5))).toBeGreaterThan(areaOf(measured(0)) + 10);
  });
});

describe('the joint as readings have it', () => {
  const offered = offeredWith(joint, plan, tables, { kind: 'first' });
  const nothing = explain(joint, { file: '', goes: [] }, () => offered);

  it('is as it was, errors and all, where nothing was read', () => {
    const same = jointExplained(joint, offered.joint, nothing);
    expect(same.moving.sections.map(({ traceErrorMm }) => traceErrorMm)).toEqual(
      joint.moving.sections.map(({ traceErrorMm }) => traceErrorMm),
    );
    expect(same.fixed.sections.map(({ loops }) => loops.length)).toEqual(
      offered.joint.fixed.sections.map(({ loops }) => loops.length),
    );
  });

  it('has its fixed outlines where they lie and its cut where it was laid out, in outlines without films', () => {
    const correction = { ...asTraced, fixed: { shift: { x: 0.2, y: 0.1 }, turnRad: 0 }, offsetMm: () => 0.1 };
    const moved = jointExplained(joint, offered.joint, { ...nothing, correction });
    for (const { id, loops } of moved.fixed.sections) expect(loops.length, id).toBeLessThan(8);
    const isCutAt = offered.isCutAt;
    // the moving part stands as it was: the cut still clears by as much, give or take what grew beside it
    const grown = leastOnLeg({ joint: { ...moved, moving: joint.moving }, isCutAt });
    expect(grown).toBeGreaterThan(leastOnLeg(offered) - 0.5);
    expect(grown).toBeGreaterThan(0);
  });
});
