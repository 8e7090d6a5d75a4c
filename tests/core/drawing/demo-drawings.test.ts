import { describe, expect, test } from 'vitest';
import { drawFit } from '../../../src/drawing/fit/draw-fit.ts';
import { overlap } from '../../../src/drawing/scene/frame.ts';
import { svgOf } from '../../../src/drawing/svg/svg.ts';
import { demos, demoToDraw } from '../../support/demos.ts';
import { parsedSvg, textBoxes } from '../../support/drawings.ts';

const names = Object.keys(demos) as (keyof typeof demos)[];

/** Drawn once; every fact below is about these. */
const drawn = new Map(names.map((name) => [name, drawFit(demoToDraw(name))]));

describe.each(names)('the drawing of the demo %s', (name) => {
  const scene = drawn.get(name);
  if (scene === undefined) throw new Error(name);
  const svg = svgOf(scene);

  // made by our own code: it shows what has changed, not what is right
  test('is as last looked at', async () => {
    await expect(svg).toMatchFileSnapshot(`../../golden/${name}.svg`);
  });

  test('is well-formed XML', () => {
    expect(parsedSvg(svg).documentElement?.tagName).toBe('svg');
  });

  test('says from where it is viewed and what it is proved for', () => {
    expect(svg).toMatch(/viewed from/i);
    expect(svg).toContain('Proved for the outlines as traced');
    expect(svg).toContain('geometry only');
  });

  test('has no line of text over another', () => {
    const boxes = textBoxes(scene);
    const over = boxes.flatMap((a, i) =>
      boxes.slice(i + 1).flatMap((b) => (overlap(a.box, b.box) ? [[a.text, b.text]] : [])),
    );
    expect(over).toEqual([]);
  });

  test('keeps every line of text on the sheet', () => {
    const off = textBoxes(scene).filter(
      ({ box }) => box.minX < 0 || box.minY < 0 || box.maxX > scene.widthMm || box.maxY > scene.heightMm,
    );
    expect(off).toEqual([]);
  });

  test('runs no script and fetches nothing', () => {
    expect(svg).not.toMatch(/<script|\son\w+=|href|url\((?!#)|@import/);
  });
});
