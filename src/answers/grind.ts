import { round6, roundPoint6 } from '../geometry/plane/rounding.ts';
import { vec } from '../geometry/plane/vec.ts';
import type { Units } from '../job/lengths.ts';
import type { Joint } from '../joint/joint.ts';
import type { MarkingTable } from '../markout/marking-row.ts';
import type { Alternative } from '../plan/alternatives/alternative.ts';
import type { PartCut } from '../plan/part-cut.ts';
import type { PlanResult } from '../plan/plan-result.ts';
import type { UncuredFoul } from '../plan/uncured-foul.ts';
import { againstTexts } from '../words/hindrance-text.ts';
import { homeAnswer, installAnswer, strayedAnswer } from './check.ts';
import { cutAnswer } from './cut.ts';
import type { AlternativeAnswer, GrindAnswer } from './grind-answer.ts';
import { markingAnswer } from './marking.ts';
import { roundDegrees, roundOrNull } from './rounded.ts';
import { warningOf } from './warning.ts';

/**
 * A plan as JSON, the answer of `fettle grind --json`: mm, mm², mm³, g and degrees, each figure rounded to 1e-6. With the
 * marking-out table of each part that is cut, and with what else would give: null where that was not worked out. Nothing
 * is computed and nothing thrown; all of it is of one job.
 *
 * @example A starter that fouls an oil boss.
 * ```ts
 * import { readFileSync } from 'node:fs';
 * import { analyse, drain, grindAnswer, readJob } from 'fettle';
 *
 * const fit = 'profiles/starter-boss/starter.fit.json';
 * const read = readJob(fit, (path) => ({ ok: true, value: readFileSync(path, 'utf8') }));
 * const found = read.ok ? analyse(read.value) : read;
 * if (!found.ok) throw new Error(JSON.stringify(found.findings));
 * const { joint, plan, tables } = found.value;
 * const { holds, part, table, afterCut } = grindAnswer(joint, drain(plan()), drain(tables()), null);
 * console.log(holds, part, table.length, afterCut.home.state); // true fixed 3 clear
 * ```
 */
export function grindAnswer(
  { fit }: Joint,
  plan: PlanResult,
  tables: readonly MarkingTable[],
  alternatives: readonly Alternative[] | null,
): GrindAnswer {
  const [first, moving] = plan.cuts as readonly [PartCut, PartCut?];
  const { severed, ...cut } = cutAnswer(first);
  const [table = [], movingTable = []] = tables.map((rows) => rows.map(markingAnswer));
  return {
    format: 'fettle-grind/1',
    title: fit.title,
    part: first.part,
    holds: plan.holds,
    reason: plan.reason,
    ...cut,
    movingCut: moving === undefined ? null : { ...cutAnswer(moving), table: movingTable },
    smallestFilletMm: cut.cutter?.radiusMm ?? null,
    severed,
    uncured: plan.uncured.map(uncuredAnswer),
    table,
    afterCut: {
      home: homeAnswer(plan.afterCut.home),
      install: plan.afterCut.wayIn && installAnswer(plan.afterCut.wayIn),
      ...(plan.afterCut.wander && { astray: strayedAnswer(plan.afterCut.wander) }),
    },
    alternatives: alternatives?.map((other) => alternativeAnswer(other, fit.units)) ?? null,
    warnings: plan.notices.map((notice) => warningOf(notice, fit.units)),
  };
}

const uncuredAnswer = ({ section, why, doNotCut, areaMm2, at }: UncuredFoul): GrindAnswer['uncured'][number] => ({
  section,
  why,
  doNotCut,
  areaMm2: round6(areaMm2 ?? 0),
  at: roundPoint6(at ?? vec(0, 0)),
});

function alternativeAnswer({ change, holds, areaMm2, massG, against }: Alternative, units: Units): AlternativeAnswer {
  const outcome = {
    holds,
    areaMm2: round6(areaMm2),
    massG: roundOrNull(massG),
    against: againstTexts(against, units),
  };
  const same = { homeMm: null, wayInMm: null, turnDeg: null, standOffMm: null };
  const { what } = change;
  switch (what) {
    case 'clearance':
      return { ...same, homeMm: change.homeMm, wayInMm: change.wayInMm, what, part: change.part, ...outcome };
    case 'cutter':
    case 'other-part':
      return { ...same, what, part: change.part, ...outcome };
    case 'both':
      return { ...same, what, part: 'both', ...outcome };
    case 'turn':
    case 'stand-off': {
      const turnDeg = what === 'turn' ? roundDegrees(change.turnRad) : null;
      const standOffMm = what === 'stand-off' ? change.standOffMm : null;
      return { what, homeMm: null, wayInMm: null, part: change.part, turnDeg, standOffMm, ...outcome };
    }
  }
}
