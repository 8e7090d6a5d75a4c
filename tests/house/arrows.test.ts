import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { cruise, type ICruiseResult, type IFlattenedRuleSet } from 'dependency-cruiser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const house = resolve(import.meta.dirname, '../..');
const config = createRequire(import.meta.url)(join(house, '.dependency-cruiser.cjs')) as {
  readonly forbidden: IFlattenedRuleSet['forbidden'];
  readonly options: Record<string, unknown>;
};

const plane = ['src/geometry/plane'];
const polygons = ['src/geometry/polygons', ...plane];
const motion = ['src/geometry/motion', ...polygons];
const cutting = ['src/geometry/cutting', 'src/geometry', ...motion];
const library = ['src/geometry/library', ...motion];
const files = ['src/files', 'src/trade', ...cutting];
const job = ['src/job', ...files];
const joint = ['src/joint', ...job];
const clearance = ['src/clearance', ...joint];
const plan = ['src/plan', ...clearance];
const room = ['src/room', ...clearance];
const compare = ['src/compare', ...clearance];
const markout = ['src/markout', ...plan];
const drill = ['src/drill', ...markout];
const pipeline = ['src/pipeline', 'src/drill', ...markout];
const words = [
  'src/words',
  'src/holes',
  'src/holes/patterns',
  'src/bore',
  'src/stack',
  'src/room',
  'src/compare',
  'src/drill',
  ...markout,
];
const drawing = ['src/drawing', ...words];

/** What each room may import, itself left out of nothing. */
const mayImport: Record<string, readonly string[]> = {
  'src/geometry': ['src/geometry'],
  'src/geometry/plane': plane,
  'src/geometry/polygons': polygons,
  'src/geometry/motion': motion,
  'src/geometry/cutting': cutting,
  'src/geometry/library': library,
  'src/trade': ['src/trade'],
  'src/holes': ['src/holes', 'src/trade'],
  'src/holes/patterns': ['src/holes/patterns', 'src/trade', ...plane],
  'src/bore': ['src/bore', 'src/trade', ...plane],
  'src/stack': ['src/stack', ...job],
  'src/typed': ['src/typed', 'src/trade', 'src/files', 'src/holes', 'src/bore'],
  'src/files': files,
  'src/job': job,
  'src/intake': ['src/intake', ...job],
  'src/joint': joint,
  'src/clearance': clearance,
  'src/plan': plan,
  'src/room': room,
  'src/compare': compare,
  'src/markout': markout,
  'src/drill': drill,
  'src/pipeline': pipeline,
  'src/words': words,
  'src/answers': ['src/answers', ...words],
  'src/drawing': drawing,
  cli: ['cli', 'src/intake', 'src/answers', 'src/pipeline', 'src/typed', ...drawing],
  viewer: ['viewer', 'src/trade', 'src/files', 'src/job', 'src/answers', 'src/words'],
  'viewer/heavy': ['viewer', 'viewer/heavy', 'src/intake', 'src/answers', 'src/pipeline', 'src/typed', ...drawing],
};
const rooms = Object.keys(mayImport);

/** A small house of its own, in which every room imports every room once, and some do worse. */
let planted: string;
let broken: ReadonlySet<string>;

const plant = (file: string, text: string): void => {
  const path = join(planted, file);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
};

const nameOf = (room: string): string => room.replaceAll('/', '-');
const upFrom = (file: string): string => '../'.repeat(file.split('/').length - 1);
const importing = (file: string, what: string, kind = ''): void =>
  plant(
    file,
    `import ${kind}{ thing } from '${what}';\nexport const use${kind === '' ? ' = thing' : ': thing = 1'};\n`,
  );

