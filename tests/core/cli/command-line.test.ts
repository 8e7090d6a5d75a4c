import { describe, expect, it } from 'vitest';
import { runCli } from '../../support/run-cli.ts';

describe('the command line', () => {
  it('lists its commands, with examples', async () => {
    const { code, stdout } = await runCli('--help');
    expect(code).toBe(0);
    for (const name of [
      'check',
      'grind',
      'draw',
      'view',
      'import',
      'match',
      'drill',
      'hole',
      'bore',
      'stack',
      'demo',
      'Examples:',
    ])
      expect(stdout).toContain(name);
  });

  it('without a command it shows the help, and that is a usage error', async () => {
    const { code, stdout, stderr } = await runCli();
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain('Usage: fettle');
  });

  it('tells its version', async () => {
    expect(await runCli('--version')).toEqual({ code: 0, stdout: '0.1.0\n', stderr: '' });
  });

  it.each([
    [['chek', 'a.fit.json'], "unknown command 'chek'", 'check'],
    [['check', 'a.fit.json', '--jsn'], "unknown option '--jsn'", '--json'],
    [['grnd', 'a.fit.json'], "unknown command 'grnd'", 'grind'],
  ])('a slip of the fingers names the nearest: %j', async (argv, said, meant) => {
    const { code, stdout, stderr } = await runCli(...argv);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(`fettle: ${said}`);
    expect(stderr).toContain(`(Did you mean ${meant}?)`);
  });

  it.each([
    [['check']],
    [['check', 'a.fit.json', 'b.fit.json']],
    [['--json']],
    [['help', 'nonsense']],
    [['\u0000']],
    [['check', '--', '--json']],
    [['check', '']],
    [['__proto__']],
    [['constructor']],
  ])('a command line that makes no sense is a usage error, in a few plain lines: %j', async (argv) => {
    const { code, stderr } = await runCli(...argv);
    expect(code).toBe(2);
    expect(stderr).not.toMatch(/\n\s+at |node:|\.ts:\d/);
  });

  it('a usage error under --json is JSON too', async () => {
    const { code, stdout } = await runCli('check', '--json');
    expect(code).toBe(2);
    expect(JSON.parse(stdout)).toMatchObject({ format: 'fettle-findings/1', findings: [{ at: 'command line' }] });
  });

  it.each(['check', 'grind', 'draw', 'view', 'import', 'match', 'drill', 'hole', 'bore', 'stack', 'demo'])(
    '%s --help ends in examples to copy',
    async (name) => {
      for (const argv of [
        [name, '--help'],
        ['help', name],
      ]) {
        const { code, stdout } = await runCli(...argv);
        expect(code).toBe(0);
        expect(stdout).toMatch(new RegExp(`Examples?:\\n  fettle ${name}`));
      }
    },
  );
});
