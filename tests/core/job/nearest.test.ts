import { describe, expect, it } from 'vitest';
import { editDistance, nearestOf } from '../../../src/files/nearest.ts';

describe('the nearest known word', () => {
  it.each([
    ['kitten', 'sitting', 3],
    ['', 'abc', 3],
    ['abc', 'abc', 0],
    ['dpeth', 'depth', 1],
  ])('%s and %s are %d edits apart', (a, b, edits) => {
    expect(editDistance(a, b)).toBe(edits);
    expect(editDistance(b, a)).toBe(edits);
  });

  it.each([
    ['tracError', 'traceError'],
    ['MAYCUT', 'mayCut'],
    ['lops', 'loops'],
    ['dpeth', 'depth'],
    ['colour', undefined],
    ['x', undefined],
    ['traceError'.repeat(20), undefined],
  ])('of the keys of a section, to %s: %s', (word, nearest) => {
    expect(nearestOf(word, ['id', 'depth', 'mayCut', 'gotBy', 'traceError', 'depthError', 'note', 'loops'])).toBe(
      nearest,
    );
  });
});
