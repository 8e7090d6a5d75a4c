import { describe, expect, it } from 'vitest';
import { choicesAnswer } from '../../../src/answers/choices.ts';
import { choicesAnswerSchema } from '../../../src/answers/choices-answer.ts';
import { drain } from '../../../src/geometry/progress.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import { analysisOf } from '../../../src/pipeline/analysis.ts';
import type { Choices, CutterChoice, PartChoice } from '../../../src/plan/choices/choices.ts';
import { planCut } from '../../../src/plan/plan-cut.ts';
import { filletStressFactor } from '../../../src/trade/fillet-stress.ts';
import { choicesText } from '../../../src/words/choices-text.ts';
import { demoIn } from '../../support/inch-demos.ts';
import { box, castingOf, type JobSpec } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';

const choicesOf = (joint: Joint): Choices => drain(analysisOf(joint).choices());
const told = (joint: Joint): string => choicesText(joint, choicesOf(joint)).replace(/\s+/g, ' ');

const flat = { radiusMm: 3, nose: 'flat', handErrorMm: 0.5, runOut: 'cut-past', stepoverMm: null } as const;
const iron = { name: 'grey-iron', densityGPerCm3: 7.2 };
const boss = { id: 'boss', depth: [0, 20] as const, loops: [box(90, -5, 110, 5)], mayCut: true };
const lip = { id: 'lip', depth: [-10, 0] as const, loops: [box(105, -20, 125, 20)], mayCut: true };

/** A boss 10 mm wide that stands 5 mm into a lip at home. */
const bossUnderLip = (said: JobSpec = {}): Joint =>
  jointOf({
    fixed: castingOf({ name: 'block', sections: [boss], material: iron }),
    moving: castingOf({ name: 'housing', sections: [lip], material: iron }),
    clearance: 1,
    depthMarginMm: 0,
    ...said,
  });

const partOf = ({ parts }: Choices, cut: PartChoice['cut']): PartChoice | undefined =>
  parts.find((part) => part.cut === cut);

describe('which part to cut', () => {
  it('the boss loses its end, 6 by 10 by 10 mm, or the lip a pocket as deep and rounded by the clearance', () => {
    const choices = choicesOf(bossUnderLip());
    expect(partOf(choices, 'fixed')?.volumeMm3).toBeCloseTo(600, 0);
    expect(partOf(choices, 'fixed')?.massG).toBeCloseTo(4.32, 2);
    // 6 mm of the boss grown by 1 mm all round, whose two corners are quarters of a circle
    expect(partOf(choices, 'moving')?.volumeMm3).toBeCloseTo(10 * (72 - 2 * (1 - Math.PI / 4)), 0);
    expect(choices.parts.map(({ holds }) => holds)).toEqual([true, true, true]);
    expect(told(bossUnderLip())).toMatch(/^A PLAN HOLDS: cutting block takes least, 4\.3 g \(0\.6 cm³\)/);
  });

  it('each is what it is when planned by itself', () => {
    const joint = bossUnderLip({ cutter: flat });
    for (const { cut, volumeMm3 } of choicesOf(joint).parts) {
      const alone = drain(planCut({ ...joint, fit: { ...joint.fit, cut } }));
      expect(alone.cuts.reduce((sum, part) => sum + (part.volumeMm3 ?? 0), 0)).toBe(volumeMm3);
    }
  });

  it('says what stands against a part: not offered, not to be cut, a wall', () => {
    const gallery = { id: 'gallery', loops: [box(92, -2, 102, 2)], depth: [0, 20] as const, keepWallMm: 5 };
    const joint = bossUnderLip({
      fixed: castingOf({ name: 'block', sections: [boss], hollows: [gallery] }),
      moving: castingOf({ name: 'housing', sections: [{ ...lip, mayCut: false }] }),
    });
    const choices = choicesOf(joint);
    expect(partOf(choices, 'fixed')).toMatchObject({ holds: false, leastWall: { of: 'hollow', id: 'gallery' } });
    const text = told(joint);
    expect(text).toMatch(/^NO PLAN HOLDS/);
    expect(text).toMatch(/Cutting block: \d\.\d mm is left at "gallery"\./);
    expect(text).toContain('Cutting housing: "lip" is in the way and not offered.');
    expect(text).toContain('Nothing of housing is offered to the grinder');
    const kept = bossUnderLip({
      fixed: castingOf({ name: 'block', sections: [boss], doNotCut: [{ id: 'ear', loops: [box(100, -9, 120, 9)] }] }),
    });
    expect(told(kept)).toContain('Cutting block: "ear" is not to be cut.');
  });
});

