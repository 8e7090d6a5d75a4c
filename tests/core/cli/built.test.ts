import { type ChildProcess, execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, cpSync, existsSync, readdirSync, readFileSync, symlinkSync } from 'node:fs';
import { type AddressInfo, createServer } from 'node:net';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it, onTestFinished, vi } from 'vitest';
import { BuiltCli } from '../../support/built-cli.ts';
import { jobFiles } from '../../support/small-job.ts';
import { folderWith } from '../../support/temp-folder.ts';
import { smallPage } from '../../support/view-server.ts';

const cli = new BuiltCli();
const { house, folder: built, program } = cli;
beforeAll(() => cli.build());
afterAll(() => cli.remove());

/** The exit code of a shell command, with what it wrote; `$FETTLE` is the built program. */
function shell(command: string, cwd = house): Promise<{ code: number | null; stdout: string; stderr: string }> {
  return new Promise((done) => {
    const env = { ...process.env, FETTLE: `${process.execPath} ${program}`, NO_COLOR: '', FORCE_COLOR: '' };
    const child = spawn('bash', ['-c', `set -o pipefail; ${command}`], { cwd, env });
    const [stdout, stderr] = [child.stdout, child.stderr].map((stream) => {
      const chunks: string[] = [];
      stream.on('data', (chunk) => chunks.push(String(chunk)));
      return chunks;
    }) as [string[], string[]];
    child.on('close', (code) => done({ code, stdout: stdout.join(''), stderr: stderr.join('') }));
  });
}

/** A job whose check takes many seconds, in short steps: two wavy rings of short edges, turned to and fro. */
const longJob = (): Record<string, unknown> => {
  const ring = (radius: number, points: number) =>
    Array.from({ length: points }, (_, i) => {
      const angle = (2 * Math.PI * i) / points;
      const r = radius + 0.4 * Math.sin(97 * angle) + 0.1 * Math.sin(1013 * angle);
      return [r * Math.cos(angle), r * Math.sin(angle)];
    });
  return jobFiles({
    fit: {
      offerUp: [...Array.from({ length: 990 }, (_, i) => ({ standOff: 14, turn: (60 + i / 100) * (i % 2) })), {}],
    },
    block: { sections: [{ id: 'wall', loops: [ring(150, 20000)] }] },
    housing: { sections: [{ id: 'bell', loops: [ring(151, 20000), { circle: [0, 0], radius: 200 }] }] },
  });
};

