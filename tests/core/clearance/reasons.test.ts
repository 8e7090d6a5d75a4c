import { describe, expect, test } from 'vitest';
import { checkJoint } from '../../../src/clearance/check.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { drawingOf } from '../../../src/joint/notices.ts';
import { reasonTexts } from '../../../src/words/reasons.ts';
import { box, castingOf, dowel, type JobSpec } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';
import { answerTo } from '../../support/plan-answer.ts';

const partOf = (name: string, depth: readonly [number, number] | null, x = 0, size = 10) =>
  castingOf({ name, sections: [{ id: name, depth, mayCut: true, loops: [box(x, 0, x + size, size)] }] });

/** A rib from 12 to 60 deep and a lip that stands 40 proud beside it, slid straight in from far out. */
const sound: JobSpec = {
  fixed: partOf('block', [12, 60]),
  moving: partOf('housing', [-40, -20], 15),
  offerUp: [{ standOff: 100 }, {}],
};

const check = (spec: JobSpec) => drain(checkJoint(jointOf(spec)));

/** Every job that is refused, with the reason and what its text has to name. */
const refused: [string, JobSpec, string, RegExp][] = [
  [
    'both parts run into their own sides',
    { ...sound, moving: partOf('housing', [20, 40], 15) },
    'never-shares-depth',
    /sign of all depths of housing\.part\.json/,
  ],
  [
    'nothing is shared at home, where only that is asked',
    { ...sound, moving: partOf('housing', [20, 40], 15), offerUp: [] },
    'never-shares-depth',
    /on one side/,
  ],
  [
    'nothing is shared at home but on the way in',
    { ...sound, fixed: partOf('block', [-60, -12]), offerUp: [{ standOff: 120 }, {}] },
    'home-shares-nothing',
    /sign of all depths of block\.part\.json/,
  ],
  [
    'the way in sets out in shared depth',
    { ...sound, offerUp: [{ standOff: 10 }, {}] },
    'starts-in-shared-depth',
    /farther out/,
  ],
  [
    'the way in of a section without depth has no outside',
    { ...sound, moving: partOf('housing', null, 15) },
    'starts-in-shared-depth',
    /Give "housing" a depth/,
  ],
  ['nothing comes near', { ...sound, moving: partOf('housing', [-40, -20], 36) }, 'never-near', /Fewer|fewer than two/],
  [
    'one part is 25 times the other',
    { ...sound, moving: partOf('housing', [-40, -20], 15, 254) },
    'sizes-differ',
    /inches/,
  ],
];

describe('what is not judged', () => {
  test('is nothing of a sound job', () => {
    expect(check(sound)).toMatchObject({ verdict: 'goes', reason: null, meetsClearance: true });
  });

  test.each(refused)('%s', (_, spec, reason, cause) => {
    const found = check(spec);
    expect(found).toMatchObject({ verdict: 'undecided', reason, meetsClearance: false });
    expect(reasonTexts(jointOf(spec), found)).toEqual([expect.stringMatching(cause)]);
  });

  test.each(refused)('%s: nothing is planned either', (_, spec, reason) => {
    const answer = answerTo(jointOf(spec), true);
    expect(answer).toMatchObject({ holds: false, reason, sections: [], table: [], alternatives: [] });
    expect(answer.warnings.map(({ code }) => code)).toContain(reason);
  });

  test.each(refused)('%s: meant so, it is a warning and the verdict is that of the figures', (_, spec, reason) => {
    const found = check({ ...spec, nothingShares: true });
    expect(found.reason).toBeNull();
    expect(found.verdict).not.toBe('undecided');
    expect(found.notices.map(({ code }) => code)).toContain(reason);
  });

  test('is what does not register, even where nothing shared is meant', () => {
    const joint = jointOf({ ...sound, nothingShares: true });
    const drawings = { fixed: drawingOf(joint.fixed), moving: drawingOf(joint.moving) };
    const refusal = { code: 'hand-mirrored', asDrawnRmsMm: 9, mirroredRmsMm: 0, ...drawings, instead: [] } as const;
    const found = drain(checkJoint({ ...joint, refusal, notices: [refusal] }));
    expect(found).toMatchObject({ verdict: 'undecided', reason: 'hand-mirrored', meetsClearance: false });
  });
});

describe('the limits', () => {
  test('25 mm apart is near', () => {
    expect(check({ ...sound, moving: partOf('housing', [-40, -20], 35) }).reason).toBeNull();
  });

  test('a part 25 times the other is as drawn where two dowels confirm the scale', () => {
    const holes = (name: string) => [dowel(`${name}1`, [-150, 0]), dowel(`${name}2`, [150, 0])];
    const spec: JobSpec = {
      ...sound,
      fixed: { ...partOf('block', [12, 60]), holes: holes('D') },
      moving: { ...partOf('housing', [-40, -20], 15, 254), viewedFrom: 'back', holes: holes('P') },
      dowels: [
        ['D1', 'P1'],
        ['D2', 'P2'],
      ],
    };
    expect(check(spec).reason).toBeNull();
  });
});

describe('metal that begins inside other metal', () => {
  test('is told as a likely mistake, and fouls', () => {
    const moving = castingOf({
      name: 'housing',
      sections: [{ id: 'bell', depth: [-40, -20], loops: [box(-50, -50, 50, 50)] }],
    });
    const found = check({ fixed: partOf('block', [12, 60]), moving });
    expect(found.verdict).toBe('fouls');
    expect(found.notices.map(({ code }) => code)).toContain('inside-other-metal');
  });

  test('is not where a hollow is drawn hollow, nor where outlines only cross', () => {
    const hollow = [box(-50, -50, 50, 50), box(-20, -20, 20, 20)];
    const moving = castingOf({ name: 'housing', sections: [{ id: 'bell', depth: [-40, -20], loops: hollow }] });
    for (const other of [moving, partOf('housing', [-40, -20], 5)]) {
      const { notices } = check({ fixed: partOf('block', [12, 60]), moving: other });
      expect(notices.map(({ code }) => code)).not.toContain('inside-other-metal');
    }
  });
});
