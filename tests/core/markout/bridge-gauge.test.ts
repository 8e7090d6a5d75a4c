import { describe, expect, it } from 'vitest';
import { allSheets } from '../../../src/drawing/markout/all-sheets.ts';
import { bridgeGauges, bridgeScene } from '../../../src/drawing/markout/bridge-gauge.ts';
import { markoutOf } from '../../../src/drawing/markout/markout-sheets.ts';
import { papers } from '../../../src/drawing/scene/papers.ts';
import { boxAroundEdges } from '../../../src/geometry/plane/edge-box.ts';
import { distance, vec } from '../../../src/geometry/plane/vec.ts';
import { outlinesOf } from '../../../src/geometry/polygons/polygons.ts';
import type { Bench } from '../../../src/markout/marking-out-bench.ts';
import { besideBridge, bridgeOutline } from '../../../src/markout/marking-out-bridge.ts';
import { bossJob, bossMm, bossRadiusMm } from '../../support/boss-job.ts';
import { textBoxes } from '../../support/drawings.ts';
import { box, disc, dowel, holeOf } from '../../support/jobs.ts';
import { caseCutInstead, lugJob, plannedDemo, plannedJob } from '../../support/markout-jobs.ts';
import { readPages } from '../../support/pdf-reader.ts';
import { benchesFor, type PlannedJoint } from '../../support/plan-answer.ts';

const benchOf = (planned: PlannedJoint, mirrored = false): Bench => benchesFor(planned, mirrored)[0] as Bench;
const benchFor = (beside: Parameters<typeof bossJob>[0] = {}, mirrored = false): Bench =>
  benchOf(plannedJob(bossJob(beside)), mirrored);

const bridgeOf = (bench: Bench) => {
  const bridge = bridgeGauges(bench)[0]?.pieces[0];
  if (bridge === undefined) throw new Error('no bridge');
  return bridge;
};
const saidOf = (bench: Bench): string =>
  markoutOf([bench])
    .notMade.filter((words) => words.includes('bridge'))
    .join(' ');

/** Places under both feet of a bridge, wherever it is moved. */
const underFeet = (bridge: ReturnType<typeof bridgeOf>) =>
  [bridge.left, bridge.right].flatMap(({ fromMm, toMm }) =>
    Array.from({ length: 13 }, (_, i) => fromMm + (i * (toMm - fromMm)) / 12).flatMap((along) =>
      Array.from({ length: 9 }, (_, k) => {
        const { moved } = bridge;
        return besideBridge(bridge, along, moved.fromMm + (k * (moved.toMm - moved.fromMm)) / 8);
      }),
    ),
  );

describe('the bridge gauge over a boss that is ground down', () => {
  const bench = benchFor();
  const bridge = bridgeOf(bench);
  // the web begins 10 from the face, 2 are asked
  const standsMm = 10 - 2;

  it('has a notch as high as the boss may still stand, at the level the band ends at', () => {
    expect(bench.bands.map(({ depth }) => depth)).toEqual([{ fromMm: -bossMm, toMm: -standsMm }]);
    expect(bridge.standsMm).toBe(standsMm);
    const [polygon] = bridgeOutline(bridge);
    const levels = new Set((polygon ?? []).map(({ y }) => y));
    expect([...levels].sort((a, b) => a - b)).toEqual([0, standsMm, standsMm + 20]);
  });

  it('passes 2 mm clear of the boss on either side, on feet 12 mm wide', () => {
    expect(bridge.right.fromMm).toBeCloseTo(bossRadiusMm + 2, 3);
    expect(bridge.left.toMm).toBeCloseTo(-bossRadiusMm - 2, 3);
    for (const { fromMm, toMm } of [bridge.left, bridge.right]) expect(toMm - fromMm).toBeCloseTo(12, 9);
  });

  it('is moved over the whole boss', () => {
    expect(bridge.moved.toMm - bridge.moved.fromMm).toBeCloseTo(2 * bossRadiusMm, 0);
    expect(distance(bridge.middle, vec(0, 0))).toBeLessThan(1e-3);
  });

  it('is one of the sheets, with a DXF, and counted in the PDF of all', async () => {
    const { sheets } = markoutOf([bench]);
    const sheet = sheets.find(({ name }) => name === 'bridge-gauge-1-boss');
    expect(sheet?.purpose).toContain('astride boss, 8–15 mm proud');
    expect(sheet?.dxf).toContain('B1');
    const all = await allSheets([bench], sheets, { paper: papers.a4 });
    const pages = await readPages(all?.content as Uint8Array);
    const texts = pages.flatMap(({ page, drawing }) => [...page.texts, ...drawing.texts]);
    expect(texts).toContain('bridge-gauge-1-boss');
    expect(texts).toContain('notch 8 mm high');
  });

  it('is a straight edge where nothing of the boss may stay', () => {
    const flush = bridgeOf(benchFor({ overMm: 2 }));
    expect(flush.standsMm).toBe(0);
    expect(bridgeOutline(flush)[0]).toHaveLength(4);
  });

  it('stands in the same places as seen in a mirror', () => {
    const mirrored = bridgeOf(benchFor({}, true));
    const widthOf = ({ left, right }: typeof bridge): number => right.toMm - left.fromMm;
    expect(widthOf(mirrored)).toBeCloseTo(widthOf(bridge), 3);
  });
});

