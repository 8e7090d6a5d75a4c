import type { Source } from './sourced.ts';

export interface MaterialFigures {
  readonly name: string;
  readonly densityGPerCm3: number;
  readonly source: Source;
  /** Other spellings, lower case, words parted by single hyphens. */
  readonly alsoCalled: readonly string[];
}

/** Materials a casting may be of. Densities are one figure of a range, good to about 2 % of a mass. */
export const materials: readonly MaterialFigures[] = [
  {
    name: 'grey-iron',
    densityGPerCm3: 7.15,
    source: { basis: 'from memory', from: 'EN 1561, 7.1 to 7.3' },
    alsoCalled: ['gray-iron', 'grey-cast-iron', 'gray-cast-iron', 'cast-iron', 'iron', 'lamellar-iron'],
  },
  {
    name: 'ductile-iron',
    densityGPerCm3: 7.1,
    source: { basis: 'from memory', from: 'EN 1563' },
    alsoCalled: ['nodular-iron', 'nodular-cast-iron', 'ductile-cast-iron', 'sg-iron', 'spheroidal-iron', 'nodular'],
  },
  {
    name: 'aluminium',
    densityGPerCm3: 2.68,
    source: { basis: 'looked up', from: 'casting alloys, 2.6 to 2.7' },
    alsoCalled: ['aluminum', 'aluminium-alloy', 'aluminum-alloy', 'cast-aluminium', 'cast-aluminum'],
  },
  {
    name: 'steel',
    densityGPerCm3: 7.85,
    source: { basis: 'from memory', from: 'carbon steel' },
    alsoCalled: ['cast-steel', 'carbon-steel', 'mild-steel'],
  },
];

/** The material of a name or another common spelling of it; letter case, blanks and underscores don't matter. */
export function materialNamed(name: string): MaterialFigures | null {
  const plain = name
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, '-');
  return materials.find((material) => material.name === plain || material.alsoCalled.includes(plain)) ?? null;
}
