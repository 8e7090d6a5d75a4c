import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/files/job-file.ts';
import type { LoopFile } from '../../../src/files/part-file.ts';
import { jobInFile, readJobFile } from '../../../src/job/read-job-file.ts';
import * as edits from '../../../viewer/job/part-edits.ts';
import * as runs from '../../../viewer/job/run-edits.ts';
import { smallJob as job } from '../../support/small-job.ts';

const block = 'block.part.json';

const ribs = { list: 'sections', index: 0 } as const;
const part = (from: JobFile = job) => from.parts[block] as NonNullable<JobFile['parts'][string]>;

/** Reading it as a file says what is wrong with it; nothing, if nothing. */
function faultsOf(changed: JobFile): readonly string[] {
  const read = readJobFile('a.job.json', JSON.stringify(changed));
  const inside = read.ok ? jobInFile(read.value, 'a.job.json') : read;
  return inside.ok ? [] : inside.findings.map(({ at }) => at);
}

describe('a part', () => {
  it('takes a section under a name of its own, and a rib in it, and still reads', () => {
    const twice = edits.withSection(edits.withSection(part(), 'rib'), 'pad');
    expect(twice.sections.map(({ id }) => id)).toEqual(['rib', 'rib 2', 'pad']);
    const empty = edits.withoutPlace(
      edits.withPart(job, block, () => twice),
      block,
      { list: 'sections', index: 2 },
    );
    expect(faultsOf(empty)).toEqual(['sections[1].loops']);
    const filled = edits.withPart(empty, block, (old) =>
      edits.withLoop(old, { list: 'sections', index: 1 }, { circle: [0, 200], radius: 9 }),
    );
    expect(faultsOf(filled)).toEqual([]);
  });

  it('is told depth, leave to cut, method and error of a section, and is no longer told them', () => {
    const told = { depth: [2, 3], mayCut: true, gotBy: 'card', traceError: 0.4 } satisfies Parameters<
      typeof edits.withDetails
    >[2];
    const said = edits.withDetails(part(), ribs, told);
    expect(said.sections[0]).toMatchObject(told);
    const unsaid = edits.withDetails(said, ribs, { depth: undefined, mayCut: undefined });
    expect(Object.keys(unsaid.sections[0] ?? {})).toEqual(
      Object.keys(said.sections[0] ?? {}).filter((key) => key !== 'depth' && key !== 'mayCut'),
    );
  });

  it('lets an outline become a hollow or a place not to cut, over the same depth', () => {
    const more = edits.withLoop(part(), ribs, { circle: [150, 0], radius: 1 });
    const hollow = edits.withLoopAs(more, ribs, 1, 'hollows', 'gallery');
    expect(hollow.hollows).toEqual([{ id: 'gallery', depth: [12, 60], loops: [{ circle: [150, 0], radius: 1 }] }]);
    expect(hollow.sections[0]?.loops).toHaveLength(1);
    expect(faultsOf(edits.withPart(job, block, () => hollow))).toEqual([]);
    const back = edits.withLoopAs(hollow, { list: 'hollows', index: 0 }, 0, 'doNotCut', 'oilway');
    expect(back.hollows).toEqual([]);
    expect(back.doNotCut?.map(({ id }) => id)).toEqual(['oilway']);
  });

  it('says where the tracing is complete by outlines that were traced, added to, and taken away again', () => {
    const circles = [10, 20].map((radius): LoopFile => ({ circle: [0, 0], radius }));
    const more = circles.reduce((all, circle) => edits.withLoop(all, ribs, circle), part());
    const one = edits.withLoopAs(more, ribs, 2, 'traced', 'any');
    expect(one.traced).toEqual({ depth: [12, 60], loops: [circles[1]] });
    const both = edits.withLoopAs(one, ribs, 1, 'traced', 'any');
    expect(both.traced?.loops).toEqual([circles[1], circles[0]]);
    const traced = { list: 'traced', index: 0 } as const;
    const everywhere = edits.withDetails(both, traced, { depth: undefined });
    expect(everywhere.traced).toEqual({ loops: [circles[1], circles[0]] });
    expect(faultsOf(edits.withPart(job, block, () => one))).toEqual([]);
    const none = edits.withLoopChanged(edits.withLoopChanged(both, traced, 1, null), traced, 0, null);
    expect('traced' in none).toBe(false);
    expect(none).toEqual(part());
  });

  it('numbers a new hole by its kind', () => {
    expect(edits.withHole(part(), 'dowel', [1, 2], 14).holes?.at(-1)).toEqual({
      id: 'D3',
      kind: 'dowel',
      at: [1, 2],
      diameter: 14,
    });
  });
});

