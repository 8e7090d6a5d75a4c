import { describe, expect, it } from 'vitest';
import { materialNamed, materials } from '../../../src/trade/materials.ts';

describe('materials', () => {
  it.each([
    ['grey-iron', 'grey-iron'],
    ['Gray iron', 'grey-iron'],
    ['CAST IRON', 'grey-iron'],
    ['ductile_iron', 'ductile-iron'],
    ['nodular iron', 'ductile-iron'],
    ['SG iron', 'ductile-iron'],
    ['aluminum', 'aluminium'],
    [' Aluminium ', 'aluminium'],
    ['cast steel', 'steel'],
  ])('%s is %s', (written, name) => {
    expect(materialNamed(written)?.name).toBe(name);
  });

  it('a name that is none of them is no material', () => {
    expect(materialNamed('cheese')).toBeNull();
    expect(materialNamed('')).toBeNull();
  });

  it('no spelling means two materials', () => {
    const spellings = materials.flatMap(({ name, alsoCalled }) => [name, ...alsoCalled]);
    expect(new Set(spellings).size).toBe(spellings.length);
  });

  // grey iron 7.1–7.3 from memory of EN 1561; aluminium 2.6–2.7 as looked up
  it('100 × 10 × 5 mm of grey iron weighs 35.8 g and of aluminium 13.4 g', () => {
    const grams = (name: string) => 5 * (materialNamed(name)?.densityGPerCm3 ?? Number.NaN);
    expect(grams('grey-iron')).toBeCloseTo(35.8, 1);
    expect(grams('aluminium')).toBeCloseTo(13.4, 1);
  });
});
