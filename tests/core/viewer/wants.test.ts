import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/files/job-file.ts';
import { jobInFile } from '../../../src/job/read-job-file.ts';
import { newJob } from '../../../viewer/job/new-job.ts';
import { wantsOf, wantsUpTo } from '../../../viewer/words/wants.ts';
import { blockFile, fitFile, housingFile } from '../../support/small-job.ts';

const name = 'the.job.json';

/** What a job needs, by the findings the core makes of it. */
function wantsIn(job: JobFile) {
  const read = jobInFile(job, name);
  return wantsOf(job, read.ok ? [] : read.findings);
}
const texts = (job: JobFile): string[] => wantsIn(job).map(({ text }) => text);

const small = (block: object = {}, fit: object = {}): JobFile =>
  ({
    format: 'fettle-job/1',
    fit: { ...fitFile, ...fit },
    parts: { 'block.part.json': { ...blockFile, ...block }, 'housing.part.json': housingFile },
  }) as unknown as JobFile;

describe('what a job needs next', () => {
  it('is said of a new job in the words of its steps, and names no file', () => {
    const said = texts(newJob({ fixed: 'Block', moving: 'Housing' }));
    expect(said).toEqual([
      "Trace the Block's face first.",
      "Trace the Housing's face first.",
      'Say how you saw the Block: at its face, or from behind.',
      'Say how you saw the Housing: at its face, or from behind.',
      "Two dowels are needed: add the Block's holes.",
      "Two dowels are needed: add the Housing's holes.",
      'Tick what may be cut.',
    ]);
    expect(said.join()).not.toMatch(/\.json|found|\[/);
  });

  it('is nothing of a job that is whole', () => {
    expect(texts(small())).toEqual([]);
  });

  it('leads to the part whose dowels are not said, then asks for them to be paired', () => {
    const holes = blockFile.holes.map((hole) => ({ ...hole, kind: 'bolt' }));
    const [want] = wantsIn(small({ holes }, { dowels: [] }));
    expect(want).toEqual({
      step: 'dowel-up',
      text: "Two dowels are needed: tap them in the Block's list.",
      at: { step: 'outlines', part: 'block.part.json' },
    });
    expect(texts(small({}, { dowels: [] }))).toEqual(['Pair the two dowels.']);
  });

  it('says of a section without outlines whether its line is only to be closed', () => {
    const empty = small({ sections: [...blockFile.sections, { id: 'wall', loops: [] }] });
    expect(texts(empty)).toEqual(['Trace wall on the Block, or remove it.']);
    const run = { part: 'block.part.json', section: 'wall', points: [[0, 0]], metal: 'left' };
    expect(texts({ ...empty, openRuns: [run] } as JobFile)).toEqual(['Close the line of wall on the Block.']);
  });

  it('asks for the depth of what goes through every depth', () => {
    const [rib] = blockFile.sections;
    expect(texts(small({ sections: [{ id: 'rib', mayCut: true, loops: rib?.loops }] }))).toEqual([
      'Say how deep rib on the Block goes: now it goes through every depth.',
    ]);
  });

  it.each([
    [
      small({
        sections: [
          {
            id: 'rib',
            loops: [
              [
                [0, 0],
                [10, 10],
                [10, 0],
                [0, 10],
              ],
            ],
          },
        ],
      }),
      /^Block, rib, outline 1: an outline that crosses itself/,
      'outlines',
    ],
    [
      small(
        {},
        {
          dowels: [
            ['D1', 'P1'],
            ['D9', 'P2'],
          ],
        },
      ),
      /^Dowel pair 2: "D9"\. Wanted: .*D1/,
      'dowel-up',
    ],
    [small({}, { clearance: { home: 500 } }), /^Clearance: 500\. Wanted: a clearance/, 'grind'],
  ])('names the place of a fault as the page does: %#', (job, said, step) => {
    const want = wantsIn(job).find(({ text }) => said.test(text));
    expect(want).toMatchObject({ step });
    expect(want?.text).not.toMatch(/\.json|loops|\[\d/);
  });

  it('of a later step is what the earlier ones need too, never the other way', () => {
    const wants = wantsIn(newJob({ fixed: 'Block', moving: 'Housing' }));
    expect(wantsUpTo(wants, 'outlines').every(({ step }) => step === 'outlines')).toBe(true);
    expect(wantsUpTo(wants, 'mark-out')).toEqual(wants);
  });
});
