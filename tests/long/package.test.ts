import { execFile } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tsBlocks } from '../support/examples.ts';
import { expectReadmePrinted, readmeProgram } from '../support/library-program.ts';

const house = resolve(import.meta.dirname, '../..');
const run = promisify(execFile);

interface Lockfile {
  readonly packages: Readonly<Record<string, { readonly dev?: boolean; readonly optional?: boolean }>>;
}

/** What a package installed elsewhere brings with it, as this checkout has it; nothing is fetched. */
function libraryFolders(): readonly string[] {
  const { packages } = JSON.parse(readFileSync(join(house, 'package-lock.json'), 'utf8')) as Lockfile;
  return Object.entries(packages)
    .filter(([folder, { dev }]) => folder !== '' && dev !== true && existsSync(join(house, folder)))
    .map(([folder]) => folder);
}

const notOurs = new Set(['node_modules', 'dist', 'out', 'coverage', '.git']);

describe('the package, packed and installed in a folder of its own', () => {
  let folder: string;
  let project: string;
  /** Runs a program of the project's own. */
  const bin = (name: string, ...args: readonly string[]) =>
    run(join(project, 'node_modules/.bin', name), args, { cwd: project });
  const node = async (file: string): Promise<readonly string[]> =>
    (await run(process.execPath, [file], { cwd: project })).stdout.trimEnd().split('\n');

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'fettle-package-'));
    // built and packed in a copy, so that what is built here is not taken away from under another test
    const copy = join(folder, 'copy');
    cpSync(house, copy, { recursive: true, filter: (path) => path === house || !notOurs.has(basename(path)) });
    symlinkSync(join(house, 'node_modules'), join(copy, 'node_modules'));
    const { stdout } = await run('npm', ['pack', '--json', '--pack-destination', folder], { cwd: copy });
    const tarball = join(folder, JSON.parse(stdout.slice(stdout.indexOf('[\n')))[0].filename);

    project = join(folder, 'project');
    for (const library of libraryFolders()) {
      cpSync(join(house, library), join(project, library), { recursive: true, dereference: true });
    }
    writeFileSync(join(project, 'package.json'), JSON.stringify({ private: true, type: 'module' }));
    await run('npm', ['install', '--offline', '--no-audit', '--no-fund', tarball], { cwd: project });
  }, 300_000);

  afterAll(() => rmSync(folder, { recursive: true, force: true }), 60_000);

  it('checks the demo that comes with it', async () => {
    const fit = 'node_modules/fettle/profiles/sae-3-adapter/adapter.fit.json';
    expect((await bin('fettle', 'check', fit)).stdout).toMatch(/^GOES/);
  });

  it('has the page in it', () => {
    expect(readFileSync(join(project, 'node_modules/fettle/dist/viewer/index.html'), 'utf8')).toMatch(
      /^<!doctype html>/i,
    );
  });

  it('reads a job, and offers the schemas', async () => {
    const program = `
      import { readFileSync } from 'node:fs';
      import { createRequire } from 'node:module';
      import { placeJob, readAnyJob } from 'fettle';
      const load = (file) => ({ ok: true, value: readFileSync(file, 'utf8') });
      const read = readAnyJob('node_modules/fettle/profiles/marsh-carrier/transfer-case.fit.json', load);
      const placed = placeJob(read.value.job);
      console.log(placed.value.fit.title);
      const require = createRequire(import.meta.url);
      for (const kind of ['part', 'fit', 'job']) console.log(require(\`fettle/schemas/\${kind}.schema.json\`).$id);`;
    writeFileSync(join(project, 'job.js'), program);
    expect(await node('job.js')).toEqual([
      'Transfer case to iron four',
      'urn:fettle:part:1',
      'urn:fettle:fit:1',
      'urn:fettle:job:1',
    ]);
  });

  it('draws a demo and makes its sheets, and loads what writes PDFs no sooner', async () => {
    const program = `
      import { readFileSync } from 'node:fs';
      import { createRequire } from 'node:module';
      import { analyse, drain, drawingSvg, markoutFiles, readJob } from 'fettle';
      const load = (file) => ({ ok: true, value: readFileSync(file, 'utf8') });
      const read = readJob('node_modules/fettle/profiles/starter-boss/starter.fit.json', load);
      const { joint, check, plan, room, tables } = analyse(read.value).value;
      const drawn = { joint, check: drain(check()), plan: drain(plan()), alternatives: [], room: drain(room()) };
      console.log(drawingSvg(drawn).includes('<title id="drawing-title">'));
      const { cache } = createRequire(import.meta.url);
      const canPrint = () => Object.keys(cache).some((file) => /node_modules.pdf-lib/.test(file));
      console.log(canPrint());
      const { files } = await markoutFiles(joint, drain(plan()), drain(tables()));
      console.log(canPrint(), files.map(({ as }) => as).sort().join(' '));`;
    writeFileSync(join(project, 'drawing.js'), program);
    expect(await node('drawing.js')).toEqual([
      'true',
      'false',
      'true csv csv dxf dxf dxf pdf pdf pdf pdf pdf svg svg svg',
    ]);
  });

  it('runs the program in the README, which holds to its types, as the examples do', async () => {
    const examples = ['motion', 'passage', 'relief', 'solid', 'swept-region'].flatMap((name) =>
      tsBlocks(`src/geometry/library/${name}.ts`),
    );
    const files = [readmeProgram(), ...examples].map((program, i) => {
      writeFileSync(join(project, `program-${i}.ts`), program);
      return `program-${i}.ts`;
    });
    const compilerOptions = { strict: true, target: 'es2023', module: 'nodenext', lib: ['es2023', 'dom'], types: [] };
    writeFileSync(join(project, 'tsconfig.json'), JSON.stringify({ compilerOptions, files }));
    const tsc = join(house, 'node_modules/typescript/bin/tsc');
    const checked = await run(process.execPath, [tsc, '-p', project]).catch((error) => error);
    expect(checked.stdout).toBe('');
    expectReadmePrinted(await node('program-0.js'));
  });

  it('says what is wrong in a program that does not hold to its types', async () => {
    writeFileSync(join(project, 'wrong.ts'), "import { slide } from 'fettle/motion';\nslide(3);\n");
    const tsc = join(house, 'node_modules/typescript/bin/tsc');
    const options = [
      '--noEmit',
      '--strict',
      '--target',
      'es2023',
      '--module',
      'nodenext',
      '--ignoreConfig',
      'wrong.ts',
    ];
    const { stdout } = await run(process.execPath, [tsc, ...options], { cwd: project }).catch((error) => error);
    expect(stdout).toMatch(/wrong\.ts\(2,7\): error TS2345/);
  });
});
