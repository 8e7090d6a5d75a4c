import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { StackFile } from '../../../src/files/stack-file.ts';
import { toldAtBench } from '../../../viewer/heavy/at-bench.ts';
import { type BenchForm, dialField, type Entries, questionOf } from '../../../viewer/job/bench-entries.ts';
import { benchWords } from '../../../viewer/words/at-bench.ts';
import { runCli } from '../../support/run-cli.ts';

const told = (form: BenchForm, entries: Entries) => {
  const asked = questionOf(form, entries, 'mm');
  return asked && toldAtBench(asked);
};

const stackEntries = ({ lengths, wanted = {}, error }: StackFile): Entries => ({
  ...(error === undefined ? {} : { error: String(error) }),
  ...Object.fromEntries(
    Object.entries(lengths).flatMap(([name, read]) => [
      [`length.${name}`, String(read?.length)],
      ...(read?.error === undefined ? [] : [[`error.${name}`, String(read.error)]]),
    ]),
  ),
  ...Object.fromEntries(Object.entries(wanted).map(([row, least]) => [`wanted.${row}`, String(least)])),
});

describe("what is typed into the page's fields at the bench", () => {
  it('is told of a hole as the command tells it, to the letter', async () => {
    const entries = { thread: 'M12x1.25', was: 'M11x1.25', boss: '20', depth: '30', have: '10.5,10.8' };
    const flags = ['--was', 'M11x1.25', '--boss', '20', '--depth', '30', '--have', '10.5,10.8'];
    const { stdout } = await runCli('hole', 'M12x1.25', ...flags);
    expect(told('hole', entries)).toMatchObject({ kind: 'told', verdict: 'goes', text: stdout.slice(0, -1) });
  });

  it('and of a bore, with its face, the place read again and the flange', async () => {
    const round = { 12: '0', 3: '0.06', 6: '0.31', 9: '0.25', again: '0.01' } as const;
    const face = { 12: '0', 1.5: '0.02', 3: '0.05', 6: '0.1', 9: '0.05' } as const;
    const entries = {
      ...Object.fromEntries(Object.entries(round).map(([at, read]) => [`bore.${at}`, read])),
      ...Object.fromEntries(Object.entries(face).map(([at, read]) => [`face.${at}`, read])),
      faceRadius: '150',
      sag: '0.02',
      flange: 'SAE 3',
    };
    const { stdout } = await runCli(
      ...['bore', '--bore', '12:0,3:0.06,6:0.31,9:0.25,12:0.01', '--sag', '0.02', '--flange', 'SAE 3'],
      ...['--face', '12:0,1.5:0.02,3:0.05,6:0.1,9:0.05', '--face-radius', '150'],
    );
    expect(told('bore', entries)).toMatchObject({ verdict: 'not', text: stdout.slice(0, -1) });
    expect(dialField('face', 1.5)).toBe('face.1.5');
  });

  it('and of lengths along the crank, but for the title and the names of what is missing', async () => {
    const file = 'profiles/marsh-carrier/transfer-case.stack.json';
    const { stdout } = await runCli('stack', file);
    const stack = JSON.parse(readFileSync(file, 'utf8')) as StackFile;
    const entries = stackEntries(stack);
    expect(told('stack', entries)).toMatchObject({
      verdict: 'goes',
      text: stdout.slice(0, -1).replace(`${stack.title}\n`, ''),
    });
    const { 'length.tip': _, ...others } = entries;
    const lacking = told('stack', others);
    expect(lacking).toMatchObject({ verdict: 'undecided' });
    expect(lacking).toHaveProperty(
      'text',
      expect.stringContaining("shaft's tip from the gearbox's face: straightedge"),
    );
  });

  it('of which too little stands there asks nothing', () => {
    expect(told('hole', { boss: '20' })).toBeNull();
    expect(told('bore', { sag: '0.02' })).toBeNull();
    expect(told('stack', { error: '0.2', 'wanted.pilot': '10' })).toBeNull();
  });

  it.each([
    ['hole', { thread: 'M12x9' }, 'Thread: found "M12x9"'],
    ['hole', { thread: 'M12', boss: '9' }, 'Boss, diameter: found 9 mm'],
    ['hole', { thread: 'M12', have: 'plenty' }, 'Drills, mm or inch names: found "plenty"'],
    ['bore', { 'bore.12': '0', 'bore.3': '0.1' }, 'Readings of the bore: found 2 places'],
    ['bore', { 'bore.12': '0', 'bore.3': '0', 'bore.6': '0', 'bore.9': '0', 'face.12': '0' }, "Plunger's distance"],
    ['stack', { 'length.tip': '5000' }, "shaft's tip from the gearbox's face: found 5000"],
    ['stack', { 'length.splineFrom': '50', 'length.splineTo': '40' }, "splines end, from the gearbox's face: found 40"],
  ] as const)('of which something cannot be in %s is named by its field', (form, entries, says) => {
    const refused = told(form, entries);
    const lines = refused?.kind === 'refused' ? refused.findings.map((each) => benchWords.refused(form, each)) : [];
    expect(lines.join('\n')).toContain(says);
    expect(lines.join('\n')).not.toContain('--');
  });
});
