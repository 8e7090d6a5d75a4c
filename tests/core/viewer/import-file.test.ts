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
  partName: 'Block',
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
    expect(importFile({ name: 'a.part.json', bytes: bytes(text), partName: 'Block' })).toMatchObject({
      kind: 'part',
      part: blockFile,
    });
  });

  it.each([
    ['a.part.json', '{', 'a.part.json'],
    ['a.part.json', '{}', 'sections'],
    ['a.csv', 'x [mm],y,width\n1,2,3\n', 'a.csv'],
    ['a.pdf', '', 'a kind of file that is not known'],
  ])('says what keeps %s from being read', (name, text, said) => {
    const read = importFile({ name, bytes: bytes(text), partName: 'Block' });
    expect(read).toMatchObject({ kind: 'findings', text: expect.stringContaining(said) });
  });
});

const proposing = { proposeHoles: { axis: { x: 0, y: 0 } } };

describe('holes that a file does not say the kind of', () => {
  const plate = (units: string) =>
    bytes(
      [
        `section,loop,kind,x [${units}],y,diameter`,
        'face,1,point,-10,-10,',
        ...['10,-10', '10,10', '-10,10'].map((at) => `,1,point,${at},`),
        ...['0,0,8', '-8,-8,1', '8,8,1', '8,-8,1.5'].map((round) => `,,circle,${round}`),
        'boss,,circle,20,20,3',
      ].join('\n'),
    );

  it.each(['mm', 'in'])(
    'are told by size and place in %s: the largest about the axis is the bore, the rest are bolts',
    (units) => {
      const read = importFile({ name: 'a.csv', bytes: plate(units), partName: 'Block', options: proposing });
      expect(read).toMatchObject({
        kind: 'part',
        part: {
          name: 'Block',
          holes: [
            { id: 'H1', kind: 'bolt', at: [-8, -8], diameter: 1 },
            { id: 'BORE1', kind: 'bore', at: [0, 0], diameter: 8 },
            { id: 'H2', kind: 'bolt', at: [8, -8], diameter: 1.5 },
            { id: 'H3', kind: 'bolt', at: [8, 8], diameter: 1 },
          ],
        },
        text: expect.stringContaining('told by size and place alone: H1 BORE1 H2 H3'),
      });
      // the bore stays open, and the boss metal
      const loops = read.kind === 'part' ? read.part.sections.map((section) => section.loops.length) : [];
      expect(loops).toEqual([2, 1]);
    },
  );

  it('come as a table of holes alone, no bolt of which is far larger than the rest', () => {
    const table = bytes('hole,x [mm],y,diameter\nA,100,0,11\nB,-100,0,12\nC,0,90,11\n');
    expect(importFile({ name: 'a.csv', bytes: table, partName: 'Block', options: proposing })).toMatchObject({
      part: {
        sections: [],
        holes: [
          { id: 'A', kind: 'bolt' },
          { id: 'B', kind: 'bolt' },
          { id: 'C', kind: 'bolt' },
        ],
      },
    });
  });

  it('stay as drawn where nothing is to be proposed', () => {
    const read = importFile({ name: 'a.csv', bytes: plate('mm'), partName: 'Block' });
    expect(read.kind === 'part' && read.part.holes).toBeUndefined();
  });
});

describe('a file that does not say its unit', () => {
  it('is asked about, with what it measures, and read in the answer', () => {
    const file = { name: 'a.csv', bytes: bytes('section,kind,x,y,diameter\nboss,circle,0,0,5\n'), partName: 'Block' };
    expect(importFile(file)).toEqual({ kind: 'unit-wanted', measures: '5 × 5', inPixels: false });
    expect(importFile({ ...file, options: { units: 'in' } })).toMatchObject({ kind: 'part', part: { units: 'in' } });
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
