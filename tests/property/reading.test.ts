import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/files/finding.ts';
import { loop, partFile } from '../../src/files/part-file.ts';
import { isPlainPath } from '../../src/files/plain-path.ts';
import { schemaFindings } from '../../src/files/schema-findings.ts';
import { partFindings } from '../../src/job/part-findings.ts';
import { Random } from '../support/random.ts';

const part = {
  format: 'fettle-part/1',
  name: 'Block',
  units: 'mm',
  viewedFrom: 'face',
  sections: [
    {
      id: 'rib',
      depth: [0, 40],
      mayCut: true,
      loops: [
        [
          [0, 0],
          [60, 0, 0.2],
          [60, 20],
          [0, 20],
        ],
        { circle: [30, 10], radius: 4 },
      ],
    },
    { id: 'boss', loops: [{ circle: [100, 0], radius: 9 }] },
  ],
  holes: [{ id: 'D1', kind: 'dowel', at: [5, 5], diameter: 8 }],
  hollows: [
    {
      id: 'gallery',
      loops: [
        [
          [70, 0],
          [80, 0],
          [75, 9, -0.4],
        ],
      ],
    },
  ],
  traced: { loops: [{ circle: [0, 0], radius: 500 }] },
};

const odd = [null, true, '', '7', -1, 0, 1e-300, 1e6, 1e308, Number.POSITIVE_INFINITY, Number.NaN, [], [1], [1, 2], {}];

/** A copy with one value put away, doubled, or in the place of another. */
function mutated(random: Random, value: unknown): unknown {
  const copy = structuredClone(value);
  const places = placesIn(copy);
  const { holder, key } = random.pick(places);
  const kind = random.whole(0, 3);
  if (kind === 0 && Array.isArray(holder)) holder.splice(Number(key), 1);
  else if (kind === 1 && Array.isArray(holder)) holder.push(structuredClone(holder[Number(key)]));
  else if (kind === 2 && !Array.isArray(holder)) delete (holder as Record<string, unknown>)[key];
  else (holder as Record<string, unknown>)[key] = structuredClone(random.pick(odd));
  return copy;
}

const placesIn = (holder: unknown): { holder: object; key: string }[] =>
  typeof holder !== 'object' || holder === null
    ? []
    : Object.entries(holder).flatMap(([key, inner]) => [{ holder, key }, ...placesIn(inner)]);

const loopsIn = (value: unknown): unknown[] =>
  typeof value !== 'object' || value === null
    ? []
    : Object.entries(value).flatMap(([key, inner]) =>
        key === 'loops' && Array.isArray(inner) ? inner : loopsIn(inner),
      );

const inWords = ({ at, found, expected }: Finding): string => `${at}: ${found}; ${expected}`;

describe('10,000 parts with one to three values put wrong', () => {
  const random = new Random(12);
  const files = Array.from({ length: 10_000 }, () => {
    let file: unknown = part;
    for (let i = random.whole(1, 3); i > 0; i--) file = mutated(random, file);
    return file;
  });

  it('an outline is taken without its schema exactly where the schema takes it for a list of vertices', () => {
    const seen = { taken: 0, left: 0 };
    const judgedOtherwise = files.flatMap(loopsIn).filter((value) => {
      const isTaken = isPlainPath(value);
      seen[isTaken ? 'taken' : 'left']++;
      return isTaken !== (Array.isArray(value) && loop.safeParse(value).success);
    });
    expect(judgedOtherwise).toEqual([]);
    expect(Math.min(seen.taken, seen.left)).toBeGreaterThan(1000);
  });

  it('are told of by the schema in the same words, whether their outlines are read by it or not', () => {
    const seen = { sound: 0, faulty: 0 };
    const untold = files.flatMap((file) => {
      const isSound = partFile.safeParse(file).success;
      const bySchema = schemaFindings('a.part.json', partFile, file).map(inWords);
      const told = new Set(partFindings('a.part.json', file).map(inWords));
      seen[isSound ? 'sound' : 'faulty']++;
      return (bySchema.length === 0) === isSound ? bySchema.filter((words) => !told.has(words)) : ['judged otherwise'];
    });
    expect(untold).toEqual([]);
    expect(Math.min(seen.sound, seen.faulty)).toBeGreaterThan(300);
  });
});
