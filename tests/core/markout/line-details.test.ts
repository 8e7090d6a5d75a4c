import { describe, expect, it } from 'vitest';
import { faceTemplate } from '../../../src/drawing/markout/face-template.ts';
import type { Bench } from '../../../src/markout/marking-out-bench.ts';
import { castingOf, disc, dowel, type JobSpec, outline } from '../../support/jobs.ts';
import { plannedJob } from '../../support/markout-jobs.ts';
import { benchesFor } from '../../support/plan-answer.ts';

/** A boss at the face that a round body comes too near; all traced as well as is said. */
const bossBeside = (traceErrorMm: number): JobSpec => ({
  fixed: castingOf({
    name: 'Block',
    sections: [
      {
        id: 'boss',
        depth: [0, 28],
        mayCut: true,
        traceErrorMm,
        loops: [outline([40, -20], [90, -20], [90, 20], [40, 20])],
      },
    ],
    holes: [dowel('D1', [-40, 60], 8, 10), dowel('D2', [70, 60], 8, 10)],
  }),
  moving: castingOf({
    name: 'Starter',
    sections: [{ id: 'body', depth: [-28, 0], traceErrorMm, loops: [disc(0, 0, 44)] }],
    holes: [dowel('P1', [-40, 60]), dowel('P2', [70, 60])],
  }),
  dowels: [
    ['D1', 'P1'],
    ['D2', 'P2'],
  ],
});

const templateOf = (traceErrorMm: number) => {
  const { views } = faceTemplate(benchesFor(plannedJob(bossBeside(traceErrorMm)))[0] as Bench, false);
  const linesIn = (id: string): string[] =>
    (views.find((view) => view.id === id)?.layers ?? [])
      .map(({ role }) => role)
      .filter((role) => role.endsWith('-line'));
  return { views, linesIn };
};

describe('the three lines of a band on the face template', () => {
  it('are all drawn where they lie apart on paper', () => {
    const { views, linesIn } = templateOf(1.5);
    expect(linesIn('face')).toEqual(['first-line', 'last-line']);
    expect(views.map(({ id }) => id)).not.toContain('lines-1');
  });

  it('are the planned one alone where they would run together, and all three beside it, apart by 1.2 mm at least', () => {
    const { views, linesIn } = templateOf(0.2);
    expect(linesIn('face')).toEqual([]);
    const detail = views.find(({ id }) => id === 'lines-1');
    expect(linesIn('lines-1')).toEqual(['first-line', 'last-line']);
    const words = (detail?.layers ?? []).flatMap(({ marks }) =>
      marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
    );
    const told = /first line lies (\d\.\d) mm before the planned one, the last (\d\.\d) mm past it/.exec(
      words.join(' '),
    );
    for (const mm of told?.slice(1) ?? []) expect(Number(mm) * (detail?.scale ?? 0)).toBeGreaterThanOrEqual(1.2);
    expect(told).not.toBeNull();
  });
});
