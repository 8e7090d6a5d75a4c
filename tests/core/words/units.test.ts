import { describe, expect, it } from 'vitest';
import { figure, fineLength, givenLength, lengthText } from '../../../src/job/length-text.ts';
import { areaText, comparedText, volumeText } from '../../../src/words/units.ts';

describe('figures as a builder reads them', () => {
  it('a traced length is told to 0.1 mm or a hundredth of an inch', () => {
    expect(lengthText(2.8617, 'mm')).toBe('2.9 mm');
    expect(lengthText(2.8617, 'in')).toBe('0.11 in');
  });

  it('holes are told finer than tracings', () => {
    expect(fineLength(0.0604, 'mm')).toBe('0.06 mm');
    expect(fineLength(0.0604, 'in')).toBe('0.002 in');
  });

  it('a length that was given keeps the digits it was given with', () => {
    expect(givenLength(2, 'mm')).toBe('2 mm');
    expect(givenLength(1.25, 'mm')).toBe('1.25 mm');
    expect(givenLength(0.06 * 25.4, 'in')).toBe('0.06 in');
  });

  it('nothing has no minus sign', () => {
    expect(figure(-0.001, 1)).toBe('0.0');
    expect(figure(-0.06, 1)).toBe('-0.1');
  });

  it.each([
    [1.96, 2, '1.96 mm'],
    [1.94, 2, '1.9 mm'],
    [2.04, 2, '2.04 mm'],
    [2, 2, '2.0 mm'],
    [2.0004, 2, '2.0 mm'],
    [1.9996, 2, '2.0 mm'],
    [1.997, 2, '1.997 mm'],
    [0.03, 0, '0.03 mm'],
    [-0.04, 0, '-0.04 mm'],
  ])('rounding never hides on which side of the limit a figure is: %f against %f', (mm, limit, text) => {
    expect(comparedText(mm, limit, 'mm')).toBe(text);
  });

  it('areas and volumes come in units a builder can picture', () => {
    expect(areaText(117.2, 'mm')).toBe('117 mm²');
    expect(areaText(2.34, 'mm')).toBe('2.3 mm²');
    expect(areaText(645.16, 'in')).toBe('1.00 in²');
    expect(volumeText(2912, 'mm')).toBe('2.9 cm³');
    expect(volumeText(16387.064, 'in')).toBe('1.00 in³');
  });
});
