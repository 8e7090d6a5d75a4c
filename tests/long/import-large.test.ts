import { join } from 'node:path';
import { expect, it } from 'vitest';
import { circle, dxf, line, type Tags } from '../core/intake/drawn.ts';
import { Random } from '../support/random.ts';
import { runCli } from '../support/run-cli.ts';
import { folderWith } from '../support/temp-folder.ts';

const count = 100_000;
const random = new Random(7);

/** One outline of all the lines, in any order and sense. */
function oneOutline(i: number): Tags {
  const at = (n: number): [number, number] => {
    const [angle, radius] = [(2 * Math.PI * n) / count, 5000 + (n % 2)];
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  };
  const k = (i * 61_417) % count;
  return random.chance(0.3) ? line(...at(k + 1), ...at(k)) : line(...at(k), ...at(k + 1));
}

function strayLine(): Tags {
  const [x, y] = [random.between(0, 2000), random.between(0, 2000)];
  return line(x, y, x + random.between(-9, 9), y + random.between(-9, 9));
}

const spoke = (i: number): Tags => line(0, 0, 100 * Math.cos(i * 1e-4) + i * 1e-3, 100 * Math.sin(i * 1e-4));

/** Of the processor's own time, far above what it takes; a search of all ends for every end would take hours. */
const boundMs = 180_000;

it.each([
  ['one outline', oneOutline, 0],
  ['stray lines', strayLine, 1],
  ['spokes of one hub', spoke, 1],
])('a hundred thousand lines are read in bounded time: %s', async (_, make, code) => {
  const entities = [circle(9000, 0, 5), ...Array.from({ length: count }, (__, i) => make(i))];
  const folder = folderWith({ 'large.dxf': dxf({ entities }) });
  const started = process.cpuUsage();
  const run = await runCli(
    'import',
    join(folder, 'large.dxf'),
    '-o',
    join(folder, 'large.part.json'),
    '--viewed-from',
    'face',
  );
  expect({ code: run.code, stderr: run.stderr }).toEqual({ code, stderr: '' });
  const { user, system } = process.cpuUsage(started);
  expect((user + system) / 1000).toBeLessThan(boundMs);
});
