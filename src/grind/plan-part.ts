import { type Check, checkJoint } from '../clearance/check.ts';
import type { Part } from '../clearance/passes.ts';
import { judgedByFigures } from '../clearance/reasons.ts';
import type { Progress } from '../geometry/progress.ts';
import { roundUp6 } from '../geometry/rounding.ts';
import type { Joint } from '../joint/joint.ts';
import type { Casting } from '../model/casting.ts';
import type { PartCut, Uncured } from '../model/grind-answer.ts';
import { bandsOf } from './bands.ts';
import { amountsOf, sectionAnswers } from './cut-answer.ts';
import { cutBands, toleranceMm } from './cut-band.ts';
import { cutterAnswer } from './cutter-answer.ts';
import { castingAfter, type SectionCut } from './layers.ts';
import { severedPieces } from './severed.ts';
import { straightAnswer } from './straight-answer.ts';
import { sweepsWithin } from './sweeps.ts';
import { thinPlaces } from './thin-places.ts';
import { uncuredBy } from './uncured.ts';
import { readWalls, unmeasuredCuts } from './wall-readings.ts';
import { wallsBehind } from './walls.ts';

/** The cut of one part, and the joint with that part as the cut leaves it. */
export interface PartPlan {
  readonly part: Part;
  /** What each section would have to lose, offered or not. */
  readonly needs: readonly SectionCut[];
  readonly cuts: readonly SectionCut[];
  readonly after: Joint;
  readonly cut: PartCut;
}

/** The least cut of one part: only sections that are offered, and never where a region must not be cut. */
export function* planPart(joint: Joint, part: Part): Generator<Progress, PartPlan> {
  const needs = yield* needsOf(joint, part);
  const cuts = needs
    .filter(({ section }) => section.mayCut)
    .map(({ section, bands }) => ({ section, bands: bands.filter(({ planned }) => planned.length > 0) }))
    .filter(({ bands }) => bands.length > 0);
  const after = { ...joint, [part]: castingAfter(joint[part], cuts) };
  return { part, needs, cuts, after, cut: yield* partCut(joint, joint[part], cuts) };
}

/** What each section would have to lose, offered or not. */
function* needsOf(joint: Joint, part: Part): Generator<Progress, SectionCut[]> {
  const { sections, doNotCut } = joint[part];
  const sweeps = sweepsWithin(toleranceMm);
  const needs: SectionCut[] = [];
  for (const [done, section] of sections.entries()) {
    yield { step: section.id, done, of: sections.length };
    const beside = sections.filter((other) => other !== section);
    const { cutter, straight } = joint.fit;
    const bench = section.mayCut
      ? { joint, sweeps, beside, doNotCut, cutter, straight }
      : { joint, sweeps, beside, doNotCut: [], cutter: null, straight: false };
    needs.push({ section, bands: yield* cutBands(bench, section, bandsOf(joint, part, section)) });
  }
  return needs;
}

/** What a cut comes to, and the walls behind it. */
function* partCut({ fit }: Joint, casting: Casting, cuts: readonly SectionCut[]): Generator<Progress, PartCut> {
  const bands = cuts.flatMap((cut) => cut.bands);
  const { cutter } = fit;
  const steps = 3;
  yield { step: 'walls', done: 0, of: steps };
  const walls = wallsBehind(casting.hollows, bands, fit);
  const thin = thinPlaces(cuts, fit);
  yield { step: 'walls', done: 1, of: steps };
  const readings = readWalls(casting, cuts, fit);
  const unmeasured = unmeasuredCuts(casting, cuts);
  yield { step: 'walls', done: 2, of: steps };
  return {
    boundMm: roundUp6(Math.max(0, ...bands.map(({ boundMm }) => boundMm))),
    ...amountsOf(bands, casting.material),
    sections: sectionAnswers(cuts),
    walls,
    thin,
    readings,
    unmeasured,
    cutter: cutter && cuts.length > 0 ? cutterAnswer(cutter, casting.sections, cuts, casting.material) : null,
    straight: fit.straight ? straightAnswer(cuts, casting.material) : null,
    severed: cuts.flatMap(severedPieces),
  };
}

/** What the check after a cut says of it. */
export interface Judged {
  readonly check: Check;
  readonly uncured: readonly Uncured[];
  readonly holds: boolean;
}

/** Whether a plan holds: clearances kept by what is left, nothing in the way, all walls kept and nothing parted off. */
export function* judge(plan: PartPlan, others: readonly PartPlan[] = []): Generator<Progress, Judged> {
  const check = yield* checkJoint(judgedByFigures(plan.after));
  const { rotatingMm } = plan.after.fit.clearance;
  const uncured = uncuredBy(plan.needs, check.answer.rotating, rotatingMm);
  const holds =
    check.answer.meetsClearance && uncured.length === 0 && [plan, ...others].every(({ cut }) => stands(cut));
  return { check, uncured, holds };
}

/** Whether what a cut leaves of a part will do. */
const stands = ({ severed, sections, walls, thin, readings, cutter }: PartCut): boolean =>
  severed.length === 0 &&
  sections.every(({ bands }) => bands.every(({ takeOffMm }) => takeOffMm !== null)) &&
  [...walls, ...thin, ...readings].every(({ holds }) => holds !== false) &&
  (cutter?.ends ?? []).every(({ what }) => what !== 'left');
