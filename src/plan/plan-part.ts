import { areaMm2 } from '../geometry/polygons/polygons.ts';
import { type Progress, showing } from '../geometry/progress.ts';
import type { Section } from '../job/casting.ts';
import { massOfG } from '../job/mass.ts';
import type { Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';
import { layerMm3, sumKnown } from './bands/amounts.ts';
import { type BandNeed, needsOfSection } from './bands/band-need.ts';
import { bandsOf } from './bands/bands.ts';
import { cutBands } from './bands/cut-band.ts';
import { joinedNeeds } from './bands/joined-needs.ts';
import { castingAfter, type SectionCut } from './bands/layers.ts';
import { piecesOf } from './bands/run-out.ts';
import { severedPieces } from './bands/severed-pieces.ts';
import { sweepsWithin } from './bands/sweeps.ts';
import { toleranceMm } from './bands/tolerance.ts';
import { cutNotices } from './cut-notices.ts';
import { cutSections } from './cut-sections.ts';
import { cutterResult } from './cutter/cutter-result.ts';
import { castingJudged, type Fillet, filletsOf } from './cutter/fillets.ts';
import { straightResult } from './cutter/straight-result.ts';
import type { CutNotice } from './notices.ts';
import type { PartCut } from './part-cut.ts';
import { guardsOf } from './walls/guards.ts';
import { thinFloors } from './walls/thin-floors.ts';
import { type ThinPlace, thinPlaces } from './walls/thin-places.ts';
import { type ReadWall, type UnmeasuredCut, unmeasuredCuts, wallsRead } from './walls/wall-readings.ts';
import { handErrorOf, wallsBehind } from './walls/walls.ts';

/** The cut of one part and its working, and the joint with that part as the cut leaves it. */
export interface PartPlan {
  /** What each section would have to lose, offered or not. */
  readonly needs: readonly SectionCut[];
  readonly cuts: readonly SectionCut[];
  /** What the cutter cannot take of it. */
  readonly fillets: readonly Fillet[];
  /** The joint as it is judged: with the fillets that the cutter leaves. */
  readonly judged: Joint;
  readonly cut: PartCut;
  readonly notices: readonly CutNotice[];
}

/** The least cut of one part: only sections that are offered, and never where a region must not be cut. */
export function* planPart(joint: Joint, part: Part): Generator<Progress, PartPlan> {
  return yield* withFillets(joint, part, yield* planInPlane(joint, part));
}

/** A plan before it is known what the cutter leaves of it: that takes longest, and no wall needs it. */
interface PlanInPlane extends Pick<PartPlan, 'needs' | 'cuts'> {
  readonly cut: Omit<PartCut, 'cutter'>;
}

export function* planInPlane(joint: Joint, part: Part): Generator<Progress, PlanInPlane> {
  const needs = yield* cutsNeeded(joint, part);
  const cuts = needs
    .filter(({ section }) => section.mayCut)
    .map(({ section, bands }) => ({ section, bands: bands.filter(({ planned }) => planned.length > 0) }))
    .filter(({ bands }) => bands.length > 0);
  return { needs, cuts, cut: yield* partCut(joint, part, cuts) };
}

export function* withFillets(
  joint: Joint,
  part: Part,
  { needs, cuts, cut }: PlanInPlane,
): Generator<Progress, PartPlan> {
  const casting = joint[part];
  const { cutter } = joint.fit;
  const fillets = yield* filletsOf(casting, cuts, cutter);
  const result = cutter && cuts.length > 0 ? cutterResult(cutter, casting, cuts, fillets) : null;
  const left = { step: 'what the cutter leaves', done: 1, of: 1 };
  return {
    needs,
    cuts,
    fillets,
    judged: { ...joint, [part]: yield* showing(left, castingJudged(casting, cuts, fillets, cutter)) },
    cut: { ...cut, cutter: result },
    notices: cutNotices(joint, part, cuts),
  };
}

/** What each section would have to lose, offered or not; of those offered, in the way the cutter takes it. */
function* cutsNeeded(joint: Joint, part: Part): Generator<Progress, SectionCut[]> {
  const { sections, doNotCut } = joint[part];
  const { cutter, straight } = joint.fit;
  const sweeps = sweepsWithin(toleranceMm);
  const needs: { section: Section; needs: readonly BandNeed[] }[] = [];
  for (const [done, section] of sections.entries()) {
    yield { step: section.id, done, of: sections.length };
    const conditions = section.mayCut
      ? { joint, sweeps, doNotCut, cutter, beside: sections.filter((other) => other !== section) }
      : { joint, sweeps, doNotCut: [], cutter: null, beside: [] };
    const own = yield* needsOfSection(conditions, section, bandsOf(joint, part, section));
    needs.push({ section, needs: joinedNeeds(own) });
  }
  const notOffered = sections.filter(({ mayCut }) => !mayCut);
  const handErrorMm = handErrorOf(joint.fit);
  const keepOut = { sections: notOffered, doNotCut, guards: guardsOf(joint[part], joint.fit), handErrorMm };
  const cuts: SectionCut[] = [];
  for (const { section, needs: own } of needs) {
    const others = needs.flatMap((need) => (need.section !== section && need.section.mayCut ? need.needs : []));
    const pieces = section.mayCut
      ? piecesOf(section, own, others, keepOut, cutter)
      : piecesOf(section, own, [], keepOut, null);
    const conditions = section.mayCut
      ? { section, doNotCut, notOffered, straight }
      : { section, doNotCut: [], notOffered: [], straight: false };
    cuts.push({ section, bands: yield* cutBands(conditions, pieces) });
  }
  return cuts;
}

/** What a cut comes to, and the walls behind it, whatever the cutter leaves. */
function* partCut(joint: Joint, part: Part, cuts: readonly SectionCut[]): Generator<Progress, Omit<PartCut, 'cutter'>> {
  const { fit, [part]: casting } = joint;
  const bands = cuts.flatMap((cut) => cut.bands);
  const guards = guardsOf(casting, fit);
  // one cut of one band: each takes long enough to be shown, and stopped, by itself
  const single = cuts.flatMap(({ section, bands: own }) => own.map((band): SectionCut => ({ section, bands: [band] })));
  const walling = (done: number): Progress => ({ step: 'walls', done, of: 2 * single.length + 2 });
  yield walling(0);
  const walls = wallsBehind(guards, bands, fit);
  const thin: ThinPlace[] = [];
  for (const [i, cut] of single.entries()) {
    thin.push(...(yield* showing(walling(1 + i), thinPlaces([cut], guards, fit))));
  }
  thin.push(...(yield* showing(walling(1 + single.length), thinFloors(casting, cuts, fit))));
  const readings: ReadWall[] = [];
  for (const reading of casting.wallReadings) {
    yield walling(1 + single.length);
    readings.push(...wallsRead(reading, cuts, fit));
  }
  const unmeasured: UnmeasuredCut[] = [];
  for (const [i, cut] of single.entries()) {
    unmeasured.push(...(yield* showing(walling(2 + single.length + i), unmeasuredCuts(casting, [cut]))));
  }
  // nothing is known of the volume where a band has no depth
  const volumeMm3 = sumKnown(bands.map(({ depth, planned }) => layerMm3(areaMm2(planned), depth)));
  return {
    part,
    boundMm: Math.max(0, ...bands.map(({ boundMm }) => boundMm)),
    volumeMm3,
    massG: massOfG(volumeMm3, casting.material),
    sections: cutSections(cuts),
    walls,
    thin,
    readings,
    unmeasured,
    straight: fit.straight ? straightResult(cuts, casting.material) : null,
    severed: cuts.flatMap(severedPieces),
    after: castingAfter(casting, cuts),
  };
}
