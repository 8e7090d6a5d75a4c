import { type Check, checkJoint } from '../clearance/check.ts';
import type { Part } from '../clearance/passes.ts';
import type { Progress } from '../geometry/progress.ts';
import { roundUp6 } from '../geometry/rounding.ts';
import type { Joint } from '../joint/joint.ts';
import type { Casting } from '../model/casting.ts';
import type { Warning } from '../model/check-answer.ts';
import type { GrindAnswer } from '../model/grind-answer.ts';
import { bandsOf } from './bands.ts';
import { amountsOf, sectionAnswers } from './cut-answer.ts';
import { cutBand, toleranceMm } from './cut-band.ts';
import { castingAfter, type SectionCut } from './layers.ts';
import { severedPieces } from './severed.ts';
import { sweepsWithin } from './sweeps.ts';
import { uncuredBy } from './uncured.ts';
import { wallsBehind } from './walls.ts';

/** A cut plan, and the part as it leaves it. */
export interface CutPlan {
  readonly answer: GrindAnswer;
  readonly part: Casting;
}

/**
 * The least metal to take off one part so that a job keeps its asked clearances at home and on the way in, and the
 * check of what is left. Only sections that are offered are cut, and never where a region must not be.
 */
export function* planCut(joint: Joint): Generator<Progress, CutPlan> {
  const part: Part = joint.fit.cut === 'moving' ? 'moving' : 'fixed';
  const needs = joint.fit.cut === 'both' ? [] : yield* needsOf(joint, part);
  const cuts = needs
    .filter(({ section }) => section.mayCut)
    .map(({ section, bands }) => ({ section, bands: bands.filter(({ planned }) => planned.length > 0) }))
    .filter(({ bands }) => bands.length > 0);
  const after = castingAfter(joint[part], cuts);
  const check = yield* checkJoint({ ...joint, [part]: after });
  return { answer: answerOf(joint, part, needs, cuts, check), part: after };
}

/** What each section would have to lose, offered or not. */
function* needsOf(joint: Joint, part: Part): Generator<Progress, SectionCut[]> {
  const { sections, doNotCut } = joint[part];
  const sweeps = sweepsWithin(toleranceMm);
  const needs: SectionCut[] = [];
  for (const [done, section] of sections.entries()) {
    yield { step: section.id, done, of: sections.length };
    const kept = section.mayCut ? doNotCut : [];
    needs.push({
      section,
      bands: bandsOf(joint, part, section).flatMap((band) => cutBand(joint, section, band, kept, sweeps)),
    });
  }
  return needs;
}

function answerOf(
  joint: Joint,
  part: Part,
  needs: readonly SectionCut[],
  cuts: readonly SectionCut[],
  { answer: after }: Check,
): GrindAnswer {
  const { fit } = joint;
  const bands = cuts.flatMap((cut) => cut.bands);
  const walls = wallsBehind(joint[part].hollows, bands, fit);
  const severed = cuts.flatMap(severedPieces);
  const uncured = uncuredBy(needs, after.rotating, fit.clearance.rotatingMm);
  const stands = severed.length === 0 && uncured.length === 0 && bands.every(({ takeOff }) => takeOff !== null);
  return {
    format: 'fettle-grind/1',
    title: fit.title,
    part,
    holds: after.meetsClearance && stands && walls.every(({ holds }) => holds !== false) && fit.cut !== 'both',
    boundMm: roundUp6(Math.max(0, ...bands.map(({ boundMm }) => boundMm))),
    ...amountsOf(bands, joint[part].material),
    sections: sectionAnswers(cuts),
    walls,
    smallestFilletMm: null,
    severed,
    uncured,
    table: [],
    afterCut: { home: after.home, install: after.install },
    warnings: [...planWarnings(joint), ...after.warnings],
  };
}

function planWarnings({ fit }: Joint): Warning[] {
  if (fit.cut !== 'both') return [];
  const text = 'A cut shared between both parts is not planned yet: set "cut" to "fixed" or to "moving".';
  return [{ code: 'cut-both-not-planned', text }];
}
