import { describe, expect, test } from 'vitest';
import type { NearestPlaces, RotatingResult } from '../../../src/clearance/check-result.ts';
import { drawFit } from '../../../src/drawing/fit/draw-fit.ts';
import { overlap } from '../../../src/drawing/scene/frame.ts';
import { boxOfMark } from '../../../src/drawing/scene/marks.ts';
import type { Scene } from '../../../src/drawing/scene/scene.ts';
import type { Role } from '../../../src/drawing/scene/styles.ts';
import { svgOf } from '../../../src/drawing/svg/svg.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { demoToDraw } from '../../support/demos.ts';
import { elementById, fullInput, fullJob, parsedSvg, textBoxes } from '../../support/drawings.ts';
import { castingOf, disc } from '../../support/jobs.ts';
import { bandOf, planOf } from '../../support/plans.ts';

const full = drawFit(fullInput());

/** Roles that speak for themselves, or only ever go with another that is listed. */
const unlisted: readonly Role[] = [
  'text',
  'leader',
  'frame',
  'scale-block',
  'detail-ring',
  'fixed-metal',
  'relief-hatch',
];

function rolesIn(scene: Scene, isWanted: (id: string) => boolean): Set<Role> {
  const views = scene.views.filter(({ id }) => isWanted(id));
  const roles = views.flatMap(({ layers }) => layers.map(({ role }) => role));
  return new Set(roles.filter((role) => !unlisted.includes(role)));
}

describe('the legend', () => {
  const pictures = (id: string): boolean => id.endsWith('-view') || id.startsWith('detail-');
  const cases: [string, Scene][] = [
    ['a full job', full],
    ['a job without a plan', drawFit({ ...fullInput(), plan: null })],
    ['an adapter that goes', drawFit(demoToDraw('adapter'))],
  ];
  test.each(cases)('of %s explains every kind of mark drawn, and no other', (_, scene) => {
    // a dowel is drawn as a hole with its quarters filled, so its sample has both
    expect(rolesIn(scene, (id) => id === 'legend')).toEqual(rolesIn(scene, pictures));
  });

  test('of a full job has something of every kind', () => {
    expect(rolesIn(full, pictures).size).toBeGreaterThanOrEqual(20);
  });
});

describe('true scale', () => {
  const svg = parsedSvg(svgOf(full));

  test('the sheet is as many mm wide as it has user units', () => {
    const [, , width, height] = (svg.documentElement?.getAttribute('viewBox') ?? '').split(' ');
    expect(svg.documentElement?.getAttribute('width')).toBe(`${width}mm`);
    expect(svg.documentElement?.getAttribute('height')).toBe(`${height}mm`);
  });

  test('the 100 mm scale bar is 100 user units long', () => {
    const d = elementById(svg, 'scale-bar-frame').getElementsByTagName('path')[0]?.getAttribute('d') ?? '';
    const xs = [...d.matchAll(/[ML](-?[\d.]+),/g)].map(([, x]) => Number(x));
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(100, 3);
    expect(elementById(svg, 'scale-bar-text').textContent).toContain('100 mm');
  });

  test('a circle of radius 130 mm is one of 130 user units, and so in the side view a plate 10 mm thick', () => {
    const arcs = [...svgOf(full).matchAll(/A130 130 /g)];
    expect(arcs.length).toBeGreaterThanOrEqual(2);
    const d = elementById(svg, 'side-view-moving-beyond').getElementsByTagName('path')[0]?.getAttribute('d') ?? '';
    const xs = [...d.matchAll(/[ML](-?[\d.]+),/g)].map(([, x]) => Number(x));
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(10, 3);
  });

  test('the side view stands level with the face view', () => {
    const at = (id: string): number | undefined => full.views.find((view) => view.id === id)?.at.y;
    expect(at('side-view')).toBe(at('face-view'));
  });
});

describe('the side it is seen from', () => {
  const sideOf = (scene: Scene): string | undefined =>
    textBoxes(scene)
      .map(({ text }) => /seen from its (\w+)/.exec(text)?.[1])
      .find((side) => side !== undefined);

  test('is the same before a cut was planned and with its plan', () => {
    for (const name of ['transfer-case', 'starter'] as const) {
      const input = demoToDraw(name);
      expect(sideOf(drawFit({ ...input, plan: null }))).toBe(sideOf(drawFit(input)));
    }
  });

  test('is not turned by where a plan cuts: what is in the way as it is decides', () => {
    const input = fullInput();
    const side = sideOf(drawFit(input));
    for (const x of [-200, 200]) {
      const planned = [[vec(x - 5, -5), vec(x + 5, -5), vec(x + 5, 5), vec(x - 5, 5)]];
      const bands = [bandOf({ planned, first: [], last: planned })];
      const plan = planOf(input.joint, { sections: [{ id: 'ribs', nothingLeft: false, bands }] });
      expect(sideOf(drawFit({ ...input, plan }))).toBe(side);
    }
  });

  test('is kept where it was seen from before', () => {
    for (const seenFrom of ['left', 'right'] as const)
      expect(sideOf(drawFit({ ...fullInput(), seenFrom }))).toBe(seenFrom);
  });
});

