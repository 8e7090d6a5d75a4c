import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BuiltCli } from '../support/built-cli.ts';
import { Random } from '../support/random.ts';
import { folderWith } from '../support/temp-folder.ts';

const cli = new BuiltCli();
beforeAll(() => cli.build());
afterAll(() => cli.remove());

/** Half a second, and as much again for a machine that is busy with other tests. */
const mostMs = 1000;

/** Runs a command in a folder; after a while it gets a signal. How it ended, what it said, and how soon after the signal. */
async function stopped(folder: string, args: readonly string[], signal: NodeJS.Signals, afterMs: number) {
  const child = spawn(process.execPath, [cli.program, ...args], { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'] });
  const said: string[] = [];
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk) => said.push(String(chunk)));
  let sent = Number.POSITIVE_INFINITY;
  const timer = setTimeout(() => {
    sent = performance.now();
    child.kill(signal);
  }, afterMs);
  const [code, by] = await once(child, 'close');
  clearTimeout(timer);
  return { ended: code ?? by, said: said.join(''), ms: performance.now() - sent };
}

/** A copy of a job of the profiles. */
function copyOf(profile: string): string {
  const folder = folderWith();
  cpSync(join(cli.house, 'profiles', profile), folder, { recursive: true });
  return folder;
}

/** The worked job with a clearance far beyond it: a plan of many seconds, some of them in one piece. */
function longJob(): string {
  const folder = copyOf('marsh-carrier');
  const file = join(folder, 'transfer-case.fit.json');
  writeFileSync(file, JSON.stringify({ ...JSON.parse(readFileSync(file, 'utf8')), clearance: 25 }));
  return folder;
}

describe.skipIf(process.platform === 'win32')('a signal to a command', () => {
  it.each([
    ['SIGINT', 20],
    ['SIGTERM', 5],
  ] as const)(
    '%s ends a long job at once, %i times at any moment: by the signal itself, without a word, and no file is left',
    async (signal, times) => {
      const folder = longJob();
      const before = readdirSync(folder);
      const random = new Random(20);
      for (let i = 0; i < times; i += 1) {
        const afterMs = random.between(300, 7000);
        const { ms, ...end } = await stopped(folder, ['grind', 'transfer-case.fit.json'], signal, afterMs);
        expect(end).toEqual({ ended: signal, said: '' });
        expect(ms).toBeLessThan(mostMs);
        expect(readdirSync(folder)).toEqual(before);
      }
    },
  );

  it('at any moment of a drawing leaves the old file or the new one, whole, and nothing beside it', async () => {
    const folder = copyOf('starter-boss');
    const file = join(folder, 'fit.svg');
    const args = ['draw', 'starter.fit.json', '-o', 'fit.svg'];
    const started = performance.now();
    expect((await stopped(folder, args, 'SIGINT', 60_000)).ended).toBe(0);
    const tookMs = performance.now() - started;
    const drawn = readFileSync(file, 'utf8');
    const before = readdirSync(folder);
    const random = new Random(21);
    for (let i = 0; i < 20; i += 1) {
      writeFileSync(file, 'old');
      const { ended } = await stopped(folder, args, 'SIGINT', random.between(0.7, 1.05) * tookMs);
      expect([0, 130, 'SIGINT']).toContain(ended);
      expect(['old', drawn]).toContain(readFileSync(file, 'utf8'));
      expect(readdirSync(folder)).toEqual(before);
    }
  });
});
