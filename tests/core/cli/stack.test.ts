import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { stackAnswerSchema } from '../../../src/answers/stack-answer.ts';
import type { StackFile } from '../../../src/files/stack-file.ts';
import { runCli } from '../../support/run-cli.ts';
import { folderWith } from '../../support/temp-folder.ts';

const demoPath = resolve(import.meta.dirname, '../../../profiles/marsh-carrier/transfer-case.stack.json');
const demo = JSON.parse(readFileSync(demoPath, 'utf8')) as StackFile;
const running = (text: string): string => text.replaceAll(/\s+/g, ' ');

const fileOf = (file: unknown): string => join(folderWith({ 'a.stack.json': file }), 'a.stack.json');
const withLengths = (lengths: object): unknown => ({ ...demo, lengths: { ...demo.lengths, ...lengths } });

describe('fettle stack', () => {
  it('says first that all of it goes, worst case and root of squares beside each figure, within 80 columns', async () => {
    const { code, stdout } = await runCli('stack', demoPath);
    expect(code).toBe(0);
    expect(stdout).toMatch(/^GOES: /);
    expect(stdout).toMatch(/tip in pilot bearing +14\.00 +12\.80 to 15\.20 +±0\.65 +10\.00 +engages/);
    expect(running(stdout)).toContain('No least value was stated for stroke to spare: more than 0 was asked');
    const table = stdout.split('\n').filter((line) => / to \d/.test(line));
    expect(Math.max(...table.map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  it('a tip that bottoms ends with 1', async () => {
    const { code, stdout } = await runCli('stack', fileOf(withLengths({ tip: { length: 125 } })));
    expect(code).toBe(1);
    expect(running(stdout)).toMatch(
      /^DOES NOT GO: tip to bottom of crank -5\.90 mm to -4\.10 mm where 3\.00 mm or more is wanted/,
    );
    expect(stdout).toContain('BOTTOMS');
  });

  it('a length that is left out is named, with how to measure it, and ends with 3', async () => {
    const { hubFrom: _, ...lengths } = demo.lengths;
    const { code, stdout } = await runCli('stack', fileOf({ ...demo, lengths }));
    expect(code).toBe(3);
    expect(running(stdout)).toMatch(/^UNDECIDED: spline in hub lacks 1 length\..*hubFrom: disc laid on the flywheel/);
  });

  it('of no lengths at all every one is named', async () => {
    const { code, stdout } = await runCli('stack', fileOf({ ...demo, lengths: {} }));
    expect(code).toBe(3);
    for (const name of Object.keys(demo.lengths)) expect(stdout).toContain(`- ${name}: `);
  });

  it('a limit that nobody stated is told, and a file in inches answers in inches', async () => {
    const { error: _, ...rest } = demo;
    expect(running((await runCli('stack', fileOf(rest))).stdout)).toContain('±0.30 mm is taken');
    const inches = {
      ...rest,
      units: 'in',
      wanted: {},
      lengths: Object.fromEntries(
        Object.entries(demo.lengths).map(([name, read]) => [name, { length: (read?.length ?? 0) / 25.4, error: 0 }]),
      ),
    };
    const { stdout } = await runCli('stack', fileOf(inches));
    expect(stdout).toMatch(/tip to bottom of crank +0\.315 +0\.315 to 0\.315/);
  });

  it('--json is an answer of its schema, in figures of a millionth', async () => {
    for (const file of [demoPath, fileOf({ ...demo, lengths: { tip: { length: 100.123456789 } } })]) {
      const { stdout, stderr } = await runCli('stack', file, '--json');
      expect(stderr).toBe('');
      stackAnswerSchema.parse(JSON.parse(stdout));
      expect(stdout).not.toMatch(/\d\.\d{7}/);
    }
  });

  it.each([
    ['an unknown length', withLengths({ flywhel: { length: 3 } }), 'Did you mean "flywheel"?'],
    ['a bell of nothing', withLengths({ bell: { length: 0 } }), 'lengths.bell.length'],
    ['an error below nothing', withLengths({ bell: { length: 1, error: -1 } }), 'lengths.bell.error'],
    ['a bell of a mile', withLengths({ bell: { length: 1.6e6 } }), 'no more than 2000 mm'],
    ['a spline that ends before it begins', withLengths({ splineTo: { length: 30 } }), 'lengths.splineTo.length'],
    ['a hub turned round', withLengths({ hubTo: { length: 0.1 }, hubFrom: { length: 3 } }), 'lengths.hubTo.length'],
    ['a spline past the tip', withLengths({ tip: { length: 80 } }), 'no spline goes past the tip'],
    ['another format', { ...demo, format: 'fettle-fit/1' }, 'format'],
    ['centimetres', { ...demo, units: 'cm' }, 'units'],
    ['a list', [], 'an object'],
    ['a length without its figure', withLengths({ tip: {} }), 'lengths.tip.length'],
    ['a bare figure', withLengths({ tip: 112 }), 'lengths.tip'],
  ])('%s is refused with 2, and where', async (_, file, said) => {
    const { code, stdout, stderr } = await runCli('stack', fileOf(file));
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(said);
    expect(stderr).not.toMatch(/\n\s+at /);
  });
});
