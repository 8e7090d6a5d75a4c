import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonFault } from '../../../src/files/json-faults.ts';
import { mostCharacters, readJson } from '../../../src/files/read-json.ts';

const placeAndFound = (text: string): string => {
  const reading = readJson('f', text);
  if (reading.ok) return 'sound';
  return reading.findings.map(({ at, found, expected }) => `${at}: ${found}; ${expected}`).join();
};

describe('a text that is not JSON is told of by line and column', () => {
  it.each([
    ['', ': an empty file; one JSON object'],
    [' \n ', ': an empty file; one JSON object'],
    ['{"a": 1,}', 'line 1, column 9: "}"; a key in double quotes'],
    ['{\n  "a": 1\n  "b": 2\n}', 'line 3, column 3: """; "," or "}"'],
    ['{"a" 1}', 'line 1, column 6: "1"; ":"'],
    ["{'a': 1}", 'line 1, column 2: "\'"; a key in double quotes'],
    ['{"a": [1, 2', 'line 1, column 12: the end of the file; "," or "]"'],
    ['{"a": [1 2]}', 'line 1, column 10: "2"; "," or "]"'],
    ['{"a": 01}', 'line 1, column 8: "1"; "," or "}"'],
    ['{"a": .5}', 'line 1, column 7: "."; a value'],
    ['{"a": NaN}', 'line 1, column 7: "N"; a value'],
    ['{"a": "b\nc"}', 'line 1, column 9: a line break or another control character; the closing quote of a text'],
    ['{"a": "b', 'line 1, column 9: the end of the file; the closing quote of a text'],
    ['{"a": "\\x"}', 'line 1, column 8: "\\"; an escape such as \\n or \\u00e9'],
    ['{} {}', 'line 1, column 4: "{"; the end of the file'],
    ['// a part\n{}', 'line 1, column 1: "/"; a value'],
    ['{"a": 1, "b": 2, "a": 3}', 'line 1, column 18: the key "a" a second time; each key once'],
  ])('%j', (text, told) => {
    expect(placeAndFound(text)).toBe(told);
  });
});

describe('a text in another encoding', () => {
  it.each([
    ['UTF-16', '{\0"\0a\0"\0:\x001\0}\0'],
    ['Latin-1 read as UTF-8', '{"name": "Geh\ufffduse"}'],
  ])('%s is told of as such', (_, text) => {
    expect(placeAndFound(text)).toBe(': characters that are not UTF-8; a text file saved as UTF-8');
  });

  it('a byte order mark before it does no harm', () => {
    expect(readJson('f', '\ufeff{"a": 1}')).toEqual({ ok: true, value: { a: 1 } });
  });
});

describe('what is no drawing is refused before it is read', () => {
  it.each([
    ['100,000 brackets, never closed', '['.repeat(100_000), 'at most 32 levels of brackets'],
    ['100,000 braces', '{"a":'.repeat(100_000), 'at most 32 levels of brackets'],
    ['three million numbers', `[${'0,'.repeat(3e6)}0]`, 'at most 2000000 values in one file'],
    ['a text longer than any file may be', ' '.repeat(mostCharacters + 1), `at most ${mostCharacters} characters`],
  ])('%s', (_, text, expected) => {
    expect(placeAndFound(text)).toContain(expected);
  });
});

describe('against JSON.parse', () => {
  const parses = (text: string): boolean => {
    try {
      JSON.parse(text);
      return true;
    } catch {
      return false;
    }
  };

  it('what JSON.stringify writes has no fault', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 5 }), (text) => {
        expect(jsonFault(text)).toBeNull();
      }),
    );
  });

  it('a text with one character taken out or changed has a fault exactly when JSON.parse refuses it', () => {
    const text = '{"a": [1.5e-3, true, null, "x\\n\\u00e9"], "b": {"c": -0.25}}';
    const characters = fc.constantFrom(
      '',
      ' ',
      '"',
      ',',
      ':',
      '0',
      '-',
      '.',
      'e',
      '\\',
      '{',
      '}',
      '[',
      ']',
      '\n',
      '+',
      'u',
    );
    fc.assert(
      fc.property(fc.nat(text.length), characters, (at, character) => {
        const damaged = text.slice(0, at) + character + text.slice(at + 1);
        const fault = jsonFault(damaged);
        if (fault?.expected === 'each key once') return;
        expect(fault === null).toBe(parses(damaged));
      }),
      { numRuns: 1000 },
    );
  });
});
