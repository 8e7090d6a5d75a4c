import { metalOnLeft } from '../geometry/polygons/metal-on-left.ts';
import { offset } from '../geometry/polygons/offset.ts';
import { loopsOf } from '../geometry/polygons/polygons.ts';
import type { Progress } from '../geometry/progress.ts';
import type { Section } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import { toleranceMm } from './bands/tolerance.ts';
import { cutNotices } from './cut-notices.ts';
import { type PartPlan, planPart } from './plan-part.ts';

/** The cuts of both parts; the joint after the moving part's cut is the joint after both. */
export interface BothPlans {
  readonly fixed: PartPlan;
  readonly moving: PartPlan;
}

/**
 * A cut shared between both parts. With t the deepest the fixed part would have to be cut alone, it is cut for a clearance
 * smaller by (1 − share)·t, below nothing for a moving outline drawn in; the moving part then takes what is still
 * needed against it. What the moving part does not offer, the fixed part makes room for in full. `known` is the plan of the fixed part
 * alone, where it is there already.
 */
export function* planBoth(joint: Joint, known: PartPlan | null = null): Generator<Progress, BothPlans> {
  const alone = known?.cut.part === 'fixed' ? known : yield* planPart(joint, 'fixed');
  // with nothing offered of the moving part there is nothing to share
  const isShared = joint.moving.sections.some(({ mayCut }) => mayCut);
  const planned = isShared ? yield* planPart(easedBy(joint, spareMm(joint, alone)), 'fixed') : alone;
  // what is said of it is said of the clearance that was asked
  const eased = { ...planned, notices: cutNotices(joint, 'fixed', planned.cuts) };
  // the moving part makes room for the fixed one as planned; both are judged with the fillets that the cutter leaves
  const moving = yield* planPart({ ...joint, fixed: eased.cut.after }, 'moving');
  return { fixed: eased, moving: { ...moving, judged: { ...moving.judged, fixed: eased.judged.fixed } } };
}

/** What of the deepest cut the moving part takes over, mm. */
function spareMm({ fit }: Joint, { needs }: PartPlan): number {
  const deepest = needs.flatMap(({ bands }) => bands.map(({ takeOff }) => takeOff?.mm ?? 0));
  return (1 - fit.share) * Math.max(0, ...deepest);
}

/** The joint with so much less clearance asked of the fixed part. */
function easedBy(joint: Joint, byMm: number): Joint {
  const { clearance } = joint.fit;
  const homeMm = Math.max(0, clearance.homeMm - byMm);
  const wayInMm = Math.max(0, clearance.wayInMm - byMm);
  const drawnInMm = Math.max(0, byMm - Math.min(clearance.homeMm, clearance.wayInMm));
  const givenUpMm = Math.max(clearance.homeMm - homeMm, clearance.wayInMm - wayInMm);
  const sections = joint.moving.sections.flatMap((section) =>
    resized(section, section.mayCut ? -drawnInMm : givenUpMm),
  );
  return {
    ...joint,
    fit: { ...joint.fit, clearance: { ...clearance, homeMm, wayInMm } },
    moving: { ...joint.moving, sections },
  };
}

function resized(section: Section, byMm: number): Section[] {
  if (byMm === 0) return [section];
  const { polygons } = offset(metalOnLeft(section.loops), byMm, toleranceMm, 'outside');
  return polygons.length === 0 ? [] : [{ ...section, loops: loopsOf(polygons) }];
}
