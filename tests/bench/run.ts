import { cpus, release, totalmem, type } from 'node:os';
import { commandContests } from './cases/command.ts';
import { distanceContests } from './cases/distance.ts';
import { reliefContests } from './cases/relief.ts';
import { sweepContests } from './cases/sweep.ts';
import { turnContests } from './cases/turn.ts';
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
 * Pairs looked at, of nodes and of edges, are counted rather than timed, and are the same on every machine.
 */

const json = process.argv.includes('--json');
const report = await benchmark();
console.log(json ? JSON.stringify(report) : reportText(report));

async function benchmark(): Promise<Report> {
  const [geos, clipper] = [await Geos.start(), await Clipper.start()];
  return {
    machine: machine(),
    cases: [
      ...held('command', commandContests()),
      ...held('distance', distanceContests(geos)),
      ...held('turn', turnContests(geos)),
      ...held('sweep', sweepContests(geos, clipper)),
      ...held('relief', reliefContests(clipper)),
      ...(await frames()),
    ],
    growth: growth(),
    memory: memory(),
  };
}

/** One contest after another, each set up as its turn comes; says on standard error how far it is. */
function held(suite: string, contests: Iterable<Contest>): BenchCase[] {
  const cases: BenchCase[] = [];
  for (const contest of contests) {
    if (process.stderr.isTTY) process.stderr.write(`\r${suite} ${contest.edges ?? ''}`.padEnd(30));
    cases.push(...hold(contest));
  }
  if (process.stderr.isTTY) process.stderr.write(`\r${' '.repeat(30)}\r`);
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
