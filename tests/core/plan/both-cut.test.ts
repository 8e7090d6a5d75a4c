import { expect, it } from 'vitest';
import { cutAnswer } from '../../../src/answers/cut.ts';
import { grindAnswerSchema } from '../../../src/answers/grind-answer.ts';
import { markingAnswer } from '../../../src/answers/marking.ts';
import { markingOut } from '../../../src/markout/marking-out.ts';
import type { PartCut } from '../../../src/plan/part-cut.ts';
import { grindText } from '../../../src/words/grind-text.ts';
import { bothCut } from '../../support/both-cut.ts';
import { answerOf, benchesFor } from '../../support/plan-answer.ts';

const { joint, plan } = bothCut();
const answer = answerOf({ joint, plan });

it('a cut of both has a marking-out table for each part, and is an answer of its format', () => {
  expect(grindAnswerSchema.parse(answer)).toEqual(answer);
  expect(answer.holds).toBe(true);
  expect(answer.table.length).toBeGreaterThan(0);
  expect(answer.movingCut?.table.length).toBeGreaterThan(0);
});

it("the moving part's rows are found from its own dowels, by angle as seen looking at its own face", () => {
  for (const { at, angleDeg, radiusMm, dividers } of answer.movingCut?.table ?? []) {
    const [x, y] = at;
    expect(dividers?.map(({ from }) => from)).toEqual(['P1', 'P2']);
    expect(dividers?.[0].mm).toBeCloseTo(Math.hypot(x + 40, y - 60), 5);
    // right and left change places
    expect(Math.cos((angleDeg * Math.PI) / 180) * radiusMm).toBeCloseTo(-x, 4);
    expect(Math.sin((angleDeg * Math.PI) / 180) * radiusMm).toBeCloseTo(y, 4);
  }
  expect(answer.table[0]?.dividers?.map(({ from }) => from)).toEqual(['D1', 'D2']);
});

it('what is taken off a round body is its radius less that of the place', () => {
  const rows = (answer.movingCut?.table ?? []).filter(({ kind }) => kind !== 'end');
  expect(rows.length).toBeGreaterThan(0);
  for (const { plannedMm, radiusMm } of rows) expect(plannedMm).toBeCloseTo(48 - radiusMm, 2);
});

it('is two cuts, one for each part, and the JSON has that of the moving part apart', () => {
  const [fixed, moving] = plan.cuts as [PartCut, PartCut];
  expect([fixed.part, moving.part]).toEqual(['fixed', 'moving']);
  expect(cutAnswer(fixed).sections).toEqual(answer.sections);
  expect({ ...cutAnswer(moving), table: answer.movingCut?.table }).toEqual(answer.movingCut);
  expect(answer.movingCut?.table).toEqual(markingOut(joint, plan)[1]?.map(markingAnswer));
});

it('each lies on a bench of its own, against the other as that is cut', () => {
  const [fixed, moving] = benchesFor({ joint, plan });
  expect(fixed?.joint.moving).toBe(plan.cuts[1]?.after);
  expect(moving?.joint.fixed).toBe(plan.cuts[0]?.after);
  // in the joint the boss is on the right; looking at the body's own face it is on the left
  expect(fixed?.bands[0]?.places.every(({ at }) => at.x > 0)).toBe(true);
  expect(moving?.bands[0]?.places.every(({ at }) => at.x < 0)).toBe(true);
});

it('is told part by part, and the first line names both', () => {
  const text = grindText(joint, plan, []);
  expect(text).toMatch(/^THE PLAN HOLDS: take .* off Housing and .* off Starter\./s);
  expect(text).toMatch(/Take off Housing\n.*\n {2}boss /);
  expect(text).toMatch(/Take off Starter\n.*\n {2}body /);
  expect(text).toContain('Not to be cut of Housing\n  - "ear"');
});

it('is no touch only, though the first part is planned with less clearance than is asked', () => {
  expect(plan.cuts).toHaveLength(2);
  expect(plan.notices.map(({ code }) => code)).not.toContain('plans-a-touch');
});
