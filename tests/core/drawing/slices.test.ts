import { expect, test } from 'vitest';
import { namedSections } from '../../../src/drawing/fit/slices.ts';
import { sectionOf } from '../../support/jobs.ts';

const names = (...sections: [id: string, from: number, to: number][]): string[] =>
  namedSections(sections.map(([id, from, to]) => sectionOf({ id, depth: [from, to] }))).map(({ name }) => name);

test('slices of one boss that follow one another are named together', () => {
  expect(names(['flange', 0, 12], ['boss 1', 40, 44], ['boss 2', 44, 50], ['boss 3', 50, 76])).toEqual([
    'flange',
    'boss 1–3',
  ]);
});

test('numbered sections with a gap between them, or only two, keep their own names', () => {
  expect(names(['boss 1', 0, 4], ['boss 2', 5, 9], ['boss 3', 9, 12])).toEqual(['boss 1', 'boss 2', 'boss 3']);
  expect(names(['boss 1', 0, 4], ['boss 2', 4, 9])).toEqual(['boss 1', 'boss 2']);
});