describe('the feet of the bridge gauge', () => {
  const crossed = [dowel('H1', [22, 0], 0, 10), dowel('H2', [0, 24], 0, 14)];

  it('rest on the bare face, clear of holes: it turns round the boss till they do', () => {
    const bridge = bridgeOf(benchFor({ holes: crossed }));
    for (const p of underFeet(bridge)) {
      expect(distance(p, vec(22, 0))).toBeGreaterThan(5.9);
      expect(distance(p, vec(0, 24))).toBeGreaterThan(7.9);
    }
  });

  it('reach past a lower pad beside the boss, and not past a higher one', () => {
    const pads = (highMm: number) => ({
      sections: [{ id: 'pad', depth: [-highMm, 0] as const, loops: [disc(0, 0, 20), disc(0, 0, 14)] }],
    });
    const bridge = bridgeOf(benchFor(pads(5)));
    expect(bridge.right.fromMm).toBeGreaterThanOrEqual(19.99);
    expect(saidOf(benchFor(pads(9)))).toContain('"pad", which stands proud of the face');
  });

  it.each([
    [
      'a wall round it',
      { sections: [{ id: 'wall', depth: [-30, 0] as const, loops: [box(-30, -30, 30, 30), box(-20, -20, 20, 20)] }] },
      '"wall", which stands proud',
    ],
    ['a flange too small', { flange: [disc(0, 0, 20)] }, 'no face was traced'],
    [
      'holes on every side',
      {
        holes: Array.from({ length: 12 }, (_, i) =>
          holeOf({
            id: `B${i}`,
            at: [24 * Math.cos((i * Math.PI) / 6), 24 * Math.sin((i * Math.PI) / 6)],
            diameterMm: 60,
          }),
        ),
      },
      'hole B',
    ],
    [
      'a hollow that is open all round',
      { hollows: [{ id: 'gallery', loops: [disc(0, 0, 70), disc(0, 0, 13)] }] },
      'hollow "gallery"',
    ],
  ] as const)('find no place beside %s: it says so and draws none', (_, beside, words) => {
    const bench = benchFor(beside);
    expect(markoutOf([bench]).sheets.filter(({ name }) => name.startsWith('bridge'))).toEqual([]);
    expect(saidOf(bench)).toContain('No bridge gauge for boss, 8–15 mm proud');
    expect(saidOf(bench)).toContain(words);
  });
});

it.each([
  ['a flange cut into from the face', () => plannedJob(lugJob)],
  ['a boss behind the face', () => plannedDemo('starter')],
  ['lips with no metal under them', caseCutInstead],
])('there is no bridge gauge for %s, and nothing is said of one', (_, planned) => {
  const bench = benchOf(planned());
  expect(bridgeGauges(bench)).toEqual([]);
  expect(saidOf(bench)).toBe('');
});

it('the words of the bridge gauge keep within the ply', () => {
  const bench = benchFor();
  const bridge = bridgeOf(bench);
  const { minX, maxX } = boxAroundEdges(outlinesOf(bridgeOutline(bridge)).flat());
  const gauge = bridgeGauges(bench)[0];
  if (gauge === undefined) throw new Error('no gauge');
  const boxes = textBoxes(bridgeScene(bench, gauge, false)).filter(({ text }) => text === 'notch 8 mm high');
  expect(boxes).toHaveLength(1);
  for (const { box } of boxes) expect(box.maxX - box.minX).toBeLessThan(maxX - minX);
});
