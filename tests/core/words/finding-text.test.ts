import { describe, expect, it } from 'vitest';
import { findingsText, findingText } from '../../../src/words/finding-text.ts';

describe('findings in words', () => {
  it('file, place, found and expected stand on one line', () => {
    const finding = {
      file: 'block.part.json',
      at: 'sections[2].loops[0]',
      found: 'a loop that crosses itself',
      expected: 'a simple loop',
    };
    expect(findingText(finding)).toBe(
      'block.part.json, sections[2].loops[0]: found a loop that crosses itself; expected a simple loop.',
    );
  });

  it('the nearest that exists is offered', () => {
    const finding = {
      file: 'a.fit.json',
      at: 'dowls',
      found: 'an unknown key',
      expected: 'a known key',
      didYouMean: 'dowels',
    };
    expect(findingText(finding)).toMatch(/ Did you mean "dowels"\?$/);
  });

  it('a whole file, or no file at all, leaves no stray punctuation', () => {
    expect(findingText({ file: 'a.json', at: '', found: 'no such file', expected: 'a file' })).toBe(
      'a.json: found no such file; expected a file.',
    );
    expect(findingText({ file: '', at: '', found: 'x', expected: 'y' })).toBe('found x; expected y.');
  });

  it('a huge piece of a file is quoted in part', () => {
    const text = findingText({ file: 'a.json', at: 'name', found: 'x'.repeat(1e6), expected: 'a name' });
    expect(text.length).toBeLessThan(300);
  });

  it('all of them are listed, and counted', () => {
    const finding = { file: 'a.json', at: 'name', found: '3', expected: 'text' };
    expect(findingsText([finding, finding]).split('\n')).toHaveLength(3);
    expect(findingsText([finding, finding])).toMatch(/2 things to put right; nothing was computed or written\.$/);
    expect(findingsText([finding])).toMatch(/1 thing to put right/);
  });
});
