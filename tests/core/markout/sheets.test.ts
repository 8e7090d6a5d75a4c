import { describe, expect, it } from 'vitest';
import { overlap } from '../../../src/drawing/scene/frame.ts';
import { svgOf } from '../../../src/drawing/svg/svg.ts';
import { parsedSvg, textBoxes } from '../../support/drawings.ts';
import { caseCutInstead, lugJob, plannedDemo, plannedJob } from '../../support/markout-jobs.ts';
import { markoutFor, type PlannedJoint } from '../../support/plan-answer.ts';

const scenesOf = (planned: PlannedJoint, mirrored = false) =>
  markoutFor(planned, mirrored).sheets.flatMap(({ name, scenes }) =>
    scenes(true).map((scene, i) => [`${name} ${i + 1}`, scene] as const),
  );

const all = [
  ...scenesOf(plannedDemo('transfer-case')).map(([name, scene]) => [`carrier: ${name}`, scene] as const),
  ...scenesOf(plannedDemo('starter')).map(([name, scene]) => [`starter: ${name}`, scene] as const),
  ...scenesOf(caseCutInstead()).map(([name, scene]) => [`case: ${name}`, scene] as const),
  ...scenesOf(plannedJob(lugJob)).map(([name, scene]) => [`lug: ${name}`, scene] as const),
];

describe.each(all)('%s', (_, scene) => {
  const svg = svgOf(scene);
  const words = scene.views.flatMap(({ layers }) =>
    layers.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))),
  );

  it('says what it is, from where it is seen, its hand, its part and casting number, and what it is proved for', () => {
    const said = words.join(' ');
    expect(said).toContain(scene.title);
    expect(said).toMatch(/Viewed from (in front|outside)/);
    expect(said).toMatch(/Hand: as the casting, not mirrored/);
    expect(said).toMatch(/Part: .*casting number/);
    expect(said).toContain('Proved for the outlines as traced');
    expect(said).toContain('geometry only');
  });

  it('has all its lettering on the sheet', () => {
    const off = textBoxes(scene).filter(
      ({ box }) => box.minX < 0 || box.minY < 0 || box.maxX > scene.widthMm || box.maxY > scene.heightMm,
    );
    expect(off).toEqual([]);
  });

  it('has no line of its head over another', () => {
    const head = textBoxes(scene).filter(({ view }) => view === 'words');
    const over = head.flatMap((a, i) => head.slice(i + 1).filter((b) => overlap(a.box, b.box)));
    expect(over.map(({ text }) => text)).toEqual([]);
  });

  it('has check bars of 150 mm both ways', () => {
    const bars = scene.views.find(({ id }) => id === 'check-bars');
    const spans = (bars?.layers ?? []).flatMap(({ marks }) =>
      marks.flatMap((mark) => {
        const [a, b] = mark.kind === 'polyline' ? mark.points : [];
        return a && b ? [[b.x - a.x, b.y - a.y]] : [];
      }),
    );
    expect(spans).toContainEqual([150, 0]);
    expect(spans).toContainEqual([0, 150]);
  });

  it('is well-formed SVG at true scale', () => {
    const root = parsedSvg(svg).documentElement;
    expect(root?.getAttribute('width')).toBe(`${scene.widthMm}mm`);
    expect(root?.getAttribute('viewBox')).toBe(`0 0 ${scene.widthMm} ${scene.heightMm}`);
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('a plan that does not hold', () => {
  it('says so large on every sheet', () => {
    for (const [, scene] of scenesOf(plannedDemo('transfer-case'))) {
      expect(scene.description).toContain('THE PLAN DOES NOT HOLD');
      expect(scene.description).toContain('Do not cut to this yet');
    }
    for (const [, scene] of scenesOf(plannedDemo('starter'))) expect(scene.description).not.toContain('DOES NOT HOLD');
  });
});

describe('a mirrored set', () => {
  const mirrored = markoutFor(plannedJob(lugJob), true);

  it('is labelled so on every sheet and in every name', () => {
    for (const { name, scenes, dxf } of mirrored.sheets) {
      expect(name).toMatch(/-mirrored$/);
      for (const scene of scenes(false)) {
        expect(scene.title).toMatch(/^MIRRORED: /);
        expect(scene.description).toContain('MIRRORED');
      }
      if (dxf !== null) expect(dxf).toContain('MIRRORED');
    }
  });

  it('is the mirror image: the lug it cuts for stands on the left', () => {
    const cutX = (planned: typeof mirrored): number => {
      const text = planned.sheets[0]?.dxf ?? '';
      const tags = text.split('\n');
      const xs = tags.flatMap((value, i) => (tags[i - 1] === '10' && tags[i - 2] === 'RELIEF' ? [Number(value)] : []));
      return Math.max(...xs) > 0 ? 1 : -1;
    };
    expect(cutX(markoutFor(plannedJob(lugJob)))).toBe(1);
    expect(cutX(mirrored)).toBe(-1);
  });
});

describe('what is not made says why', () => {
  it('no face template for cuts that begin behind the face', () => {
    const { sheets, notMade } = markoutFor(plannedDemo('transfer-case'));
    expect(sheets.map(({ name }) => name)).not.toContain('face-template');
    expect(notMade.join()).toContain('no cut begins at the face (ribs, 12–38 mm from face)');
  });

  it('a face template where one does', () => {
    expect(markoutFor(plannedJob(lugJob)).sheets.map(({ name }) => name)).toContain('face-template');
  });

  it('nothing at all where nothing is cut', () => {
    expect(markoutFor(plannedDemo('adapter'))).toEqual({ sheets: [], notMade: [] });
  });
});
