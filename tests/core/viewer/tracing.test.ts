import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/files/job-file.ts';
import type { XY } from '../../../viewer/job/arc.ts';
import { toPane, type View } from '../../../viewer/stage/view.ts';
import { pressKey } from '../../../viewer/steps/outlines/keys.ts';
import { outlinesLine } from '../../../viewer/steps/outlines/outlines-line.ts';
import { loopPath } from '../../../viewer/steps/outlines/paths.ts';
import { choosing, type Looking } from '../../../viewer/steps/outlines/selection.ts';
import { type TraceContext, touchingOf } from '../../../viewer/steps/outlines/touch.ts';
import { blockFile, fitFile, housingFile } from '../../support/small-job.ts';

const file = 'block.part.json';
const opened = { list: 'sections', index: 0 } as const;
const view: View = { pxPerMm: 4, origin: { x: 300, y: 200 } };

/** A context one can tap on at places of the part's drawing. */
function benchOf(looking: Partial<Looking>, changes: object = {}, pointerType = 'touch') {
  let job = {
    format: 'fettle-job/1',
    fit: fitFile,
    parts: { [file]: { ...blockFile, ...changes } },
  } as unknown as JobFile;
  let now: Looking = { opened, chosen: null, tool: choosing, said: '', ...looking };
  const context = (): TraceContext => ({
    sheet: { job, file, view },
    looking: now,
    look: (more) => {
      now = { ...now, ...more };
    },
    edit: (change) => {
      job = change(job);
    },
    over: null,
    magnify: () => {},
    snap: () => {},
  });
  const touching = touchingOf(context);
  const event = { pointerType } as PointerEvent;
  const pixels = ([x, y]: XY) => toPane(view, { x, y });
  return {
    tap: (at: XY) => {
      const place = pixels(at);
      if (touching.onPress?.(place, event)) touching.onRelease?.(place, event);
      touching.onTap?.(place, event);
    },
    drag: (from: XY, to: XY) => {
      expect(touching.onPress?.(pixels(from), event)).toBe(true);
      touching.onDrag?.(pixels(to), event);
      touching.onRelease?.(pixels(to), event);
    },
    press: (key: string, shiftKey = false) => pressKey(context(), { key, shiftKey } as KeyboardEvent),
    loops: () => job.parts[file]?.sections[0]?.loops ?? [],
    holes: () => job.parts[file]?.holes ?? [],
    looking: () => now,
    look: (more: Partial<Looking>) => context().look(more),
    job: () => job,
  };
}

const chosenRib = (vertex: number | null) => ({ chosen: { kind: 'loop', place: opened, loop: 0, vertex } }) as const;

describe('tracing by taps', () => {
  it('makes an outline of the points, closed by a tap on the first, and chooses it', () => {
    const on = benchOf({ tool: { kind: 'trace', arc: 'no' } });
    for (const at of [
      [0, 0],
      [30, 0],
      [30, 30],
      [0, 0],
    ] as const)
      on.tap(at);
    expect(on.loops().at(-1)).toEqual([
      [0, 0],
      [30, 0],
      [30, 30],
    ]);
    expect(on.looking()).toMatchObject({ chosen: { kind: 'loop', loop: 1 }, tool: choosing });
    expect(on.job().openRuns).toBeUndefined();
  });

  it('goes over an arc where asked, also back to the first point', () => {
    const bent = benchOf({ tool: { kind: 'trace', arc: 'no' } });
    bent.tap([20, 0]);
    bent.look({ tool: { kind: 'trace', arc: 'next' } });
    bent.tap([0, 20]);
    bent.tap([-20, 0]);
    expect(bent.job().openRuns?.[0]?.points).toEqual([
      [20, 0, 1],
      [-20, 0],
    ]);
    bent.tap([20, 0]);
    expect(bent.loops().at(-1)).toEqual([
      [20, 0, 1],
      [-20, 0],
    ]);
  });

  it('does not close what goes round nothing, and says so', () => {
    const on = benchOf({ tool: { kind: 'trace', arc: 'no' } });
    for (const at of [
      [0, 0],
      [30, 0],
      [0, 0],
    ] as const)
      on.tap(at);
    expect(on.loops()).toHaveLength(1);
    expect(on.looking().said).not.toBe('');
  });

  it('snaps to points and holes within 12 pixels, and not to those beyond', () => {
    const on = benchOf({ tool: { kind: 'trace', arc: 'no' } });
    // 4 pixels a millimetre, so 12 pixels are 3 mm
    on.tap([142, -2.5]);
    on.tap([2.5, 1]);
    on.tap([-97, 1.5]);
    expect(on.job().openRuns?.[0]?.points).toEqual([
      [140, -4],
      [0, 0],
      [-97, 1.5],
    ]);
  });

  it('makes the circle through three points', () => {
    const on = benchOf({ tool: { kind: 'circle', through: [] } });
    for (const at of [
      [-20, 10],
      [20, 10],
      [0, 30],
    ] as const)
      on.tap(at);
    expect(on.loops().at(-1)).toEqual({ circle: [0, 10], radius: 20 });
  });

  it('makes none of three in a line, and says so', () => {
    const on = benchOf({ tool: { kind: 'circle', through: [] } });
    for (const at of [
      [-20, 10],
      [0, 10],
      [20, 10],
    ] as const)
      on.tap(at);
    expect(on.loops()).toHaveLength(1);
    expect(on.looking().said).toContain('line');
  });

  it('puts holes where they are tapped, one after the other, and takes none of them for a dowel', () => {
    const on = benchOf({ tool: { kind: 'hole' } });
    on.tap([50, 60]);
    on.tap([-50, 60]);
    expect(on.holes().slice(-2)).toEqual([
      { id: 'H1', kind: 'bolt', at: [50, 60] },
      { id: 'H2', kind: 'bolt', at: [-50, 60] },
    ]);
  });

  it('takes the two holes that are tapped for the dowels, and is done with two', () => {
    const holes = blockFile.holes.map((hole) => ({ ...hole, kind: 'bolt' }));
    const on = benchOf({ tool: { kind: 'dowels' } }, { holes });
    on.tap([100, 0]);
    on.tap([40, 40]);
    expect(on.holes().map(({ kind }) => kind)).toEqual(['bolt', 'dowel', 'bolt']);
    expect(on.looking().tool.kind).toBe('dowels');
    on.tap([-100, 1]);
    expect(on.holes().map(({ kind }) => kind)).toEqual(['dowel', 'dowel', 'bolt']);
    expect(on.looking().tool.kind).toBe('choose');
  });

  it('reads a place in inches where the part is in inches', () => {
    const on = benchOf({ tool: { kind: 'hole' } }, { units: 'in', sections: [], holes: [] });
    on.tap([50.8, 25.4]);
    expect(on.holes().at(-1)?.at).toEqual([2, 1]);
  });
});

