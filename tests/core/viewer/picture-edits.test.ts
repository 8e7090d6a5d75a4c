import { describe, expect, it } from 'vitest';
import type { JobFile, PartDraft } from '../../../src/files/job-file.ts';
import { readJobFile } from '../../../src/job/read-job-file.ts';
import { holeRenamed, renamed } from '../../../viewer/job/part-edits.ts';
import * as edits from '../../../viewer/job/picture-edits.ts';
import { blockFile, smallJob as job } from '../../support/small-job.ts';

const block = 'block.part.json';
const photo = { part: block, name: 'face.jpg', mediaType: 'image/jpeg', data: '/9j/AA==' } as const;
const with1 = edits.withPicture(job, 'picture 1', photo);
const touches = (of: JobFile) => edits.pictureOf(of, 'picture 1')?.touches;

describe('a picture in a job', () => {
  it('is read back from a job file with everything that was said of it', () => {
    const touched = edits.withTouch(with1, 'picture 1', { px: [10.123, 20], at: [-100, 0], hole: 'D1' });
    const said = edits.withPictureChanged(touched, 'picture 1', {
      squareOn: true,
      touchErrorPx: 3,
      knownError: 0.1,
      cameraAway: 1500,
      planeDepth: -2,
      tracedDepths: { rib: 12 },
    });
    expect(readJobFile('a.job.json', JSON.stringify(said))).toEqual({ ok: true, value: said });
    expect(touches(said)).toEqual([{ px: [10.12, 20], at: [-100, 0], hole: 'D1' }]);
  });

  it.each([
    ['no base64', { data: 'face' + '!' }],
    ['no limit', { touchErrorPx: 0 }],
    ['a touch without a place', { touches: [{ px: [1, 2] }] }],
  ])('is refused with its place in the file: %s', (_, changes) => {
    const wrong = { ...job, pictures: [{ id: 'picture 1', ...photo, touches: [], ...changes }] };
    const read = readJobFile('a.job.json', JSON.stringify(wrong));
    expect(read.ok ? [] : read.findings.map(({ at }) => at)).toEqual([
      expect.stringMatching(/^pictures\[0\]\.(data|touchErrorPx|touches\[0\]\.at)$/),
    ]);
  });

  it('goes without leaving an empty list behind', () => {
    expect(edits.withoutPicture(with1, 'picture 1')).toEqual(job);
  });

  it('takes the first id that is free', () => {
    expect(edits.freshPictureId(job)).toBe('picture 1');
    expect(edits.freshPictureId(with1)).toBe('picture 2');
  });
});

describe('a touched point', () => {
  const d1 = { px: [10, 20], at: [-100, 0], hole: 'D1' } satisfies Parameters<typeof edits.withTouch>[2];
  const typed = { px: [30, 40], at: [5, 6] } satisfies Parameters<typeof edits.withTouch>[2];
  const both = edits.withTouch(edits.withTouch(with1, 'picture 1', d1), 'picture 1', typed);

  it('of a hole is one only, wherever the hole was touched last; typed places are as many as there are', () => {
    const again = edits.withTouch(edits.withTouch(both, 'picture 1', typed), 'picture 1', { ...d1, px: [11, 21] });
    expect(touches(again)).toEqual([typed, typed, { ...d1, px: [11, 21] }]);
  });

  it('moves, and goes', () => {
    expect(touches(edits.withTouchChanged(both, 'picture 1', 1, { px: [31, 40] }))).toEqual([
      d1,
      { ...typed, px: [31, 40] },
    ]);
    expect(touches(edits.withoutTouch(both, 'picture 1', 0))).toEqual([typed]);
  });

  it('follows its hole to a new place and a new name', () => {
    const named = holeRenamed(both, block, 0, 'LEFT');
    expect(touches(named)?.[0]?.hole).toBe('LEFT');
    const part = {
      ...blockFile,
      holes: [{ ...blockFile.holes[0], at: [-101, 1] }],
    } as unknown as JobFile['parts'][string];
    expect(edits.placeOfTouch(part, d1)).toEqual([-101, 1]);
    expect(edits.placeOfTouch({ ...part, holes: [] }, d1)).toEqual([-100, 0]);
  });

  it('and another at a bare distance lie at the origin and along x', () => {
    expect(touches(edits.withDistance(both, 'picture 1', 250))).toEqual([
      { px: [10, 20], at: [0, 0] },
      { px: [30, 40], at: [250, 0] },
    ]);
  });
});

it('a section takes the depth it is traced at to its new name', () => {
  const said = edits.withPictureChanged(with1, 'picture 1', { tracedDepths: { rib: 14, other: 3 } });
  const after = renamed(said, block, { list: 'sections', index: 0 }, 'lip');
  expect(edits.pictureOf(after, 'picture 1')?.tracedDepths).toEqual({ lip: 14, other: 3 });
});

it('a hollow takes its own, and none of a section of the same name', () => {
  const part = with1.parts[block] as PartDraft;
  const more = { ...with1, parts: { ...with1.parts, [block]: { ...part, hollows: [{ id: 'rib', loops: [] }] } } };
  const said = edits.withPictureChanged(more, 'picture 1', { tracedDepths: { rib: 14, 'hollows/rib': 3 } });
  const after = renamed(said, block, { list: 'hollows', index: 0 }, 'jacket');
  expect(edits.pictureOf(after, 'picture 1')?.tracedDepths).toEqual({ rib: 14, 'hollows/jacket': 3 });
});
