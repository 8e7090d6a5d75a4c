import { describe, expect, it } from 'vitest';
import { holeAnswerSchema } from '../../../src/answers/hole-answer.ts';
import { runCli } from '../../support/run-cli.ts';

describe('fettle hole', () => {
  it('names the drill first, both ways of counting the thread, and where each figure comes from', async () => {
    const { code, stdout } = await runCli('hole', 'M12x1.25', '--material', 'grey-iron');
    expect(code).toBe(0);
    expect(stdout).toMatch(/^DRILL: drill 10\.8 mm for M12x1\.25\.\n/);
    expect(stdout).toMatch(/of the basic thread +89 %/);
    expect(stdout).toMatch(/as handbooks count +74 %/);
    expect(stdout).toMatch(/tapping drill +10\.8 mm +ISO 2306, looked up/);
    expect(stdout).toMatch(/minor diameter +10\.647 mm to 10\.912 mm \(6H\) +ISO 965-1, from memory/);
    expect(stdout).toContain('1.5 diameters, 18.00 mm');
  });

  it('a value from memory is told as one', async () => {
    const { stdout } = await runCli('hole', 'G1/4');
    expect(stdout).toMatch(/tapping drill .*from memory/);
  });

  it('says first what stands against it, and ends with 1', async () => {
    const { code, stdout } = await runCli('hole', 'M12x1.25', '--was', 'M10x1.25', '--boss', '18', '--have', '9.5,10');
    expect(code).toBe(1);
    expect(stdout.replaceAll('\n', ' ')).toMatch(
      /^NOT AS ASKED: drill 10\.8 mm for M12x1\.25, but it leaves 3\.0 mm of wall, and 4\.0 mm are to be kept; and no drill in the box is right for it\./,
    );
  });

  it('reads inches and the names of inch drills', async () => {
    const { stdout } = await runCli('hole', '1/4-20', '--boss', '0.75in', '--have', '#8,#7,F,13/64', '--json');
    const answer = holeAnswerSchema.parse(JSON.parse(stdout));
    expect(answer.wall?.afterMm).toBeCloseTo(6.35, 9);
    expect(answer.atHand?.drill.name).toBe('#7');
  });

  it.each([
    ['M12x1.25'],
    ['M12x1.25', '--was', 'M11x1.25', '--boss', '20', '--depth', '30', '--material', 'aluminium', '--have', '10,10.8'],
    ['Rc1/4', '--wall', '5'],
    ['#10-24', '--engagement', '10'],
  ])('%s … --json is an answer of its schema, in figures of a millionth', async (...argv) => {
    const { code, stdout, stderr } = await runCli('hole', ...argv, '--json');
    expect(code).toBe(0);
    expect(stderr).toBe('');
    holeAnswerSchema.parse(JSON.parse(stdout));
    expect(stdout).not.toMatch(/\d\.\d{7}/);
  });

  it.each([
    ['a thread nobody knows', ['M12q'], 'thread: found "M12q"'],
    ['a size without its pitch', ['M13'], 'thread: found "M13"'],
    ['20,000 letters', ['M1'.repeat(10_000)], 'thread: found "M1M1'],
    ['a depth below nothing', ['M12', '--depth', '-1'], '--depth: found "-1"'],
    ['a depth of nothing', ['M12', '--depth', '0'], '--depth: found "0"'],
    ['a boss smaller than its thread', ['M12', '--boss', '12'], '--boss: found 12 mm'],
    ['a drill of a million kilometres', ['M12', '--have', '1e9'], '--have: found "1e9"'],
    ['a drill of a metre', ['M12', '--have', '10.2,1000'], '--have: found "1000"'],
    ['no drill', ['M12', '--have', ''], '--have: found ""'],
    ['more drills than a box holds', ['M12', '--have', '9,'.repeat(600)], '--have: found more drills'],
    ['a smaller thread in place of a larger', ['M10', '--was', 'M12'], '--was: found M12x1.75'],
    ['a wall that the thread takes', ['M12x1.25', '--was', 'M10x1.25', '--wall', '1'], '--wall: found 1 mm'],
    ['a metal nobody casts', ['M12', '--material', 'cheese'], '--material: found "cheese"'],
    ['no number', ['M12', '--boss', 'NaN'], '--boss: found "NaN"'],
    ['a control character', ['M12\u001b[2J'], 'thread: found "M12'],
  ])('%s is refused in one clear line, with 2', async (_, argv, begins) => {
    const { code, stdout, stderr } = await runCli('hole', ...argv);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr.startsWith(begins)).toBe(true);
    expect(stderr.split('\n')).toHaveLength(3);
    expect(stderr.length).toBeLessThan(500);
    const json = await runCli('hole', ...argv, '--json');
    expect(JSON.parse(json.stdout)).toMatchObject({ format: 'fettle-findings/1' });
  });

  it('everything that is wrong is told at once', async () => {
    const { stderr } = await runCli('hole', 'M12q', '--boss', '-3', '--was', 'M1', '--material', 'alumnium');
    expect(stderr).toContain('4 things to put right');
    expect(stderr).toContain('Did you mean "aluminium"?');
  });

  it('--help ends in examples that work as they are printed', async () => {
    const { stdout } = await runCli('hole', '--help');
    const examples = stdout.split('\n').filter((line) => line.startsWith('  fettle hole '));
    expect(examples.length).toBeGreaterThan(2);
    for (const line of examples) {
      const { code, stderr } = await runCli(...line.trim().split(' ').slice(1));
      expect({ ok: [0, 1].includes(code), stderr }).toEqual({ ok: true, stderr: '' });
    }
  });
});
