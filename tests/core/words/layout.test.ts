import { describe, expect, it } from 'vitest';
import { columns, counted, inWords, listed, paragraph, textColumns, wrapped } from '../../../src/words/layout.ts';

const prose = 'Grind to the first line and offer up, '.repeat(20).trim();

describe('laying out text', () => {
  it('columns line up and carry no trailing spaces', () => {
    expect(
      columns([
        ['leg', 'turn', ''],
        ['2', '13.6° to 1.4°', 'ribs'],
        ['10', '', ''],
      ]),
    ).toEqual(['  leg  turn', '  2    13.6° to 1.4°  ribs', '  10']);
  });

  it('wrapped text keeps every word, in order, within the page', () => {
    const lines = wrapped(prose);
    expect(lines.every((line) => line.length <= textColumns)).toBe(true);
    expect(lines.map((line) => line.trim()).join(' ')).toBe(prose);
  });

  it('a line never breaks between a figure and its unit', () => {
    for (let pad = 60; pad < 100; pad += 1) {
      const lines = wrapped(`${'x'.repeat(pad)} 12.5 mm`);
      expect(lines.at(-1)).toMatch(/12\.5 mm$/);
    }
  });

  it('a word wider than the page stands alone rather than being cut', () => {
    const path = `/${'folder/'.repeat(20)}fit.json`;
    expect(wrapped(`See ${path} now`)).toEqual(['  See', `  ${path}`, '  now']);
  });

  it('a list hangs by its dashes', () => {
    const [first = '', ...others] = listed([prose]);
    expect(first.startsWith('  - Grind')).toBe(true);
    expect(others.every((line) => line.startsWith('    '))).toBe(true);
  });

  it('a heading with nothing under it is not printed', () => {
    expect(paragraph('Warnings', [])).toEqual([]);
    expect(paragraph('Warnings', ['  - one'])).toEqual(['', 'Warnings', '  - one']);
  });

  it('names are strung together as one would say them', () => {
    expect([[], ['D1'], ['D1', 'D2'], ['D1', 'D2', 'D3']].map(inWords)).toEqual([
      '',
      'D1',
      'D1 and D2',
      'D1, D2 and D3',
    ]);
    expect([0, 1, 2].map((n) => counted(n, 'bolt'))).toEqual(['0 bolts', '1 bolt', '2 bolts']);
  });
});
