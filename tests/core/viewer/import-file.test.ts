import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { PartDraft } from '../../../src/files/job-file.ts';
import { importFile } from '../../../viewer/heavy/import-file.ts';
import { emptyPart } from '../../../viewer/job/part-edits.ts';
import { withImported } from '../../../viewer/job/with-imported.ts';
import { blockFile } from '../../support/small-job.ts';

const features = {
  name: 'features.csv',
  bytes: new Uint8Array(readFileSync('tests/fixtures/intake/features.csv')),
};
const bytes = (text: string) => new TextEncoder().encode(text);

describe('a file opened into a part', () => {
  it('brings outlines and holes of a table, and no side it was seen from', () => {
    const read = importFile(features);
    expect(read).toMatchObject({ kind: 'part', part: { units: 'mm', holes: [{ id: 'D1' }, { id: 'B1' }] } });
    expect(read.kind === 'part' && 'viewedFrom' in read.part).toBe(false);
    expect(importFile({ ...features, viewedFrom: 'back' })).toMatchObject({ part: { viewedFrom: 'back' } });
  });

  it('brings a part file as it stands', () => {
    const text = JSON.stringify(blockFile);
    expect(importFile({ name: 'a.part.json', bytes: bytes(text) })).toMatchObject({ kind: 'part', part: blockFile });
  });

  it.each([
    ['a.part.json', '{', 'a.part.json'],
    ['a.part.json', '{}', 'sections'],
    ['a.csv', 'x [mm],y,width\n1,2,3\n', 'a.csv'],
    ['a.pdf', '', 'a kind of file that is not known'],
  ])('says what keeps %s from being read', (name, text, said) => {
    const read = importFile({ name, bytes: bytes(text) });
    expect(read).toMatchObject({ kind: 'findings', text: expect.stringContaining(said) });
  });
});

describe('a part with a file in it', () => {
  const block = blockFile as unknown as PartDraft;

  it('is the file where it was empty', () => {
    expect(withImported(emptyPart('Block', 'in'), block)).toEqual(block);
  });

  it('has names that are not taken, and lengths in its own units', () => {
    const inches: PartDraft = {
      ...emptyPart('plate', 'in'),
      sections: [
        {
          id: 'rib',
          depth: [0, 1],
          traceError: 0.02,
          loops: [
            [
              [0, 0, 0.5],
              [2, 0],
              [0, 3],
            ],
            { circle: [9, 9], radius: 1 },
          ],
        },
      ],
      holes: [{ id: 'D1', kind: 'dowel', at: [1, 2], diameter: 0.5 }],
    };
    const both = withImported(block, inches);
    expect(both?.sections[1]).toEqual({
      id: 'rib 2',
      depth: [0, 25.4],
      traceError: 0.02 * 25.4,
      loops: [
        [
          [0, 0, 0.5],
          [50.8, 0],
          [0, 3 * 25.4],
        ],
        { circle: [9 * 25.4, 9 * 25.4], radius: 25.4 },
      ],
    });
    expect(both?.holes?.at(-1)).toEqual({ id: 'D1 2', kind: 'dowel', at: [25.4, 50.8], diameter: 12.7 });
    expect(both?.holes).toHaveLength(4);
  });

  it('is none where the file was seen from the other side', () => {
    expect(withImported(block, { ...block, viewedFrom: 'back' })).toBeNull();
  });
});
