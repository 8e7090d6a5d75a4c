import { standOffTicks, turnTicks } from '../../src/drawing/fit/map-ticks.ts';
import type { JobFile } from '../../src/files/job-file.ts';
import type { Progress } from '../../src/geometry/progress.ts';
import type { Units } from '../../src/job/lengths.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { chosenWay } from '../../src/ways/chosen-way.ts';
import { findWays, type WaysResult } from '../../src/ways/find-ways.ts';
import { blocksOf, engagedMm, mapTopMm } from '../../src/ways/map-blocks.ts';
import { type Met, metAt } from '../../src/ways/meetings.ts';
import { offerUpOf } from '../../src/ways/offer-up.ts';
import type { TurnRange } from '../../src/ways/turns.ts';
import type { WayPoint } from '../../src/ways/way-along.ts';
import { groundTexts, waysLine, wayText } from '../../src/words/ways-text.ts';
import type { TurnMap, WaysTold } from './questions.ts';
import { analysed } from './work.ts';

const known = new WeakMap<Joint, { readonly asked: TurnRange; readonly ways: WaysResult }>();

/** Every way in as it was told last of a job as it is; null where it was not asked for. */
export const waysLastTold = (joint: Joint): WaysResult | null => known.get(joint)?.ways ?? null;

/** Every way in within some turns, told in a unit; null where the job does not come to that. */
export function* waysTold(job: JobFile, asked: TurnRange, units: Units | null): Generator<Progress, WaysTold | null> {
  const found = analysed(job);
  if (!found.ok) return null;
  const { joint } = found.value;
  const before = known.get(joint);
  const isSame = before?.asked.fromRad === asked.fromRad && before.asked.toRad === asked.toRad;
  const ways = isSame ? before.ways : yield* findWays(joint, asked);
  known.set(joint, { asked, ways });
  const shown = units ?? joint.fit.units;
  const read = { ...joint, fit: { ...joint.fit, units: shown } };
  const way = chosenWay(ways);
  // the way of the fit may lie aside of the axis, which points do not hold
  const isOfFit = way === ways.cheapest?.ways.find(({ of }) => of === 'the-fit')?.way;
  return {
    line: waysLine(read, ways),
    grounds: groundTexts(joint, ways),
    exists: ways.exists,
    map: ways.strips.length === 0 ? null : mapOf(ways, shown),
    way:
      way === null || isOfFit
        ? null
        : { points: way, text: wayText(way, shown), offerUp: offerUpOf(way, joint.fit.units) },
  };
}

function mapOf({ strips, asked }: WaysResult, units: Units): TurnMap {
  const topMm = mapTopMm(strips);
  return {
    asked,
    topMm,
    dowelsMm: engagedMm(strips),
    blocks: {
      foul: blocksOf(strips, ({ foul }) => foul),
      near: blocksOf(strips, ({ near }) => near),
      unknown: blocksOf(strips, ({ unknown }) => unknown),
    },
    turnTicks: turnTicks(asked),
    standOffTicks: standOffTicks(topMm, units),
  };
}

/** What is in the way at one place of the map; null where the job does not come to that. */
export function metIn(job: JobFile, at: WayPoint): Met | null {
  const found = analysed(job);
  return found.ok ? metAt(found.value.joint, at) : null;
}
