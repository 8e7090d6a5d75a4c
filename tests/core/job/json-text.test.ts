import { describe, expect, it } from 'vitest';
import { jsonText } from '../../../src/files/json-text.ts';

describe('an object as the text of a file', () => {
  it('reads back as it was, without the keys that have no value', () => {
    const value = { title: 'a "b"', empty: {}, none: [], list: [1, [2, 3]], gone: undefined };
    expect(JSON.parse(jsonText(value))).toEqual({ title: 'a "b"', empty: {}, none: [], list: [1, [2, 3]] });
  });

  it('has what fits on one line on one line, and nothing between the braces of an empty object', () => {
    expect(jsonText({ offerUp: [{ turn: 22 }, {}] })).toBe('{ "offerUp": [{ "turn": 22 }, {}] }\n');
  });

  it('breaks what is wider than a line', () => {
    const names = Array.from({ length: 12 }, (_, i) => `section number ${i}`);
    const lines = jsonText({ names }).split('\n');
    expect(lines.length).toBeGreaterThan(12);
    expect(lines[1]).toBe('  "names": [');
  });
});
