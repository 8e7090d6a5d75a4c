import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { waysAnswerSchema } from '../../../src/answers/ways-answer.ts';
import { runCli } from '../../support/run-cli.ts';
import { folderWith } from '../../support/temp-folder.ts';

const demo = resolve(import.meta.dirname, '../../../profiles/marsh-carrier');
const parts = ['block', 'transfer-case', 'ring-gear', 'clutch'];

/** The demo in a folder of the test's own. */
function folder(): string {
  const where = folderWith();
  for (const file of [...parts.map((part) => `${part}.part.json`), 'transfer-case.fit.json'])
    writeFileSync(join(where, file), readFileSync(join(demo, file)));
  return where;
}
const fit = (where: string): string => join(where, 'transfer-case.fit.json');

describe('fettle ways', () => {
  it('finds that the demo goes in turned the other way, without cutting', async () => {
    const { code, stdout } = await runCli('ways', fit(demo));
    expect(code).toBe(0);
    expect(stdout).toMatch(
      /^A WAY WITHOUT CUTTING: turned -16\.0°, slide to 13 mm, there turn to 0\.0°, slide home; 2\.9 mm\nat the closest/,
    );
    expect(stdout).toMatch(/Nothing is known of what stands round the castings/);
  });

  it('tells what the cheapest cut costs where there is room for one hand only', async () => {
    const { code, stdout } = await runCli('ways', fit(demo), '--from', '0', '--json');
    expect(code).toBe(1);
    const answer = waysAnswerSchema.parse(JSON.parse(stdout));
    expect(answer).toMatchObject({ exists: false, widest: null, turnFrom: 0, turnTo: 45 });
    const [best, asked] = answer.cheapest;
    expect(best?.of).toBe('found');
    expect(asked?.of).toBe('the-fit');
    expect(best?.massG).toBeLessThan(asked?.massG ?? 0);
    expect(answer.lowerBoundMm3).toBeLessThan(best?.volumeMm3 ?? 0);
    expect(answer.lowerBoundMm3).toBeGreaterThan(1000);
  });

  it('puts the way into the fit so that the check holds, and keeps the file before', async () => {
    const where = folder();
    const before = readFileSync(fit(where), 'utf8');
    const { code, stderr } = await runCli('ways', fit(where), '--write');
    expect(code).toBe(0);
    expect(stderr).toMatch(/the way in is now turned -16\.0°/);
    expect(readFileSync(`${fit(where)}.before`, 'utf8')).toBe(before);
    const { offerUp, ...rest } = JSON.parse(readFileSync(fit(where), 'utf8'));
    const { offerUp: _, ...restBefore } = JSON.parse(before);
    expect(rest).toEqual(restBefore);
    expect(offerUp).toEqual([
      { standOff: 190, turn: -16 },
      { standOff: 13, turn: -16 },
      { standOff: 13, turn: 0 },
      { standOff: 0, turn: 0 },
    ]);
    expect((await runCli('check', fit(where))).code).toBe(0);
  });

  it('writes the units of the file, and into a job in one file too', async () => {
    const where = folderWith({
      'pump.job.json': {
        format: 'fettle-job/1',
        fit: {
          format: 'fettle-fit/1',
          units: 'in',
          fixed: 'block',
          moving: 'pump',
          axis: [0, 0],
          clearance: 0.04,
          offerUp: [
            { standOff: 3, turn: 0 },
            { standOff: 0, turn: 0 },
          ],
        },
        parts: {
          block: {
            format: 'fettle-part/1',
            name: 'Block',
            units: 'in',
            viewedFrom: 'face',
            sections: [
              {
                id: 'rib',
                depth: [0, 1],
                loops: [
                  [
                    [4, -0.2],
                    [4.4, -0.2],
                    [4.4, 0.2],
                    [4, 0.2],
                  ],
                ],
              },
            ],
          },
          pump: {
            format: 'fettle-part/1',
            name: 'Pump',
            units: 'in',
            viewedFrom: 'back',
            sections: [
              {
                id: 'lip',
                depth: [-0.5, 0],
                loops: [
                  [
                    [4, 0.5],
                    [4.4, 0.5],
                    [4.4, 1],
                    [4, 1],
                  ],
                ],
              },
            ],
          },
        },
      },
    });
    const file = join(where, 'pump.job.json');
    const { code } = await runCli('ways', file, '--write');
    expect(code).toBe(0);
    const written = JSON.parse(readFileSync(file, 'utf8'));
    expect(written.format).toBe('fettle-job/1');
    expect(written.fit.offerUp.at(-1)).toEqual({ standOff: 0, turn: 0 });
    expect(written.fit.offerUp[0].standOff).toBeLessThan(10);
    expect((await runCli('check', file)).code).toBe(0);
  });

  it('tells how far one may stray, and is undecided where straying as far as asked about keeps too little', async () => {
    const { stdout } = await runCli('ways', fit(demo));
    expect(stdout).toMatch(/it forgives, each by itself, before metal meets as traced: ±1\.3° of\s+turn/);
    const little = await runCli('ways', fit(demo), '--wander', 'turn=0.2,standOff=1,shift=0.1,tilt=0.05', '--json');
    expect(little.code).toBe(0);
    const { astray } = waysAnswerSchema.parse(JSON.parse(little.stdout)).widest ?? {};
    expect(astray?.wander).toEqual({ turn: 0.2, standOff: 1, shift: 0.1, tilt: 0.05 });
    expect(astray?.clearanceMm).toBeGreaterThanOrEqual(2);
    const much = await runCli('ways', fit(demo), '--wander', 'turn=3');
    expect(much.code).toBe(3);
    expect(much.stdout).toMatch(
      /^UNDECIDED: .* needs no cutting\s+where nobody strays from it; within the wander asked/s,
    );
    expect(much.stdout).toMatch(/at once\s+it\s+may\s+come\s+to\s+touch/);
  });

  it('puts a way that begins carried aside into the fit so that the check holds, in its units', async () => {
    const circle = (r: number) => ({ circle: [0, 0], radius: r });
    const dowels = ['A', 'B'].map((id, i) => ({ id, kind: 'dowel', at: [12 * i - 6, 0], diameter: 0.3 }));
    const where = folderWith({
      'ring.job.json': {
        format: 'fettle-job/1',
        fit: {
          format: 'fettle-fit/1',
          title: 'Past a ring',
          units: 'in',
          fixed: 'block.part.json',
          moving: 'lug.part.json',
          dowels: [
            ['A', 'A'],
            ['B', 'B'],
          ],
          axis: [0, 0],
          clearance: 0.04,
          depthMargin: 0,
        },
        parts: {
          'block.part.json': {
            format: 'fettle-part/1',
            name: 'Block',
            units: 'in',
            viewedFrom: 'face',
            holes: dowels,
            sections: [
              { id: 'ring', depth: [-1.6, -1.2], loops: [circle(2.4), circle(2)] },
              { id: 'foot', depth: [0, 0.5], loops: [circle(0.5)] },
            ],
          },
          'lug.part.json': {
            format: 'fettle-part/1',
            name: 'Lug',
            units: 'in',
            viewedFrom: 'back',
            holes: dowels,
            sections: [{ id: 'lug', depth: [-0.2, 0], loops: [{ circle: [2.2, 0], radius: 0.16 }] }],
          },
        },
      },
    });
    const file = join(where, 'ring.job.json');
    expect((await runCli('ways', file)).code).toBe(1);
    const { code, stdout } = await runCli('ways', file, '--lift', '1in', '--lift-step', '0.25in', '--write');
    expect(code).toBe(0);
    expect(stdout.replaceAll('\n', ' ')).toMatch(
      /^A WAY WITHOUT CUTTING, CARRIED ASIDE AT FIRST: carried 0\.\d+ in toward \S+ o'clock, .*, there over onto the axis, .*slide home/,
    );
    const { offerUp } = JSON.parse(readFileSync(file, 'utf8')).fit;
    expect(Math.hypot(...offerUp[0].shift)).toBeLessThanOrEqual(1);
    expect(offerUp.at(-1)).toEqual({ standOff: 0, turn: 0 });
    const check = await runCli('check', file, '--json');
    expect(check.code).toBe(0);
    const json = await runCli('ways', file, '--lift', '1in', '--json');
    expect(json.code).toBe(0);
    const { exists, aside } = waysAnswerSchema.parse(JSON.parse(json.stdout));
    expect({ exists, verdict: aside?.verdict }).toEqual({ exists: false, verdict: 'should-go' });
  });

  it('draws the map as a picture with a title and a description', async () => {
    const where = folder();
    const map = join(where, 'map.svg');
    await runCli('ways', fit(where), '-o', map);
    const svg = readFileSync(map, 'utf8');
    expect(svg).toMatch(/<title[^>]*>Transfer case to iron four: every way in<\/title>/);
    expect(svg).toMatch(/<desc[^>]*>A map of turns/);
  });

  it.each([
    [['--from', '10'], '--from: found "10", expected a turn in degrees from -180 to 0: home is among the turns'],
    [['--to', '1e9'], '--to: found "1e9", expected a turn in degrees from 0 to 180: home is among the turns'],
    [
      ['--wander', 'turm=3'],
      '--wander: found "turm=3", expected turn (10° at most), standOff, shift (25 mm), tilt (5°)',
    ],
    [['--wander', 'turn=-1'], '--wander: found "turn=-1"'],
    [['--from', 'x'.repeat(20_000)], '--from: found "xxx'],
    [['--lift', 'up'], '--lift: found "up", expected a length of more than 0'],
    [['--lift', '300'], '--lift: found "300", expected no more than 200 mm aside'],
    [['--lift', '30', '--lift-step', '0.01'], '--lift-step: found "0.01", expected 2.66 to 30 mm'],
    [['--lift', '30', '--lift-step', '31'], '--lift-step: found "31"'],
    [['--lift-step', '5'], '--lift: found nothing'],
    [['--from', '0', '--to', '0'], '--from and --to: found no turn but home, expected two turns that differ'],
  ])('refuses %j with one line, and touches nothing', async (flags, said) => {
    const where = folder();
    const { code, stderr } = await runCli('ways', fit(where), '--write', ...flags);
    expect(code).toBe(2);
    expect(stderr.replaceAll('; ', ', ')).toContain(said);
    expect(stderr.length).toBeLessThan(1000);
    expect(existsSync(`${fit(where)}.before`)).toBe(false);
  });
});
