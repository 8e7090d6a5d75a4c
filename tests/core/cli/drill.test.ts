import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { drillAnswerSchema } from '../../../src/answers/drill-answer.ts';
import { Random } from '../../support/random.ts';
import { runCli } from '../../support/run-cli.ts';
import { folderWith } from '../../support/temp-folder.ts';

const rad = Math.PI / 180;
const on = (radius: number, deg: number): [number, number] => [
  radius * Math.cos(deg * rad),
  radius * Math.sin(deg * rad),
];

// SAE J617 No. 3, from memory: 12 holes on 428.62 mm, the first half a pitch from the upright
const circleMm = 428.62;
const pitchDeg = 30;

const random = new Random(617);
const measured = Array.from({ length: 12 }, (_, i) => {
  const [x, y] = on(circleMm / 2, 75 - pitchDeg * i);
  return {
    id: `H${i + 1}`,
    kind: 'bolt',
    diameter: 10.5,
    at: [x + random.between(-0.1, 0.1), y + random.between(-0.1, 0.1)],
  };
});

const part = (name: string, viewedFrom: string, holes: object[], more: object = {}) => ({
  format: 'fettle-part/1',
  name,
  units: 'mm',
  viewedFrom,
  traceError: 0.3,
  sections: [
    {
      id: 'rim',
      depth: [0, 20],
      loops: [
        { circle: [0, 0], radius: 250 },
        { circle: [0, 0], radius: 190 },
      ],
    },
  ],
  holes,
  ...more,
});

const dowels = (a: string, b: string, deg: number) => [
  { id: a, kind: 'dowel', at: on(238, deg), diameter: 12, proud: 8 },
  { id: b, kind: 'dowel', at: on(238, deg + 180), diameter: 12, proud: 8 },
];

/** The housing goes on turned half a pitch, so that its holes come between where a flange's would. */
const files = {
  'blank.part.json': part('Blank plate', 'face', dowels('D1', 'D2', 15)),
  'housing.part.json': part('Bell housing', 'back', [
    ...measured,
    ...dowels('P1', 'P2', 0).map((hole) => ({ ...hole, proud: 0 })),
  ]),
  'adapter.fit.json': {
    format: 'fettle-fit/1',
    title: 'Bell housing to a blank',
    units: 'mm',
    fixed: 'blank.part.json',
    moving: 'housing.part.json',
    axis: [0, 0],
    dowels: [
      ['D1', 'P1'],
      ['D2', 'P2'],
    ],
    clearance: 1,
    nothingShares: true,
  },
};

describe('an adapter, right through', () => {
  it('its measured pattern of 12 holes, ± 0.1 mm, is known as SAE J617 No. 3', async () => {
    const folder = folderWith(files);
    const flange = 'profiles/flanges/sae-j617-3.part.json';
    const { stdout } = await runCli('match', join(folder, 'housing.part.json'), flange);
    expect(stdout.replaceAll(/\s+/g, ' ')).toMatch(/SAE J617 No\. 3/);
  });

  it('with none planned, and no metal for any that is marked, ends with 1 and says so first', async () => {
    const fit = join(folderWith(files), 'adapter.fit.json');
    const { code, stdout } = await runCli('drill', fit, '--edge', '8');
    expect(code).toBe(1);
    expect(stdout.replaceAll(/\s+/g, ' ')).toMatch(/^NOTHING PLANNED: .* where there is metal for none;/);
  });

  it('turned half a pitch its holes are marked on a blank, with metal for each, and drawn to be printed', async () => {
    const folder = folderWith(files);
    const fit = join(folder, 'adapter.fit.json');
    const out = join(folder, 'holes');
    const { code, stdout } = await runCli('drill', fit, '-o', out);
    expect(code).toBe(0);
    expect(stdout).toMatch(
      /^NOTHING PLANNED: no hole is "planned"\. 12 bolt holes have no partner, and are marked on the\s+other part, where there is metal for each; but nothing shows that neither drawing is\s+mirrored\./,
    );
    const json = await runCli('drill', fit, '--json');
    const { marked, bolts } = drillAnswerSchema.parse(JSON.parse(json.stdout));
    expect(marked).toHaveLength(12);
    for (const [i, { hole, verdict, inDrawing, walls }] of marked.entries()) {
      const [x, y] = on(circleMm / 2, 75 - pitchDeg * i + 15);
      expect(hole).toBe(`H${i + 1}`);
      // each coordinate was read to 0.1
      expect(Math.hypot(inDrawing[0] - x, inDrawing[1] - y)).toBeLessThan(0.1 * Math.SQRT2 + 1e-6);
      expect(verdict).toBe('does');
      // 214.31 less 190 to the inner edge, less half a hole
      expect(walls.find(({ beside }) => beside === 'outline')?.wallMm).toBeCloseTo(24.31 - 5.25, 0);
    }
    expect(bolts).toMatchObject({ paired: 0, marked: 12 });
    expect(bolts.longest?.deg).toBeCloseTo(pitchDeg, 0);
    expect(readdirSync(out).sort()).toEqual(['drill-fixed.dxf', 'drill-fixed.pdf', 'drill-fixed.svg', 'drill.csv']);
    expect(readFileSync(join(out, 'drill.csv'), 'utf8').trim().split('\r\n')).toHaveLength(13);
    const dxf = readFileSync(join(out, 'drill-fixed.dxf'), 'utf8')
      .split('\n')
      .map((line) => line.trim());
    expect(dxf.filter((line, i) => line === 'DRILL-MARKED' && dxf[i - 2] === 'CIRCLE')).toHaveLength(12);
  });

  it('a hole that is planned too near its rim is refused, and so said on what is written', async () => {
    const holes = [...dowels('D1', 'D2', 15), { id: 'N1', kind: 'planned', at: [0, 245], diameter: 8, depth: [0, 20] }];
    const folder = folderWith({ ...files, 'blank.part.json': part('Blank plate', 'face', holes) });
    const fit = join(folder, 'adapter.fit.json');
    const { code, stdout } = await runCli('drill', fit, '-o', join(folder, 'holes'));
    expect(code).toBe(1);
    expect(stdout).toMatch(/^NO METAL for "N1" as planned\./);
    expect(readFileSync(join(folder, 'holes', 'drill-fixed.svg'), 'utf8')).toContain('Do not drill');
    expect(readFileSync(join(folder, 'holes', 'drill-fixed.dxf'), 'utf8')).toContain('DO NOT DRILL N1');
  });
});

describe('fettle drill', () => {
  it.each([
    [['--edge', '0'], '--edge', 'diameters from 0.5 to 10'],
    [['--edge', 'two'], '--edge', 'diameters from 0.5 to 10'],
    [['--socket', '0'], '--socket', 'a length of more than 0'],
    [['--drill-error', '-1'], '--drill-error', 'a length of 0 or more'],
    [['--spot-face', '5000'], '--spot-face', 'to 1000 mm'],
  ])('%j is told of, and nothing is written', async (flags, at, expected) => {
    const folder = folderWith(files);
    const { code, stderr } = await runCli(
      'drill',
      join(folder, 'adapter.fit.json'),
      '-o',
      join(folder, 'holes'),
      ...flags,
    );
    expect(code).toBe(2);
    expect(stderr).toContain(at);
    expect(stderr).toContain(expected);
    expect(existsSync(join(folder, 'holes'))).toBe(false);
  });
});
