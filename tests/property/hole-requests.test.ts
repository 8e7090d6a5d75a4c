import { expect, it } from 'vitest';
import { holeAnswerSchema } from '../../src/answers/hole-answer.ts';
import { Random } from '../support/random.ts';
import { runCli } from '../support/run-cli.ts';

const threads = ['M12x1.25', 'M10', 'M24x3', 'M1x0.2', 'M100x6', 'G1/4', 'Rc1/8', '3/8-16', '#10-24', '3/4 UNF'];
const lengths = ['1', '0.0001', '20', '1000', '0.5in', '3"', '.5', '0', '-1', '', 'NaN', '1,5', '0x10', '1e-7'];
const boxes = ['10', '10.2,#7', '0.5,100', '1in', '10mm, 11mm', 'F,27/64,z', '', ','];
const materials = ['steel', 'Aluminium', 'grey iron', 'cheese', '__proto__'];

/** A command line of what people, and machines, might write; mostly sound. */
function commandLine(random: Random): string[] {
  const argv = ['hole', random.pick(threads)];
  const add = (share: number, flag: string, values: readonly string[]): void => {
    if (random.chance(share))
      argv.push(flag, random.chance(0.9) ? (values[random.whole(0, 3)] ?? '') : random.pick(values));
  };
  add(0.4, '--was', threads);
  for (const flag of ['--boss', '--wall', '--keep', '--depth', '--engagement']) add(0.3, flag, lengths);
  add(0.3, '--have', boxes);
  add(0.3, '--material', materials);
  return argv;
}

it('whatever is asked of a hole is answered in figures, or refused with 2', async () => {
  const random = new Random(5);
  const seen = new Set<number>();
  for (let i = 0; i < 400; i++) {
    const argv = commandLine(random);
    const { code, stdout, stderr } = await runCli(...argv);
    expect([0, 1, 2], `${argv.join(' ')}\n${stderr}`).toContain(code);
    seen.add(code);
    if (code === 2) continue;
    expect(stdout, argv.join(' ')).not.toMatch(/NaN|Infinity|undefined|null/);
    expect(stdout, argv.join(' ')).not.toMatch(/ -\d/);
    const json = await runCli(...argv, '--json');
    expect(json.code).toBe(code);
    holeAnswerSchema.parse(JSON.parse(json.stdout));
  }
  expect([...seen].sort()).toEqual([0, 1, 2]);
});
