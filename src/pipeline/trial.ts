import type { Reading } from '../files/finding.ts';
import type { TrialFile } from '../files/trial-file.ts';
import { difference, pieces } from '../geometry/polygons/polygon-engine.ts';
import { areaMm2 } from '../geometry/polygons/polygons.ts';
import type { Progress } from '../geometry/progress.ts';
import type { DepthRange } from '../job/casting.ts';
import type { PlanResult } from '../plan/plan-result.ts';
import type { Offered } from '../trial/contact.ts';
import { measureNext } from '../trial/measure-next.ts';
import { jointExplained } from '../trial/next-joint.ts';
import { offeredWith } from '../trial/offered-as.ts';
import { trialOf } from '../trial/read-trial.ts';
import { type Explanation, explain } from '../trial/solve.ts';
import type { CutSoFar, Trial } from '../trial/trial.ts';
import type { NextCut, PastLast, TrialResult } from '../trial/trial-result.ts';
import { type Analysis, analysisOf } from './analysis.ts';

/** Trial fits as they were written down, and the castings as they were offered up at each. */
interface ReadTrial {
  readonly trial: Trial;
  readonly offeredAs: (cut: CutSoFar) => Offered;
}

/** A trial file held against its job: every place, position and figure; or all that cannot be. */
export function* readTrial(found: Analysis, file: string, raw: TrialFile): Generator<Progress, Reading<ReadTrial>> {
  const { joint } = found;
  const plan = yield* found.plan();
  if (plan.reason !== null) return undecided(file);
  const tables = yield* found.tables();
  yield { step: 'trial fits', done: 0, of: 1 };
  const known = new Map<string, Offered>();
  const offeredAs = (cut: CutSoFar): Offered => {
    const key = JSON.stringify(cut);
    const offered = known.get(key) ?? offeredWith(joint, plan, tables, cut);
    known.set(key, offered);
    return offered;
  };
  const places = tables.flatMap((table) => table.map(({ place }) => place));
  const trial = trialOf(joint, file, raw, offeredAs, places);
  return trial.ok ? { ok: true, value: { trial: trial.value, offeredAs } } : trial;
}

/** Drawings that do not register, or were never near one another, are not to be put right by readings. */
const undecided = (file: string): Reading<never> => ({
  ok: false,
  findings: [{ file, at: 'fit', found: 'a job that the check leaves undecided', expected: 'one that it can judge' }],
});

/** What the readings of all trial fits say together, and the cut that is left to make; or all that is wrong with them. */
export function* solveTrial(found: Analysis, file: string, raw: TrialFile): Generator<Progress, Reading<TrialResult>> {
  const read = yield* readTrial(found, file, raw);
  if (!read.ok) return read;
  const { trial, offeredAs } = read.value;
  const plan = yield* found.plan();
  const [table = []] = yield* found.tables();
  const explanation = explain(found.joint, trial, ({ cut }) => offeredAs(cut));
  const asCut = offeredAs(trial.goes.at(-1)?.cut ?? { kind: 'none' });
  return {
    ok: true,
    value: {
      trial,
      explanation,
      next: settles(explanation) ? yield* nextCut(found, plan, asCut, explanation) : null,
      measureNext: measureNext(asCut, table, explanation),
    },
  };
}

const settles = ({ conclusion }: Explanation): boolean => conclusion === 'explained' || conclusion === 'partly';

function* nextCut(
  { joint }: Analysis,
  before: PlanResult,
  { joint: asCut }: Offered,
  explanation: Explanation,
): Generator<Progress, NextCut> {
  const next = analysisOf(jointExplained(joint, asCut, explanation));
  const plan = yield* next.plan();
  return { joint: next.joint, plan, tables: yield* next.tables(), pastLast: pastLast(before, plan) };
}

/** Thinner than any line that is marked, mm². */
const slightMm2 = 0.5;

function pastLast(before: PlanResult, next: PlanResult): PastLast[] {
  return next.cuts.flatMap(({ part, sections }) => {
    const old = before.cuts.find((cut) => cut.part === part);
    return sections.flatMap(({ id, bands }) => {
      const last = old?.sections.filter((section) => section.id === id).flatMap((section) => section.bands) ?? [];
      const beyond = bands.flatMap(({ depth, planned }) => {
        const lines = last.filter((band) => overlaps(band.depth, depth)).flatMap((band) => band.last);
        return pieces(difference(planned, lines)).map(areaMm2);
      });
      const areaPast = beyond.filter((mm2) => mm2 > slightMm2).reduce((sum, mm2) => sum + mm2, 0);
      return areaPast > 0 ? [{ part, section: id, areaMm2: areaPast }] : [];
    });
  });
}

const overlaps = (a: DepthRange | null, b: DepthRange | null): boolean =>
  a === null || b === null || (a.fromMm < b.toMm && b.fromMm < a.toMm);
