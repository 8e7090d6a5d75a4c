import { describe, expect, it } from 'vitest';
import { fitText, textWidthMm, wrapText } from '../../../src/drawing/scene/text-size.ts';

describe('text on a sheet', () => {
  it('is cut to its width with an ellipsis, and left alone where it fits', () => {
    const fitted = fitText('mount boss 1 of the bell', 3, 30);
    expect(fitted).toMatch(/^mount .*…$/);
    expect(textWidthMm(fitted, 3)).toBeLessThanOrEqual(30);
    expect(fitText('mount boss', 3, 30)).toBe('mount boss');
  });

  it('of two million letters is cut at once: nobody looks at what is left out', () => {
    expect(fitText('i'.repeat(2e6), 3, 30)).toBe(`${'i'.repeat(28)}…`);
    expect(wrapText('i'.repeat(2e5), 3, 30)).toEqual([`${'i'.repeat(28)}…`]);
  });

  it('is not cut within a letter of several signs: a pair, accents, a picture put together', () => {
    const mechanic = '👩\u{1f3fd}\u200d🔧';
    const accented = 'e\u0301\u0323';
    for (const letter of ['🔧', mechanic, accented]) {
      for (let widthMm = 4; widthMm < 60; widthMm += 1) {
        const kept = fitText(letter.repeat(20), 3, widthMm).slice(0, -1);
        expect(kept).toBe(letter.repeat(kept.length / letter.length));
      }
    }
  });
});
