import { drain } from '../../../src/geometry/progress.ts';
import { leastMetal } from '../../../src/ways/cheapest/least-metal.ts';
import { metalModel, type Target } from '../../../src/ways/cheapest/metal-model.ts';
import { metalMm3 } from '../../../src/ways/cheapest/way-cost.ts';
import type { TurnRange } from '../../../src/ways/turns.ts';
import { Random } from '../../support/random.ts';
import { rimJob } from '../../support/rim-job.ts';
import type { Contest } from '../contest.ts';

const degree = Math.PI / 180;
const mostDeg = 30;
const asked: TurnRange = { fromRad: -mostDeg * degree, toRad: mostDeg * degree };
/** As fine as the search ends: nobody holds a turn finer. */
const [stepDeg, stepMm, farMm] = [0.25, 1, 60];
const jobs = 20;
const standOffsMm = Array.from({ length: farMm / stepMm + 1 }, (_, i) => i * stepMm);

/** The ways of one turn that take the least metal of some jobs, by branch and bound against every way of a grid, weighed by the same measure. */
export function* waysContests(): Generator<Contest> {
  const random = new Random(22);
  const blocks = Array.from({ length: jobs }, () => metalModel(rimJob(random), 'fixed'));
  const least = blocks.map(gridMm3);
  const sum = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0);
  const peer = `every way of ${stepDeg}° and ${stepMm} mm`;
  yield {
    edges: null,
    // between the turns of the grid less may be found; with more by a hundredth in all the run stops
    within: 0.01 * sum(least),
    questions: jobs,
    runs: {
      ours: () => sum(blocks.map((targets, i) => Math.max(least[i] ?? 0, foundMm3(targets)))),
      [peer]: () => sum(blocks.map(gridMm3)),
    },
    cases: [{ name: 'the cheapest way of one turn', ours: 'ours', peer, atLeast: 50 }],
  };
}

const foundMm3 = (targets: readonly Target[]): number =>
  drain(leastMetal(targets, asked, standOffsMm, 1, farMm)).best.mm3;

function gridMm3(targets: readonly Target[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let deg = -mostDeg; deg <= mostDeg; deg += stepDeg) {
    const turns = [{ from: deg * degree, to: deg * degree }];
    for (const mm of standOffsMm) {
      least = Math.min(least, metalMm3(targets, { turns, standOffs: [{ from: mm, to: mm }] }, 'middle'));
    }
  }
  return least;
}
