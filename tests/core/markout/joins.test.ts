import { expect, it } from 'vitest';
import { printedWidthMm } from '../../../src/drawing/pdf/printed-width.ts';
import { trueBars } from '../../../src/drawing/scene/check-bars.ts';
import { wordBoxes } from '../../../src/drawing/scene/marks.ts';
import { type PaperName, papers, tilingOf } from '../../../src/drawing/scene/papers.ts';
import type { Scene } from '../../../src/drawing/scene/scene.ts';
import { caseCutInstead, lugJob, plannedDemo, plannedJob } from '../../support/markout-jobs.ts';
import { markoutFor, type PlannedJoint } from '../../support/plan-answer.ts';

const jobs: readonly (readonly [string, () => PlannedJoint])[] = [
  ['the carrier', () => plannedDemo('transfer-case')],
  ['the starter', () => plannedDemo('starter')],
  ['the carrier, its case cut instead', caseCutInstead],
  ['a lug', () => plannedJob(lugJob)],
];

const cutWordsOn =
  (paper: PaperName, bars = trueBars) =>
  (scene: Scene): string[] => {
    const { columnJoins, rowJoins } = tilingOf(scene, papers[paper], bars, printedWidthMm);
    const cut = wordBoxes(scene, printedWidthMm).filter(
      ({ minX, maxX, minY, maxY }) =>
        columnJoins.some((join) => minX < join && join < maxX) ||
        rowJoins.some((join) => minY < scene.heightMm - join && scene.heightMm - join < maxY),
    );
    return cut.map(({ minX, minY }) => `${scene.title}: words at ${minX}, ${minY}`);
  };

it.each(jobs)('no words of the sheets of %s are cut where sheets join, on any paper', (_, job) => {
  const scenes = markoutFor(job()).sheets.flatMap((sheet) => sheet.scenes(false));
  expect(scenes.length).toBeGreaterThan(2);
  for (const paper of ['a4', 'a3', 'letter'] as const) {
    expect(scenes.flatMap(cutWordsOn(paper))).toEqual([]);
    expect(scenes.flatMap(cutWordsOn(paper, { xMm: 149.2, yMm: 150.4 }))).toEqual([]);
  }
});
