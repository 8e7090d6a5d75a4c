import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readPart } from '../../../src/job/read-part.ts';
import { runCli } from '../../support/run-cli.ts';
import { folderWith } from '../../support/temp-folder.ts';
import { circle, dxf, line, polyline, svg, type Tags } from './drawn.ts';

interface Run {
  readonly code: number;
  readonly stdout: string;
  readonly stderr: string;
  /** The part file's text; null where none was written. */
  readonly part: string | null;
}

async function imported(name: string, content: string, ...options: readonly string[]): Promise<Run> {
  const folder = folderWith({ [name]: content });
  const out = join(folder, 'block.part.json');
  const run = await runCli('import', join(folder, name), '-o', out, ...options);
  return { ...run, part: existsSync(out) ? readFileSync(out, 'utf8') : null };
}

const fromDxf = (entities: readonly Tags[], ...options: readonly string[]) =>
  imported('block.dxf', dxf({ entities }), '--viewed-from', 'face', ...options);

const square = polyline([
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
]);

describe('fettle import', () => {
  it('writes a part file that can be read, and exits 0', async () => {
    const { code, stdout, stderr, part } = await fromDxf([square, circle(2, 2, 1, 'dowels')], '--depth', '0,12');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/^IMPORTED /);
    expect(stdout).toContain('section 0: 1 outline, 10 × 10 mm, 40 mm round, depth 0 to 12 mm\n  dowel: D1');
    expect(readPart('block.part.json', part ?? '', 'fixed')).toMatchObject({
      ok: true,
      value: { name: 'block', units: 'mm', viewedFrom: 'face' },
    });
    expect(part?.split('\n').every((each) => each.length <= 120)).toBe(true);
  });

  it('says the size of an inch file in inches, each with its unit', async () => {
    const parts = { entities: [square], insUnits: 1 };
    const { stdout } = await imported('block.dxf', dxf(parts), '--viewed-from', 'face', '--depth', '0,1.5');
    expect(stdout).toContain('section 0: 1 outline, 10 × 10 in, 40 in round, depth 0 to 1.5 in');
    expect(stdout).not.toMatch(/\d mm/);
  });

  it('exits 1 where gaps are left, and writes what closes', async () => {
    const { code, stdout, part } = await fromDxf([square, line(50, 0, 52, 0)]);
    expect(code).toBe(1);
    expect(stdout).toMatch(/^GAPS LEFT /);
    expect(stdout).toContain(
      'Gaps left open: these lines are in no outline:\n  - 2 mm from (50, 0) to (52, 0), layer 0\n',
    );
    expect(JSON.parse(part ?? '').sections).toHaveLength(1);
  });

  it('exits 1 where lines branch, and says where', async () => {
    const { code, stdout } = await fromDxf([square, line(50, 0, 60, 0), line(60, 0, 60, 5), line(60, 0, 70, 0)]);
    expect(code).toBe(1);
    expect(stdout).toContain('3 ends meet at (60, 0)');
  });

  it('says which gaps it closed, and how wide', async () => {
    const { code, stdout } = await fromDxf([line(0, 0, 9.6, 0), line(10, 0, 10, 10), line(10, 10, 0, 0)]);
    expect(code).toBe(0);
    expect(stdout).toContain('Gaps joined, up to 0.5 mm:\n  - 0.4 mm at (9.8, 0), layer 0\n');
    expect(await fromDxf([line(0, 0, 9.6, 0), line(10, 0, 10, 10), line(10, 10, 0, 0)], '--join', '0.3')).toMatchObject(
      { code: 2, part: null },
    );
  });

  it('refuses outlines that cross, naming their section, and writes nothing', async () => {
    const { code, stderr, part } = await fromDxf([square, circle(10, 5, 3, 'other'), circle(0, 5, 3)]);
    expect({ code, part }).toEqual({ code: 2, part: null });
    expect(stderr).toContain('block.dxf, section 0, outline');
    expect(stderr).toMatch(/crosses section 0, outline \d at \(0, [28]\)/);
  });

  it('never guesses from where the outlines were seen, nor where to write; all that is wrong is said at once', async () => {
    const folder = folderWith({ 'block.dxf': dxf({ entities: [square] }) });
    const { code, stderr } = await runCli(
      'import',
      join(folder, 'block.dxf'),
      '--join',
      '-1',
      '--depth',
      '9',
      '--hole',
      'D1',
      '--dpi',
      '0',
    );
    expect(code).toBe(2);
    for (const option of ['--viewed-from', '--output', '--join', '--depth', '--hole', '--dpi'])
      expect(stderr).toContain(`${option}: found `);
    expect(stderr).toContain('6 things to put right');
  });

  it('does not write over the file it reads', async () => {
    const folder = folderWith({ 'block.dxf': dxf({ entities: [square] }) });
    const file = join(folder, 'block.dxf');
    const { code, stderr } = await runCli('import', file, '-o', file, '--viewed-from', 'face');
    expect({ code, stderr }).toEqual({ code: 2, stderr: expect.stringContaining('the file that is read') });
    expect(readFileSync(file, 'utf8')).toContain('LWPOLYLINE');
  });

  it.each([
    ['a kind of file it does not know', 'block.pdf', '%PDF'],
    ['a DXF broken off', 'block.dxf', dxf({ entities: [square] }).slice(0, -60)],
    ['an SVG that is none', 'block.svg', '<svg'],
    ['a table without columns', 'block.csv', 'good morning'],
    ['an empty file', 'block.csv', ''],
  ])('refuses %s in one message', async (_, name, content) => {
    const { code, stdout, stderr, part } = await imported(name, content, '--viewed-from', 'face');
    expect({ code, stdout, part }).toEqual({ code: 2, stdout: '', part: null });
    expect(stderr).toMatch(/^.*block\.\w+.*: found .*; expected .*\.\n/);
    expect(stderr).not.toMatch(/ at .*\.ts:\d+/);
  });

  it('reads SVG and CSV too', async () => {
    const picture = svg('<rect width="10" height="10"/>', 'width="10cm" viewBox="0 0 100 100"');
    expect(await imported('a.svg', picture, '--viewed-from', 'back')).toMatchObject({
      code: 0,
      part: expect.stringContaining('"back"'),
    });
    const table = 'section,kind,x,y,diameter\nboss,circle,0,0,35';
    expect(await imported('a.csv', table, '--viewed-from', 'face', '--units', 'in')).toMatchObject({
      code: 0,
      part: expect.stringContaining('"radius": 17.5'),
    });
  });

  it('--json prints what was done alone, lengths in mm', async () => {
    const { code, stdout, stderr } = await fromDxf([square, circle(2, 2, 1, 'dowels'), line(50, 0, 52, 0)], '--json');
    expect({ code, stderr }).toEqual({ code: 1, stderr: '' });
    expect(JSON.parse(stdout)).toEqual({
      format: 'fettle-import/1',
      part: expect.stringMatching(/block\.part\.json$/),
      units: 'mm',
      fileUnits: 'mm',
      sections: [{ id: '0', outlines: 1 }],
      holes: [{ id: 'D1', kind: 'dowel' }],
      hollows: [],
      doNotCut: [],
      wallReadings: 0,
      joined: [],
      gaps: [{ from: [50, 0], to: [52, 0], sizeMm: 2, layer: '0' }],
      branches: [],
      notes: [],
    });
  });

  it('reads ten thousand lines in any order', async () => {
    const lines = Array.from({ length: 10_000 }, (_, i): Tags => {
      const k = (i * 6_143) % 10_000;
      const at = (n: number): [number, number] => [
        (500 + (n % 2)) * Math.cos((n * Math.PI) / 5_000),
        (500 + (n % 2)) * Math.sin((n * Math.PI) / 5_000),
      ];
      return k % 3 === 0 ? line(...at(k + 1), ...at(k)) : line(...at(k), ...at(k + 1));
    });
    const { code, part } = await fromDxf(lines);
    expect(code).toBe(0);
    expect(JSON.parse(part ?? '').sections[0].loops[0]).toHaveLength(10_000);
  });
});