describe('which cutter', () => {
  const pocket = (cuttersMm: readonly number[] | null, said: JobSpec = {}): Joint =>
    bossUnderLip({ cut: 'moving', cutter: flat, cuttersMm, ...said });

  it('leaves fillets of its own radius, but none tighter than the clearance leaves of itself', () => {
    const fillets = choicesOf(pocket([0.5, 2, 4])).cutters.map(({ leastFilletMm }) => leastFilletMm);
    for (const [i, expected] of [1, 2, 4].entries()) expect(fillets[i]).toBeCloseTo(expected, 2);
  });

  it('takes more the larger it is, and the largest within 5 % of the least is named', () => {
    const { cutters, kindestMm } = choicesOf(pocket([1, 2, 3, 5, 8]));
    const more = cutters.map(({ moreThanLeast }) => moreThanLeast ?? Number.NaN);
    expect(more[0]).toBe(0);
    for (const [i, share] of more.slice(1).entries()) expect(share).toBeGreaterThan(more[i] as number);
    expect(kindestMm).toBe(cutters.findLast(({ moreThanLeast }) => (moreThanLeast ?? 1) <= 0.05)?.radiusMm);
    expect(told(pocket([1, 2, 3, 5, 8]))).toContain(
      `${kindestMm} mm is the largest that takes at most 5 % more metal than the least. A larger fillet is kinder`,
    );
  });

  it('is each planned as the fit would be with that cutter', () => {
    const joint = pocket([2, 3]);
    const of = ({ radiusMm, holds, volumeMm3 }: Pick<CutterChoice, 'radiusMm' | 'holds' | 'volumeMm3'>) => [
      radiusMm,
      holds,
      volumeMm3,
    ];
    const planned = [2, 3].map((radiusMm) => {
      const { holds, cuts } = drain(planCut({ ...joint, fit: { ...joint.fit, cutter: { ...flat, radiusMm } } }));
      return { radiusMm, holds, volumeMm3: cuts[0]?.volumeMm3 ?? null };
    });
    expect(choicesOf(joint).cutters.map(of)).toEqual(planned.map(of));
  });

  it('stands beside the smallest by the ratio of their stress in the bar of reference', () => {
    const bar = { wideMm: 40, narrowMm: 30 };
    const { cutters } = choicesOf(pocket([2.5, 5]));
    expect(cutters[0]?.stressRatio).toBe(1);
    // Peterson's factors, computed: 1.817 / 2.170
    expect(cutters[1]?.stressRatio).toBeCloseTo(1.817 / 2.17, 3);
    expect(filletStressFactor(bar, 2.5)).not.toBeNull();
    expect(told(pocket([2.5, 5]))).toMatch(
      /as a ratio, on a bar of 40 mm stepped to 30 mm in tension .* makes no strength claim/,
    );
  });

  it('has no ratio where the formula does not reach', () => {
    expect(choicesOf(pocket([0.1, 5])).cutters.map(({ stressRatio }) => stressRatio)).toEqual([null, null]);
  });

  it('is one of those in common use where the fit lists none, with its own among them', () => {
    const radii = choicesOf(pocket(null, { cutter: { ...flat, radiusMm: 7 } })).cutters.map(({ radiusMm }) => radiusMm);
    expect(radii).toEqual([3, 4, 5, 6, 7, 8, 10, 12.5]);
    expect(told(pocket(null))).toContain('by common practice and from no standard');
    expect(told(pocket([4]))).toContain('The radii are those the fit lists under "cutters".');
  });
});

describe('what is not known', () => {
  it('metal of a section without depth is not told as nothing, nor is any radius preferred', () => {
    const joint = bossUnderLip({ fixed: castingOf({ name: 'block', sections: [{ ...boss, depth: null }] }) });
    const { parts, kindestMm } = choicesOf(joint);
    expect(parts[0]).toMatchObject({ cutsNothing: false, volumeMm3: null, massG: null });
    expect(kindestMm).toBeNull();
    expect(told(joint)).toContain('cutting block not known: no depth');
    expect(told(joint)).not.toMatch(/\b0\.0 g/);
  });

  it('where nothing need come off there is nothing to choose, and where nothing is judged it says why', () => {
    const apart = { ...lip, loops: [box(115, -20, 125, 20)] };
    const clear = bossUnderLip({ moving: castingOf({ name: 'housing', sections: [apart] }) });
    expect(told(clear)).toMatch(/^NOTHING TO TAKE OFF/);
    expect(choicesOf(clear).cutters).toEqual([]);
    const far = bossUnderLip({
      moving: castingOf({ name: 'housing', sections: [{ ...lip, loops: [box(200, -20, 220, 20)] }] }),
    });
    expect(choicesOf(far)).toMatchObject({ reason: 'never-near', parts: [], cutters: [] });
    expect(told(far)).toMatch(/^NOT PLANNED: /);
  });
});

describe('the choices of the starter', () => {
  it('are JSON by their schema, in mm, in whatever unit the fit is', () => {
    const answers = (['mm', 'in'] as const).map((units) => {
      const joint = demoIn(units, 'starter');
      return choicesAnswerSchema.parse(choicesAnswer(joint, choicesOf(joint)));
    });
    expect(answers.map(({ cutters }) => cutters.map(({ radiusMm }) => radiusMm))).toEqual([
      [3, 4, 5, 6, 8, 10, 12.5],
      [3, 4, 5, 6, 8, 10, 12.5],
    ]);
    expect(answers[1]?.parts[0]?.massG).toBeCloseTo(answers[0]?.parts[0]?.massG ?? 0, 3);
  });

  it('are told in inches where the fit is, no line wider than 100 columns', () => {
    const joint = demoIn('in', 'starter');
    const text = choicesText(joint, choicesOf(joint));
    expect(text).not.toMatch(/\d ?mm\b|cm³/);
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });
});