describe('words', () => {
  test('no line of text lies over another, however long the names', () => {
    const long = 'A flywheel housing of quite exceptional length of name and W W W W W W W W';
    const input = fullInput({
      ...fullJob,
      title: long.repeat(3),
      fixed: { ...(fullJob.fixed as NonNullable<typeof fullJob.fixed>), name: long, castingNumber: long },
    });
    const boxes = textBoxes(drawFit(input));
    const over = boxes.flatMap((a, i) =>
      boxes.slice(i + 1).flatMap((b) => (overlap(a.box, b.box) ? [[a.text, b.text]] : [])),
    );
    expect(over).toEqual([]);
  });

  test('names from a file are escaped and keep what they say', () => {
    const name = `<b>"Tom's" & Co</b>`;
    const svg = svgOf(drawFit(fullInput({ ...fullJob, title: name })));
    expect(svg).not.toContain('<b>');
    expect(elementById(parsedSvg(svg), 'heading').textContent).toContain(name);
  });

  test('characters that XML has no place for do not break the file', () => {
    const svg = svgOf(
      drawFit(fullInput({ ...fullJob, title: 'bell \u0007, half a letter \ud83d, a whole one \u{1f527}' })),
    );
    expect(elementById(parsedSvg(svg), 'heading').textContent).toContain(
      'bell ·, half a letter ·, a whole one \u{1f527}',
    );
  });

  test('a bolt that does not line up says by how much', () => {
    expect(svgOf(full)).toContain('B1: 0.9 mm out');
  });

  test('the casting number and the tracing error stand on the sheet', () => {
    const words = elementById(parsedSvg(svgOf(full)), 'notes').textContent ?? '';
    expect(words).toContain('4711-A');
    expect(words).toContain('± 0.5 mm');
  });
});

describe('what is drawn', () => {
  test('the foul in the side view is only as deep as the moving part reaches', () => {
    // lip [-30, 0] at stand-off 12: z from -18 to 12, so 12 to 18 mm into a rib that begins at 12
    const d =
      elementById(parsedSvg(svgOf(full)), 'side-view-foul')
        .getElementsByTagName('path')[0]
        ?.getAttribute('d') ?? '';
    const xs = [...d.matchAll(/[ML](-?[\d.]+),/g)].map(([, x]) => Number(x));
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(6, 3);
  });

  test('without a plan nothing is hatched to come off', () => {
    const svg = svgOf(drawFit({ ...fullInput(), plan: null }));
    expect(svg).not.toContain('class="relief');
    expect(svg).not.toContain('last-line');
  });

  test('a fit whose parts have nothing but a disc each can be drawn', () => {
    const bare = {
      fixed: castingOf({ sections: [{ depth: null, loops: [disc(0, 0, 5)] }] }),
      moving: castingOf({ sections: [{ depth: null, loops: [disc(20, 0, 5)] }] }),
    };
    const input = { ...fullInput(bare), plan: null, room: [] };
    expect(
      parsedSvg(svgOf(drawFit({ ...input, check: { ...input.check, wayIn: null } }))).documentElement,
    ).not.toBeNull();
  });

  test('a cut in the moving part is drawn at its own depth, on its own side of the faces', () => {
    const input = fullInput();
    const square = [vec(-5, 105), vec(5, 105), vec(5, 115), vec(-5, 115)];
    const band = bandOf({ depth: { fromMm: 2, toMm: 9 }, planned: [square] });
    const sections = [{ id: 'plate', nothingLeft: false, bands: [band] }];
    const plan = planOf(input.joint, { part: 'moving', sections });
    const view = drawFit({ ...input, plan }).views.find(({ id }) => id === 'side-view');
    const relief = view?.layers.find(({ role }) => role === 'relief')?.marks.map((mark) => boxOfMark(mark));
    // the foul lies to the right, so one looks from there, and z runs to the left
    expect(relief).toEqual([{ minX: -9, maxX: -2, minY: 105, maxY: 115 }]);
  });

  test('a rotating part nearer than asked is told and shown', () => {
    const input = fullInput();
    const nearest = {
      fixedAt: vec(70, 0),
      movingAt: vec(72, 0),
      fixedSection: 'Flywheel',
      movingSection: 'lip',
    } satisfies NearestPlaces;
    const close: RotatingResult = {
      part: 'Flywheel',
      against: 'moving',
      state: 'clear',
      clearanceMm: 2,
      toleranceMm: 1e-6,
      nearest,
      instant: null,
    };
    const svg = svgOf(drawFit({ ...input, check: { ...input.check, rotating: [close] } }));
    expect(svg).toContain('Flywheel to the moving part: clear, 2.0 mm as traced; asked 4 mm.');
    expect(svg).toContain('closest to Flywheel 2.0 mm');
  });

  test('a fit in inches has its figures and its bar in inches', () => {
    const svg = svgOf(drawFit(fullInput({ ...fullJob, units: 'in' })));
    expect(svg).toContain('Home: clear, 0.39 in as traced');
    expect(svg).toContain('>4 in<');
  });
});
