import { describe, expect, it } from 'vitest';
import { checkAnswer } from '../../../src/answers/check.ts';
import { grindAnswer } from '../../../src/answers/grind.ts';
import { checkJoint } from '../../../src/clearance/check.ts';
import { roomToDraw } from '../../../src/clearance/room.ts';
import { drawFit } from '../../../src/drawing/fit/draw-fit.ts';
import type { Scene } from '../../../src/drawing/scene/scene.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { drain } from '../../../src/geometry/progress.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import { markingOut } from '../../../src/markout/marking-out.ts';
import { alternativesTo } from '../../../src/plan/alternatives/alternatives.ts';
import { cutterNotices } from '../../../src/plan/cutter/cutter-notices.ts';
import type { CutterResult } from '../../../src/plan/cutter/cutter-result.ts';
import { planCut } from '../../../src/plan/plan-cut.ts';
import { checkText } from '../../../src/words/check-text.ts';
import { grindText } from '../../../src/words/grind-text.ts';
import { planNoticeText } from '../../../src/words/plan-notices.ts';
import { demos } from '../../support/demos.ts';
import { demoIn } from '../../support/inch-demos.ts';
import { boltHole, box, castingOf, disc, dowel, tapped } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';
import { markoutFor } from '../../support/plan-answer.ts';
import { elementsOf, parsedReport, reportOf, textOf } from '../../support/reports.ts';

const names = Object.keys(demos) as (keyof typeof demos)[];

/** All that may stand in millimetres on the sheets of an inch job. */
const inMm = [
  // the check bars, whose reading `--bars` takes in mm
  /150 mm(?= at 100 %|: measure|$)/g,
];

/** Figures in millimetres, with some words about them. */
function millimetresIn(text: string): string[] {
  const bare = inMm.reduce((left, pattern) => left.replaceAll(pattern, ''), text);
  return bare.match(/.{0,30}\d\s?mm.{0,20}/g) ?? [];
}

const wordsOf = (scene: Scene): string[] =>
  scene.views.flatMap(({ layers }) =>
    layers.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))),
  );

function answersTo(joint: Joint) {
  const check = drain(checkJoint(joint));
  const plan = drain(planCut(joint));
  const alternatives = drain(alternativesTo(joint, plan));
  return { check, plan, alternatives, answer: grindAnswer(joint, plan, markingOut(joint, plan), alternatives) };
}

const answered = new Map(names.map((name) => [name, lazily(() => bothOf(name))]));

function bothOf(name: keyof typeof demos) {
  const [mm, inch] = [demoIn('mm', name), demoIn('in', name)];
  return { inch, mm, inInches: answersTo(inch), inMm: answersTo(mm) };
}

function lazily<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

const of = (name: keyof typeof demos) => (answered.get(name) as () => ReturnType<typeof bothOf>)();

