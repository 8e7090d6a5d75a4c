import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lengthsIn, numberIn, plainFigures } from '../../../viewer/lengths.ts';

describe('a number as someone writes it', () => {
  it.each([
    ['12.5', 12.5],
    [' 12,5 ', 12.5],
    ['−3', -3],
    ['-3', -3],
    ['', null],
    ['two', null],
    ['1e999', null],
    ['1,2,3', null],
  ])('%j is %s', (text, number) => {
    expect(numberIn(text)).toBe(number);
  });
});

describe('lengths shown in another unit than their file has', () => {
  const units = fc.constantFrom('mm' as const, 'in' as const);
  const length = fc.double({ min: -4000, max: 4000, noNaN: true });

  it('25.4 mm is one inch, both ways', () => {
    expect(lengthsIn('mm', 'in').text(38.1)).toBe('1.5');
    expect(lengthsIn('mm', 'in').read('1.5')).toBe(38.1);
    expect(lengthsIn('in', 'mm').text(0.25)).toBe('6.35');
    expect(lengthsIn('in', 'mm').read('6,35')).toBe(0.25);
  });

  it('what is shown and typed again unchanged leaves the value as it is, to its last digit', () => {
    fc.assert(
      fc.property(units, units, length, (file, shown, value) => {
        const { text, read } = lengthsIn(file, shown);
        expect(read(text(value), value)).toBe(value);
        expect(read(`${text(value)}0`.replace(/^([^.]*)0$/, '$1.0'), value)).toBe(value);
      }),
    );
  });

  it('what is typed is shown as it was typed, to a micron or four places of an inch', () => {
    fc.assert(
      fc.property(units, units, fc.integer({ min: -400_000, max: 400_000 }), (file, shown, thousandths) => {
        const { text, read } = lengthsIn(file, shown);
        const typed = String(thousandths / 1000);
        expect(text(read(typed) ?? undefined)).toBe(typed);
      }),
    );
  });

  it('no value is an empty field, and an empty field is no number', () => {
    expect([lengthsIn('mm', 'in').text(undefined), lengthsIn('mm', 'in').read('')]).toEqual(['', null]);
  });
});

describe('plain figures', () => {
  it('show so many decimals and lose none that are not typed over', () => {
    const bulge = Math.tan(Math.PI / 8);
    const { text, read } = plainFigures('', 4);
    expect([text(bulge), read('0.4142', bulge), read('0.41', bulge)]).toEqual(['0.4142', bulge, 0.41]);
  });
});
