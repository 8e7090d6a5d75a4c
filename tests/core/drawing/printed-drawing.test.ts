import { expect, it } from 'vitest';
import { drawFit } from '../../../src/drawing/fit/draw-fit.ts';
import { printedWidthMm } from '../../../src/drawing/pdf/printed-width.ts';
import { trueBars } from '../../../src/drawing/scene/check-bars.ts';
import { wordBoxes } from '../../../src/drawing/scene/marks.ts';
import { joinlessMm, papers, tilingOf } from '../../../src/drawing/scene/papers.ts';
import { demos, demoToDraw } from '../../support/demos.ts';

const names = Object.keys(demos) as (keyof typeof demos)[];

it.each(names)(
  'no line of the heading or the notes of %s is cut where sheets of its drawing join side by side',
  (name) => {
    for (const paper of Object.values(papers)) {
      for (const bars of [trueBars, { xMm: 142, yMm: 158 }]) {
        const scene = drawFit(demoToDraw(name), joinlessMm(paper));
        const { columnJoins } = tilingOf(scene, paper, bars, printedWidthMm);
        const views = scene.views.filter(({ id }) => id === 'heading' || id === 'notes');
        expect(views).toHaveLength(2);
        const boxes = wordBoxes({ views }, printedWidthMm);
        const cut = boxes.filter(({ minX, maxX }) => columnJoins.some((join) => minX < join && join < maxX));
        expect(cut, paper.name).toEqual([]);
      }
    }
  },
);
