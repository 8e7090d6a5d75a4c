import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fileText } from '../../../src/files/file-text.ts';
import { distance, vec } from '../../../src/geometry/plane/vec.ts';
import { standardPatternsIn } from '../../../src/holes/patterns/standard-pattern.ts';
import { readPart } from '../../../src/job/read-part.ts';
import { housingFlanges } from '../../../src/trade/flange-patterns.ts';
import { flangePart, flangePartName } from '../../support/flange-part.ts';

const folder = new URL('../../../profiles/flanges/', import.meta.url);

/** Chords between neighbouring holes in mm: bolt circle × sin(180° / holes), computed by hand to a thousandth. */
const chords: Readonly<Record<string, number>> = { '3': 110.936, '5': 127.577, '00': 166.002 };

describe.each(housingFlanges)('the reference part of SAE J617 No. $number', (flange) => {
  const name = flangePartName(flange);

  it('is what the table says', async () => {
    await expect(fileText(flangePart(flange))).toMatchFileSnapshot(`../../../profiles/flanges/${name}`);
  });

  it('is a part that can be read, known by its holes, about its own origin', () => {
    const part = readPart(name, readFileSync(new URL(name, folder), 'utf8'), 'fixed');
    if (!part.ok) throw new Error(JSON.stringify(part.findings));
    const { holes } = part.value;
    expect(holes).toHaveLength(flange.holes + 1);
    const [first] = standardPatternsIn(holes, 0.1);
    expect(first).toMatchObject({ standard: 'SAE J617', number: flange.number });
    expect(Math.hypot(first?.centre.x ?? 9, first?.centre.y ?? 9)).toBeLessThan(0.001);
    expect(Math.abs(first?.turnRad ?? 9)).toBeLessThan(1e-5);
  });
});

it.each(Object.entries(chords))('neighbouring holes of No. %s are %f mm apart', (number, chordMm) => {
  const flange = housingFlanges.find((f) => f.number === number);
  const places = flange === undefined ? [] : (flangePart(flange).holes ?? []).map(({ at }) => vec(at[0], at[1]));
  const [, one, next] = places;
  if (one === undefined || next === undefined) throw new Error('no holes');
  // each place is rounded to a thousandth, and so is the chord
  expect(Math.abs(distance(one, next) - chordMm)).toBeLessThan(0.002);
});

it('the folder holds these and no others', () => {
  expect(readdirSync(folder).sort()).toEqual(housingFlanges.map(flangePartName).sort());
});
