import { mkdirSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { parseArgs } from 'node:util';
import Tinypool from 'tinypool';
import { goesChart, metalChart } from './figures/charts.ts';
import { figuresOf } from './figures/figures.ts';
import { tableOf } from './figures/table.ts';
import { pairTasks } from './pair-tasks.ts';
import type { Run } from './run-pair.ts';

/*
 * How many goes a builder needs, by eye and by the tool: a model, as evidence, with castings, tracings and hands of its own.
 * What is simulated is said where it is: castings/, traced.ts, bench.ts and strategies/.
 */

const { values } = parseArgs({
  options: {
    pairs: { type: 'string', default: '420' },
    minutes: { type: 'string', default: '60' },
    errors: { type: 'string', default: '0.2,0.5,1,1.5' },
  },
});
const tasks = pairTasks(Number(values.pairs), values.errors.split(',').map(Number));

const began = performance.now();
const isTimeUp = (): boolean => performance.now() - began > Number(values.minutes) * 60_000;
const pool = new Tinypool({
  filename: new URL('./run-pair.js', import.meta.url).href,
  name: 'runPair',
  maxThreads: cpus().length,
});
const runs: Run[] = [];
let begun = 0;
let done = 0;

/** Takes one pair after another, until there are none left or the time is up. */
async function takePairs(): Promise<void> {
  for (let task = tasks[begun++]; task !== undefined && !isTimeUp(); task = tasks[begun++]) {
    runs.push(...((await pool.run(task)) as Run[]));
    if (++done % 20 === 0) process.stderr.write(`${done} of ${tasks.length} pairs\n`);
  }
}
await Promise.all(cpus().map(takePairs));
await pool.destroy();
const seconds = Math.round((performance.now() - began) / 1000);

const figures = figuresOf(runs);
mkdirSync('out/goes', { recursive: true });
writeFileSync('out/goes/goes.json', `${JSON.stringify({ seconds, figures, runs }, null, 1)}\n`);
for (const traceErrorMm of new Set(runs.map((run) => run.traceErrorMm))) {
  const own = runs.filter((run) => run.traceErrorMm === traceErrorMm);
  writeFileSync(`out/goes/goes-${traceErrorMm}.svg`, goesChart(own));
  writeFileSync(`out/goes/metal-${traceErrorMm}.svg`, metalChart(own));
}
console.log(`${tableOf(figures)}\n\n${done} pairs in ${seconds} s, in out/goes`);