it('every warning that names a length names it in the units of the fit', () => {
  const turned = { standOff: 0.1 * 25.4, turn: 10 };
  const shifted = { standOff: 0.5 * 25.4, shift: [0, 5] as const };
  const joint = jointOf({
    units: 'in',
    fixed: castingOf({
      name: 'block',
      holes: [
        ...[dowel('D1', [-100, 0], 6.35), dowel('D2', [100, 0], 6.35)],
        ...[tapped('B1', [0, 90]), tapped('B2', [20, 90])],
      ],
      sections: [{ traceErrorStated: false, traceErrorMm: 1 }],
    }),
    moving: castingOf({
      name: 'case',
      holes: [
        ...[dowel('P1', [-100, 0]), dowel('P2', [100.8, 0])],
        ...[boltHole('H1', [0, -90]), boltHole('H2', [20, -90])],
      ],
      sections: [{ id: 'lip', depth: [0, 40], loops: [box(52, -5, 66, 5)] }],
    }),
    rotating: [
      castingOf({ name: 'clutch', sections: [{ depth: [-40, -0.5], loops: [disc(0, 0, 50)] }] }),
      castingOf({ name: 'ring', sections: [{ depth: [-40, 10], loops: [disc(0, 0, 50)] }] }),
    ],
    dowels: [['D1', 'P1'] as const, ['D2', 'P2'] as const],
    bolts: [['B1', 'H1'] as const, ['B2', 'H2'] as const],
    offerUp: [shifted, turned, { standOff: 2.54 }, {}],
    engagesAtMm: 25.4,
  });
  const cutter: CutterResult = {
    ...{ radiusMm: 4.7625, nose: 'ball', scallopMm: null, neededVolumeMm3: 1, extraVolumeMm3: 1, extraMassG: 1 },
    ends: (['left', 'against'] as const).map((what) => ({
      ...{ section: 'ribs', atMm: 38.1, towards: 'back', what, mm: 6.35, reachMm: 5.08, against: 'web' },
      at: vec(0, 0),
    })),
    narrow: [{ section: 'ribs', at: vec(0, 0), gapMm: 7.62 }],
    covered: [],
  };
  const notices = cutterNotices(cutter).map((notice) => ({ code: notice.code, text: planNoticeText(notice, 'in') }));
  const warnings = [...checkAnswer(joint, drain(checkJoint(joint))).warnings, ...notices];
  expect(warnings.flatMap(({ text }) => millimetresIn(text))).toEqual([]);
  const named = warnings.filter(({ text }) => /\d in\b/.test(text)).map(({ code }) => code);
  expect([...new Set(named)]).toEqual([
    ...['hand-mirrored', 'dowel-spacing-measure-again', 'bolt-does-not-line-up', 'off-line-on-dowels'],
    ...['off-line-on-shaft', 'trace-error-assumed', 'rotating-close'],
    ...['cutter-fillet-left', 'cutter-fillet-against', 'cutter-cannot-enter'],
  ]);
  const texts = warnings.map(({ text }) => text).join('\n');
  expect(texts).toContain('does not line up: 7.087 in off, 0.03 in allowed');
  expect(texts).toContain('stand-off down to 0.1 in, but a dowel stands 0.25 in proud');
});

describe.each(names)('%s as an inch job', (name) => {
  it('speaks inches in check, grind and every warning', () => {
    const { inch, inInches } = of(name);
    const { check, plan, alternatives, answer } = inInches;
    const texts = [
      checkText(inch, check),
      grindText(inch, plan, alternatives),
      ...[...checkAnswer(inch, check).warnings, ...answer.warnings].map(({ text }) => text),
    ];
    expect(texts.flatMap(millimetresIn)).toEqual([]);
    expect(texts.join(' ')).toMatch(/\d in\b/);
  });

  it('speaks inches on its drawing and on every sheet', () => {
    const { inch, inInches } = of(name);
    const { sheets, notMade } = markoutFor({ joint: inch, plan: inInches.plan });
    const drawn = { joint: inch, ...inInches, room: roomToDraw(inch) };
    const scenes = [drawFit(drawn), ...sheets.flatMap((sheet) => sheet.scenes(true))];
    const texts = [
      ...notMade,
      ...sheets.flatMap(({ purpose, csv }) => [purpose, csv ?? '']),
      ...scenes.flatMap((scene) => [scene.title, scene.description, ...wordsOf(scene)]),
    ];
    expect(texts.flatMap(millimetresIn)).toEqual([]);
  });

  it('speaks inches in its report', () => {
    const { inch, inInches } = of(name);
    const html = parsedReport(reportOf({ joint: inch, ...inInches, room: roomToDraw(inch) }));
    const [body] = elementsOf(html, 'body');
    // the width and height of a drawing are in attributes, and so no words
    expect(millimetresIn(body === undefined ? '' : textOf(body))).toEqual([]);
  });

  it('has the answers of the same job in millimetres', () => {
    const { inch, mm, inInches, inMm: inMillimetres } = of(name);
    expectAlike(checkAnswer(inch, inInches.check), checkAnswer(mm, inMillimetres.check));
    expectAlike(inInches.answer, inMillimetres.answer);
  });
});

/** Texts are in the job's units; all the rest of an answer is the same. */
const isWords = (key: string): boolean => ['text', 'against', 'title'].includes(key);

function expectAlike(one: unknown, other: unknown, at = ''): void {
  if (typeof one === 'number' && typeof other === 'number') {
    expect(Math.abs(one - other), `${at}: ${one} and ${other}`).toBeLessThan(1e-5);
  } else if (typeof one === 'object' && one !== null && typeof other === 'object' && other !== null) {
    expect(Object.keys(one), at).toEqual(Object.keys(other));
    for (const [key, value] of Object.entries(one)) {
      if (!isWords(key)) expectAlike(value, (other as Record<string, unknown>)[key], `${at}/${key}`);
    }
  } else expect(one, at).toBe(other);
}