it('the built command can be run by its name after any build of it', async () => {
  const { stdout } = await promisify(execFile)(program, ['--version'], { cwd: house });
  expect(stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
});

describe('the built program', () => {
  it('starts, without colour where it is piped', async () => {
    const { code, stdout } = await shell(`$FETTLE check ${folderWith(jobFiles())}/job.fit.json`);
    expect(code).toBe(0);
    expect(stdout).toMatch(/^GOES: /);
    expect(stdout).not.toMatch(/[^\P{Cc}\n]/u);
  });

  it('carries its shebang', () => {
    expect(readFileSync(program, 'utf8')).toMatch(/^#!\/usr\/bin\/env node\n/);
  });

  it('runs the worked example anywhere, and says which file to open', async () => {
    const folder = folderWith();
    const { code, stdout, stderr } = await shell('$FETTLE demo', folder);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/The drawing: open fettle-demo\.svg in a browser\.\n$/);
    expect(readFileSync(join(folder, 'fettle-demo.svg'), 'utf8')).toMatch(/^<\?xml(?:.|\n)*<\/svg>\s*$/);
  });

  it('a reader that stops early is no fault, and the exit code still tells the answer', async () => {
    const fit = join(folderWith(jobFiles()), 'job.fit.json');
    const { code, stderr } = await shell(
      `{ $FETTLE check ${fit} --json; echo "it said $?" >&2; } | head -c 1 >/dev/null`,
    );
    expect({ code, stderr }).toEqual({ code: 0, stderr: 'it said 0\n' });
  });

  it.skipIf(!existsSync('/dev/full'))('a disk with no room for the answer is said, and is no answer', async () => {
    const { code, stderr } = await shell(`$FETTLE check ${folderWith(jobFiles())}/job.fit.json > /dev/full`);
    expect(code).toBe(2);
    expect(stderr).toContain('the answer could not be written (ENOSPC)');
    expect(stderr).not.toMatch(/\n\s+at /);
  });

  it('interrupted, it stops with 130, says nothing and leaves nothing behind', async () => {
    const folder = folderWith(longJob());
    const before = readdirSync(folder);
    const { code, stdout } = await shell('$FETTLE check job.fit.json & sleep 0.6; kill -INT $!; wait $!', folder);
    expect({ code, stdout }).toEqual({ code: 130, stdout: '' });
    expect(readdirSync(folder)).toEqual(before);
  });
});

describe('a signal while a file is replaced', () => {
  /** Has a call of the disk send the program a signal before it is done. */
  const signalledIn = (call: 'writeFileSync' | 'fsyncSync' | 'renameSync', signal: string): string => `
    import fs from 'node:fs';
    import { syncBuiltinESMExports } from 'node:module';
    const real = fs.${call};
    fs.${call} = (...args) => {
      process.kill(process.pid, '${signal}');
      const until = Date.now() + 50;
      while (Date.now() < until);
      return real(...args);
    };
    syncBuiltinESMExports();`;

  it.skipIf(process.platform === 'win32').each([
    ['writeFileSync', 'SIGINT', 130],
    ['fsyncSync', 'SIGTERM', 143],
    ['renameSync', 'SIGHUP', 129],
  ] as const)(
    'during %s, %s ends the program behind it: exit code %i, the file whole, nothing beside it',
    async (call, signal, expected) => {
      const folder = folderWith({ ...jobFiles(), 'fit.svg': 'old', 'signal.mjs': signalledIn(call, signal) });
      const before = readdirSync(folder);
      const started = `${process.execPath} --import ./signal.mjs ${program}`;
      const { code, stderr } = await shell(`${started} draw job.fit.json -o fit.svg`, folder);
      expect({ code, stderr }).toEqual({ code: expected, stderr: '' });
      expect(readFileSync(join(folder, 'fit.svg'), 'utf8')).toMatch(/<\/svg>\s*$/);
      expect(readdirSync(folder)).toEqual(before);
    },
  );
});

/** The built program as a package of its own, with a page to show, a small job, and a browser that keeps the address. */
function packed(files: Record<string, unknown> = { 'dist/viewer/index.html': smallPage }): string {
  const folder = folderWith({
    'package.json': { type: 'module' },
    'bin/xdg-open': '#!/bin/sh\necho "$1" > opened\n',
    ...jobFiles(),
    ...files,
  });
  cpSync(built, join(folder, 'dist/cli'), { recursive: true });
  symlinkSync(join(house, 'node_modules'), join(folder, 'node_modules'));
  chmodSync(join(folder, 'bin/xdg-open'), 0o755);
  return folder;
}

/** The viewer started with some arguments, with what it has written so far. */
function view(folder: string, args: readonly string[], path = '') {
  const argv = [join(folder, 'dist/cli/fettle.js'), 'view', ...args];
  const child: ChildProcess = spawn(process.execPath, argv, { cwd: folder, env: { ...process.env, PATH: path } });
  onTestFinished(() => void child.kill('SIGKILL'));
  const written = { stdout: '', stderr: '' };
  for (const name of ['stdout', 'stderr'] as const) {
    child[name]?.on('data', (chunk) => {
      written[name] += String(chunk);
    });
  }
  const ended = once(child, 'close').then(([code]) => ({ code, ...written }));
  const address = () =>
    vi.waitFor(
      () => /^The viewer is at (http:\/\/127\.0\.0\.1:\d+\/[\w-]{43}\/)\n/.exec(written.stdout)?.[1] ?? fail(),
      20_000,
    );
  return { child, ended, address };
}

const fail = (): never => {
  throw new Error('not yet');
};

describe('the built viewer', () => {
  it('prints its address, serves there, and Ctrl-C is its proper end', async () => {
    const { child, ended, address } = view(packed(), ['job.fit.json', '--no-open']);
    const at = await address();
    expect(await (await fetch(at)).text()).toBe(smallPage);
    expect(await (await fetch(`${at}job`)).json()).toMatchObject({ open: 'job.fit.json' });
    child.kill('SIGINT');
    expect(await ended).toEqual({ code: 0, stdout: `The viewer is at ${at}\nCtrl-C ends it.\n`, stderr: '' });
  });

  it.skipIf(process.platform !== 'linux')('opens the default browser at its address', async () => {
    const folder = packed();
    const { address } = view(folder, [], join(folder, 'bin'));
    const at = await address();
    await vi.waitFor(() => expect(readFileSync(join(folder, 'opened'), 'utf8')).toBe(`${at}\n`), 20_000);
  });

  it('goes on where there is no browser', async () => {
    const { child, ended, address } = view(packed(), []);
    expect((await fetch(await address())).status).toBe(200);
    child.kill('SIGINT');
    expect(await ended).toMatchObject({ code: 0, stderr: '' });
  });

  it('says that its port is taken', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await once(other, 'listening');
    onTestFinished(() => void other.close());
    const { port } = other.address() as AddressInfo;
    expect(await view(packed(), ['--no-open', '--port', String(port)]).ended).toEqual({
      code: 2,
      stdout: '',
      stderr: expect.stringMatching(
        new RegExp(
          `^--port: found ${port}, which another program listens on; expected a port that is free, .*\\n1 thing`,
        ),
      ),
    });
  });

  it('says how its page is made where it is not there', async () => {
    const { code, stderr } = await view(packed({}), ['--no-open']).ended;
    expect(code).toBe(2);
    expect(stderr).toMatch(/index\.html: found no page; expected npm run build:viewer/);
  });
});