beforeAll(async () => {
  planted = mkdtempSync(join(tmpdir(), 'fettle-house-'));
  symlinkSync(join(house, 'node_modules'), join(planted, 'node_modules'));
  for (const file of ['package.json', 'tsconfig.base.json']) cpSync(join(house, file), join(planted, file));
  for (const room of [...rooms, 'tests'])
    plant(`${room}/thing.ts`, 'export const thing = 1;\nexport type thing = 1;\n');
  for (const from of rooms) {
    for (const to of [...rooms, 'tests']) {
      const file = `${from}/to-${nameOf(to)}.ts`;
      importing(file, `${upFrom(file)}${to}/thing.ts`, from === 'src/words' ? 'type ' : '');
    }
    importing(`${from}/node.ts`, 'node:fs');
    importing(`${from}/nowhere.ts`, './not-there.ts');
  }
  importing('src/words/value.ts', '../joint/thing.ts');
  importing('viewer/types.ts', '../src/clearance/thing.ts', 'type ');
  importing('viewer/inks.ts', '../src/drawing/scene/styles.ts');
  plant('src/drawing/scene/styles.ts', 'export const thing = 1;\n');
  importing('viewer/core.worker.ts', '../src/clearance/thing.ts');
  importing('viewer/reader.ts', '../src/files/job-file.ts');
  importing('viewer/heavy/reader.ts', '../../src/files/job-file.ts');
  plant('src/files/job-file.ts', 'export const thing = 1;\n');
  importing('src/geometry/polygons/polygon-engine.ts', 'clipper2-ts');
  importing('src/geometry/polygons/second-engine.ts', 'clipper2-ts');
  importing('src/plan/engine.ts', 'clipper2-ts');
  importing('src/drawing/paint.ts', '@svgdotjs/svg.js');
  importing('src/words/terminal.ts', 'picocolors');
  importing('src/job/peer.ts', 'jsts');
  importing('src/motion-library.ts', './geometry/library/thing.ts');
  importing('src/library.ts', './joint/thing.ts');
  importing('cli/library.ts', '../src/library.ts');
  plant('src/trade/round.ts', "export { other } from './about.ts';\n");
  plant('src/trade/about.ts', "import './round.ts';\nexport const other = 1;\n");
  broken = await violations();
});

afterAll(() => rmSync(planted, { recursive: true, force: true }));

async function violations(): Promise<ReadonlySet<string>> {
  const options = { ...config.options, baseDir: planted, validate: true, ruleSet: { forbidden: config.forbidden } };
  const { output } = await cruise(['src', 'cli', 'viewer', 'tests'], options as Parameters<typeof cruise>[1]);
  const { summary } = output as ICruiseResult;
  return new Set(summary.violations.map(({ from }) => from));
}

describe('the arrows of the house', () => {
  for (const from of rooms) {
    it(`${from} may import what its chain leads to, and nothing else`, () => {
      const caught = [...rooms, 'tests'].filter((to) => broken.has(`${from}/to-${nameOf(to)}.ts`));
      const forbidden = [...rooms, 'tests'].filter((to) => !mayImport[from]?.includes(to));
      expect(caught).toEqual(forbidden);
    });
  }

  it('only the command line may use node:', () => {
    expect(rooms.filter((room) => !broken.has(`${room}/node.ts`))).toEqual(['cli']);
  });

  it('an import that leads nowhere is caught everywhere', () => {
    expect(rooms.filter((room) => !broken.has(`${room}/nowhere.ts`))).toEqual([]);
  });

  it.each([
    ['src/words/value.ts', 'words takes only types from the rooms that answer'],
    ['src/geometry/polygons/second-engine.ts', 'one file alone knows the polygon engine'],
    ['src/plan/engine.ts', 'no room but geometry knows the polygon engine'],
    ['src/drawing/paint.ts', 'only the viewer paints'],
    ['src/words/terminal.ts', 'only the command line knows the terminal'],
    ['src/job/peer.ts', 'no development library ships'],
    ['cli/library.ts', 'the library is for others'],
    ['viewer/reader.ts', "the page's own thread reads no files"],
  ])('%s is caught: %s', (file) => {
    expect(broken.has(file)).toBe(true);
  });

  it.each(['viewer/types.ts', 'viewer/inks.ts', 'viewer/core.worker.ts', 'viewer/heavy/reader.ts'])(
    '%s is let pass: the page may know types and inks of what computes, its worker all of it',
    (file) => expect(broken.has(file)).toBe(false),
  );

  it.each(['src/library.ts', 'src/motion-library.ts'])('%s may put together what the package offers', (file) => {
    expect(broken.has(file)).toBe(false);
  });

  it('a circle is caught', () => {
    expect(broken.has('src/trade/round.ts') || broken.has('src/trade/about.ts')).toBe(true);
  });

  it('the polygon engine has its one adapter', () => {
    expect(broken.has('src/geometry/polygons/polygon-engine.ts')).toBe(false);
  });
});
