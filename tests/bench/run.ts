import { cpus, release, totalmem, type } from 'node:os';
import { parseArgs } from 'node:util';
import { coldCases } from './cases/cold.ts';
import { commandCases } from './cases/command.ts';
import { distanceContests } from './cases/distance.ts';
import { readingContests } from './cases/reading.ts';
import { reliefContests } from './cases/relief.ts';
import { sweepContests } from './cases/sweep.ts';
import { turnContests } from './cases/turn.ts';
import { waysContests } from './cases/ways.ts';
import { type BenchCase, type Contest, hold } from './contest.ts';
import { frames } from './frames.ts';
import { growth } from './growth.ts';
import { memory } from './memory.ts';
import { Clipper } from './peers/clipper.ts';
import { Geos } from './peers/geos.ts';
import { type Report, reportText } from './report.ts';

/*
 * How the figures are taken.
 *
 * Everything is bundled and run by plain Node, as it ships. Each case puts one question to our code and to its peers in
 * one process; their answers must agree, or the run stops. All are called until compiled, then take turns, and the
 * median of each is given, so a busy machine slows both sides of a ratio alike: read ratios, not milliseconds.
 *
 * Peers get the best of it: outlines already moved and in their own memory where a position is asked about, an index
 * or a prepared form where they have one, unions two by two where that is quicker. They know straight edges only, so
 * arcs reach them as chords within 0.001 mm; nor do their sampled answers prove anything between the samples.
 *
 * Whole commands and first questions are timed in fresh processes, where nothing is compiled yet.
 *
 * Pairs looked at, of nodes and of edges, are counted rather than timed, and are the same on every machine.
 */

const { json, only } = parseArgs({ options: { json: { type: 'boolean' }, only: { type: 'string' } } }).values;
const asked = only?.split(',');
const isAsked = (suite: string): boolean => asked?.includes(suite) ?? true;
const report = await benchmark();
console.log(json ? JSON.stringify(report) : reportText(report));

async function benchmark(): Promise<Report> {
  const [geos, clipper] = [await Geos.start(), await Clipper.start()];
  const suites: Readonly<Record<string, () => BenchCase[] | Promise<BenchCase[]>>> = {
    command: commandCases,
    cold: coldCases,
    reading: () => held(readingContests()),
    distance: () => held(distanceContests(geos)),
    turn: () => held(turnContests(geos)),
    sweep: () => held(sweepContests(geos, clipper)),
    relief: () => held(reliefContests(clipper)),
    ways: () => held(waysContests()),
    page: frames,
  };
  const cases: BenchCase[] = [];
  for (const [suite, run] of Object.entries(suites).filter(([name]) => isAsked(name))) {
    const began = performance.now();
    cases.push(...(await run()));
    process.stderr.write(`${suite}: ${Math.round((performance.now() - began) / 1000)} s\n`);
  }
  return {
    machine: machine(),
    cases,
    growth: isAsked('growth') ? growth() : [],
    memory: isAsked('memory') ? memory() : [],
  };
}

/** One contest after another, each set up as its turn comes. */
function held(contests: Iterable<Contest>): BenchCase[] {
  const cases: BenchCase[] = [];
  for (const contest of contests) cases.push(...hold(contest));
  return cases;
}

function machine(): Report['machine'] {
  const all = cpus();
  return {
    cpu: all[0]?.model ?? 'unknown',
    cores: all.length,
    memoryGb: Math.round(totalmem() / 2 ** 30),
    system: `${type()} ${release()}`,
    node: process.versions.node,
  };
}
