import { describe, expect, it } from 'vitest';
import { areaMm2 } from '../../../src/geometry/polygons/polygons.ts';
import { grindText } from '../../../src/words/grind-text.ts';
import { box, castingOf, disc, dowel, type JobSpec } from '../../support/jobs.ts';
import { plannedJob } from '../../support/markout-jobs.ts';

/** A rib 60 deep beside rings of a housing, one behind another, each with a bore of its own. */
const ribBeside = (...bores: readonly number[]): JobSpec => ({
  fixed: castingOf({
    name: 'Block',
    sections: [{ id: 'rib', depth: [0, 60], mayCut: true, loops: [box(100, -6, 150, 6)], depthErrorMm: 0 }],
    holes: [dowel('D1', [-120, 0], 9), dowel('D2', [0, -120], 9)],
  }),
  moving: castingOf({
    name: 'Housing',
    sections: bores.map((bore, i) => ({
      id: `ring-${i + 1}`,
      depth: [-12 * (i + 1), -12 * i],
      loops: [disc(0, 0, 160), disc(0, 0, bore)],
      depthErrorMm: 0,
    })),
    holes: [dowel('P1', [-120, 0]), dowel('P2', [0, -120])],
  }),
  dowels: [
    ['D1', 'P1'],
    ['D2', 'P2'],
  ],
  depthMarginMm: 2,
  cutter: null,
});

const bandsOf = (...bores: readonly number[]) =>
  (plannedJob(ribBeside(...bores)).plan.cuts[0]?.sections[0]?.bands ?? []).map(({ depth, planned }) => ({
    depth: [depth?.fromMm, depth?.toMm],
    areaMm2: areaMm2(planned),
  }));

describe('neighbouring bands of a cut', () => {
  it('with one line are one band, though other sections pass them', () => {
    expect(bandsOf(146, 146, 146).map(({ depth }) => depth)).toEqual([[0, 38]]);
  });

  it('within 0.02 mm are one, and take what either asks for', () => {
    const [both, ...rest] = bandsOf(146, 145.985);
    expect(rest).toEqual([]);
    expect(both?.depth).toEqual([0, 26]);
    expect(both?.areaMm2).toBeCloseTo(bandsOf(145.985)[0]?.areaMm2 ?? 0, 3);
  });

  it('farther apart stay apart', () => {
    expect(bandsOf(146, 145.5).map(({ depth }) => depth)).toEqual([
      [0, 10],
      [10, 26],
    ]);
  });

  it('of a taper are parted wherever they come to differ by more', () => {
    const bands = bandsOf(146, 145.985, 145.97, 145.955);
    expect(bands.map(({ depth }) => depth)).toEqual([
      [0, 22],
      [22, 50],
    ]);
  });

  it('are told in one line, warned of once', () => {
    const { joint, plan } = plannedJob(ribBeside(146, 146, 146));
    const text = grindText(joint, plan, []);
    expect(text.match(/^ {2}rib /gm)).toHaveLength(1);
    expect(text.match(/the wall is not measured here/g)).toHaveLength(1);
  });
});