describe('a hole', () => {
  it('takes its new name into the fit', () => {
    const named = edits.holeRenamed(edits.holeRenamed(job, block, 0, 'LEFT'), block, 2, 'AXIS');
    expect(named.fit.dowels).toEqual([
      ['LEFT', 'P1'],
      ['D2', 'P2'],
    ]);
    expect(named.fit.axis).toBe('AXIS');
    expect(faultsOf(named)).toEqual([]);
  });

  it('keeps its name where the new one is taken or blank', () => {
    expect(edits.holeRenamed(job, block, 0, 'D2')).toBe(job);
    expect(edits.holeRenamed(job, block, 0, ' ')).toBe(job);
  });

  it('takes the pairs that name it along when it goes', () => {
    const rest = edits.withoutHole(job, block, 1);
    expect(rest.fit.dowels).toEqual([['D1', 'P1']]);
    expect(faultsOf(rest)).toEqual([]);
  });

  it('is told its depth, its wall and that a cut may break into it, and is no longer told them', () => {
    const told = { depth: [0, 28] as [number, number], keepWall: 6, mayBreak: true };
    const said = edits.withHoleChanged(part(), 0, told);
    expect(said.holes?.[0]).toMatchObject(told);
    expect(faultsOf(edits.withPart(job, block, () => said))).toEqual([]);
    const unsaid = edits.withHoleChanged(said, 0, { depth: undefined, keepWall: undefined, mayBreak: undefined });
    expect(unsaid).toEqual(part());
  });

  it('becomes a hollow of the same circle, over its depth and with its wall', () => {
    const said = edits.withPart(job, block, (old) => edits.withHoleChanged(old, 0, { depth: [0, 28], keepWall: 6 }));
    const made = edits.holeAsHollow(said, block, 0);
    expect(part(made).hollows).toEqual([
      { id: 'D1', depth: [0, 28], loops: [{ circle: [-100, 0], radius: 7 }], keepWall: 6 },
    ]);
    expect(part(made).holes?.map(({ id }) => id)).toEqual(['D2', 'CRANK']);
    expect(made.fit.dowels).toEqual([['D2', 'P2']]);
    expect(faultsOf(made)).toEqual([]);
  });

  it('leaves the axis in its place when it becomes a hollow, and stays a hole where its size is not known', () => {
    const made = edits.holeAsHollow(job, block, 2);
    expect(made.fit.axis).toEqual([0, 0]);
    expect(faultsOf(made)).toEqual([]);
    const unsized = edits.withPart(job, block, (old) => edits.withHoleChanged(old, 0, { diameter: undefined }));
    expect(edits.holeAsHollow(unsized, block, 0)).toBe(unsized);
  });
});

describe('an open run', () => {
  const begun = runs.withRunFrom(job, block, 'rib', [0, 0]);
  const on = runs.withRun(begun, 0, (run) => runs.withPointAdded(run, [10, 0]));

  it('is kept with the job while it is traced', () => {
    expect(faultsOf(on)).toEqual([]);
    expect(on.openRuns).toEqual([
      {
        part: block,
        section: 'rib',
        points: [
          [0, 0],
          [10, 0],
        ],
        metal: 'left',
      },
    ]);
  });

  it('goes on by an arc over one point to the next', () => {
    const bent = runs.withRun(begun, 0, (run) => runs.withPointAdded(run, [10, 0], [5, -5]));
    expect(bent.openRuns?.[0]?.points).toEqual([
      [0, 0, 1],
      [10, 0],
    ]);
  });

  it('becomes an outline of its section when it is closed', () => {
    const three = runs.withRun(on, 0, (run) => runs.withPointAdded(run, [10, 5]));
    const loop = runs.closedRun(runs.runsOf(three)[0] as never);
    const closed = runs.withRunClosed(three, 0, loop as never);
    expect(part(closed).sections[0]?.loops.at(-1)).toEqual([
      [0, 0],
      [10, 0],
      [10, 5],
    ]);
    expect(closed).not.toHaveProperty('openRuns');
    expect(faultsOf(closed)).toEqual([]);
  });

  it('of one straight goes round nothing until it is closed behind, on its metal side', () => {
    const [run] = runs.runsOf(on) as [ReturnType<typeof runs.runsOf>[number]];
    expect(runs.closedRun(run)).toBeNull();
    expect(runs.runClosedBehind(run)).toBeNull();
    expect(runs.runClosedBehind({ ...runs.withMetalOnOtherSide(run), behind: 4 })).toEqual([
      [0, 0],
      [10, 0],
      [10, -4],
      [0, -4],
    ]);
  });

  it('follows its section to a new name, and goes with it', () => {
    const named = edits.renamed(on, block, ribs, 'lips');
    expect(named.openRuns?.[0]?.section).toBe('lips');
    expect(edits.withoutPlace(named, block, ribs).openRuns).toEqual([]);
  });
});