describe('editing by hand', () => {
  it('drags a point', () => {
    const on = benchOf(chosenRib(null));
    on.drag([160, 4], [170, 20]);
    expect(on.loops()[0]).toEqual([
      [140, -4],
      [160, -4],
      [170, 20],
      [140, 4],
    ]);
  });

  it('bends an edge by its middle', () => {
    const on = benchOf(chosenRib(null));
    on.drag([150, 4], [150, 14]);
    expect(on.loops()[0]).toEqual([
      [140, -4],
      [160, -4],
      [160, 4, 1],
      [140, 4],
    ]);
  });

  it('puts a point on an edge that is tapped, and opens what is tapped elsewhere', () => {
    const on = benchOf(chosenRib(null), {}, 'mouse');
    on.tap([155.5, -4.5]);
    expect((on.loops()[0] as number[][])[1]).toEqual([155.5, -4]);
    on.tap([-100, 0]);
    expect(on.looking()).toMatchObject({ opened: 'holes', chosen: { kind: 'hole', hole: 0 } });
  });

  it('moves the chosen point by a tenth of a millimetre, with shift by a whole one', () => {
    const on = benchOf(chosenRib(1));
    expect([on.press('ArrowRight'), on.press('ArrowUp', true)]).toEqual([true, true]);
    expect((on.loops()[0] as number[][])[1]).toEqual([160.1, -3]);
  });

  it('deletes the chosen point, and with the third the outline', () => {
    const on = benchOf(chosenRib(1));
    on.press('Delete');
    expect(on.loops()[0]).toEqual([
      [140, -4],
      [160, 4],
      [140, 4],
    ]);
    on.press('Delete');
    on.press('Delete');
    expect(on.loops()).toEqual([]);
    expect(on.press('Delete')).toBe(false);
  });
});

describe('the line of the step', () => {
  it('counts outlines by part, and says what is not done', () => {
    const { viewedFrom, ...unseen } = { ...housingFile, sections: [] };
    const run = { part: file, section: 'rib', points: [[0, 0]], metal: 'left' };
    const job = {
      format: 'fettle-job/1',
      fit: fitFile,
      parts: { [file]: blockFile, 'housing.part.json': unseen },
      openRuns: [run],
    } as unknown as JobFile;
    expect(outlinesLine(job)).toBe('Block: 1 outline, 1 line not closed; Housing: nothing traced yet, side not said.');
  });
});

describe('an outline as drawn', () => {
  it('has its arcs exact: radius = chord (1 + b²)/4b, the large one over half a circle', () => {
    expect(
      loopPath([
        [0, 0, 1],
        [10, 0],
      ]),
    ).toBe('M0 0A5 5 0 0 1 10 0L0 0Z');
    expect(
      loopPath([
        [0, 0, -2],
        [8, 0],
        [8, 8],
      ]),
    ).toBe('M0 0A5 5 0 1 0 8 0L8 8L0 0Z');
  });
});
