import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { matchAnswerSchema } from '../../../src/answers/match-answer.ts';
import { runCli } from '../../support/run-cli.ts';
import { folderWith } from '../../support/temp-folder.ts';

type Place = readonly [number, number];

const part = (places: readonly Place[], hole: object, more: object = {}) => ({
  format: 'fettle-part/1',
  name: 'Plate',
  units: 'mm',
  viewedFrom: 'face',
  sections: [{ id: 'plate', loops: [{ circle: [0, 0], radius: 300 }] }],
  holes: places.map((at, i) => ({ id: `H${i + 1}`, kind: 'bolt', at, ...hole })),
  ...more,
});

const uneven: readonly Place[] = [
  [0, 0],
  [100, 0],
  [20, 70],
  [-60, 30],
  [-20, -80],
  [90, 110],
];

/** The same holes seen from behind, as a housing's are. */
const behind = (places: readonly Place[], stretch = 1): Place[] => places.map(([x, y]) => [-x * stretch, y * stretch]);

const tapped = { kind: 'tapped', thread: 'M10x1.5' };
const open = { kind: 'bolt', diameter: 11 };

const matched = (fixed: object, moving: object, ...flags: string[]) => {
  const folder = folderWith({ 'a.part.json': fixed, 'b.part.json': moving });
  return runCli('match', join(folder, 'a.part.json'), join(folder, 'b.part.json'), ...flags);
};

const flat = (text: string): string => text.replaceAll(/\s+/g, ' ');

describe('fettle match', () => {
  it('lays a block and a housing upon one another, as both are seen, and says how far each bolt may be off', async () => {
    const { code, stdout } = await matched(part(uneven, tapped), part(behind(uneven), open));
    expect(code).toBe(0);
    expect(stdout).toMatch(/^MATCH: 6 of 6 holes come together, within 0\.00 mm\.\n/);
    expect(stdout).toMatch(/H3 +H3 +0\.00 mm +0\.50 mm, one part holds the bolt/);
  });

  it('a bolt floats in two clearance holes, and may be off by both', async () => {
    const { stdout } = await matched(part(uneven, { ...open, thread: 'M10x1.5' }), part(behind(uneven), open));
    expect(stdout).toMatch(/H1 +H1 +0\.00 mm +1\.00 mm, the bolt floats in both/);
  });

  it('a housing that is told to be seen from the wrong side matches mirrored, and that is no match', async () => {
    const { code, stdout } = await matched(part(uneven, tapped), part(uneven, open));
    expect(code).toBe(1);
    expect(stdout).toMatch(/^MIRRORED: 6 of 6 holes come together/);
    expect(stdout).toContain('Look again at viewedFrom');
  });

  it('a pattern that is one hundredth larger does not take the bolts, however it is laid', async () => {
    const { code, stdout } = await matched(part(uneven, tapped), part(behind(uneven, 1.01), open));
    expect(code).toBe(1);
    expect(flat(stdout)).toMatch(/^DOES NOT LINE UP: .* however it is laid, not all the bolts go in\./);
  });

  it('a part that lies badly by least squares is told where all its bolts go in', async () => {
    // one hole has hardly any play and stands off; the others have room to give way
    const off = behind(uneven).map(([x, y], i): Place => (i === 5 ? [x - 0.4, y] : [x, y]));
    const moving = part(off, { kind: 'bolt', diameter: 11 });
    moving.holes[5] = { ...moving.holes[5], diameter: 10.5 } as (typeof moving.holes)[number];
    const { code, stdout } = await matched(part(uneven, tapped), moving);
    expect(code).toBe(0);
    expect(flat(stdout)).toMatch(
      /So laid a bolt has no room\. Turned by .* all 6 bolts of known size go in: the fullest hole takes \d\d %/,
    );
  });

  it('symmetries are named, and a standard flange with its source', async () => {
    const [fixed, moving] = ['flywheel-housing', 'adapter'].map((name) =>
      join(import.meta.dirname, `../../../profiles/sae-3-adapter/${name}.part.json`),
    );
    const { code, stdout } = await runCli('match', fixed ?? '', moving ?? '');
    expect(code).toBe(0);
    const text = flat(stdout);
    expect(text).toContain('The pattern is 12-fold: turned by 30° it matches as well');
    expect(text).toContain('Mirrored it matches as well');
    expect(text).toMatch(/housing flange SAE J617 No\. 3: 12 of its 12 holes .* \(looked up\)/);
  });

  it('with a common centre only the turn is sought', async () => {
    const shifted = behind(uneven).map(([x, y]): Place => [x + 40, y]);
    expect((await matched(part(uneven, tapped), part(shifted, open))).code).toBe(0);
    const { code, stdout } = await matched(part(uneven, tapped), part(shifted, open), '--centre');
    expect(code).toBe(1);
    expect(stdout).toMatch(/^NO MATCH: /);
  });

  it('holes that are no pattern are no match', async () => {
    const { code, stdout } = await matched(part(uneven.slice(0, 2), {}), part(uneven.slice(0, 2), {}));
    expect(code).toBe(1);
    expect(flat(stdout)).toMatch(/^NO MATCH: 2 of 2 holes come together at best, which as many holes strewn/);
  });

  it.each([
    ['a match', [part(uneven, tapped), part(behind(uneven), open)]],
    ['none', [part(uneven.slice(0, 1), {}), part(uneven.slice(0, 1), {})]],
  ])('%s as JSON is an answer of its schema, in figures of a millionth', async (_, [fixed, moving]) => {
    const { stdout, stderr } = await matched(fixed ?? {}, moving ?? {}, '--json', '--reach', '0.05in');
    expect(stderr).toBe('');
    expect(matchAnswerSchema.parse(JSON.parse(stdout)).reachMm).toBe(1.27);
    expect(stdout).not.toMatch(/\d\.\d{7}/);
  });

  it.each([
    ['a part without holes', part([], {}), [], 'found no holes; expected 1 to 500 holes'],
    [
      'more holes than a pattern has',
      part(
        Array.from({ length: 501 }, (_, i): Place => [i, 0]),
        {},
      ),
      [],
      '501 holes',
    ],
    ['a reach below nothing', part(uneven, {}), ['--reach', '-1'], '--reach: found "-1"'],
    ['a reach of no number', part(uneven, {}), ['--reach', 'NaN'], '--reach: found "NaN"'],
    ['a reach of a world', part(uneven, {}), ['--reach', '1e9'], '--reach: found "1e9"'],
    ['what is no part', { format: 'fettle-fit/1' }, [], 'a.part.json, format: found "fettle-fit/1"'],
  ])('%s is refused with 2, in plain lines', async (_, fixed, flags, said) => {
    const { code, stdout, stderr } = await matched(fixed, part(uneven, {}), ...flags);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(said);
    expect(stderr).not.toMatch(/\n\s+at |node:|\.ts:\d/);
  });

  it('everything that is wrong is told at once', async () => {
    const { code, stderr } = await runCli('match', 'no-a', 'no-b', '--reach', '0');
    expect(code).toBe(2);
    expect(stderr).toContain('3 things to put right');
  });
});
