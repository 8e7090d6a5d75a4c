import type { GrindAnswer } from '../../answers/grind-answer.ts';
import type { CheckResult } from '../../clearance/check-result.ts';
import { roomItSwingsThrough } from '../../clearance/room.ts';
import type { Region } from '../../geometry/plane/loop.ts';
import type { DepthRange, Section } from '../../job/casting.ts';
import { loopOf } from '../../job/lengths.ts';
import type { Joint } from '../../joint/joint.ts';
import type { CutPlan } from '../../plan/cut-plan.ts';

/** The results a drawing shows; it computes none of them. */
export interface DrawInput {
  readonly joint: Joint;
  readonly check: CheckResult;
  /** Null where no cut was planned. */
  readonly plan: CutPlan | null;
  /** Everything the moving part covers on its way in, joint frame. */
  readonly room: Region;
}

/** One band of metal to come off, as drawn: joint frame, depth from the face of the part that is cut. */
export interface DrawnBand {
  readonly owner: Owner;
  readonly section: string;
  readonly depth: DepthRange | null;
  readonly takeOffMm: number | null;
  readonly loops: Region;
  readonly first: Region;
  readonly last: Region;
}

/** The part that owns what is drawn. */
export type Owner = 'fixed' | 'moving';

/** The bands of a plan that take anything off, the moving part's last where both are cut. */
export function bandsOf(answer: GrindAnswer | undefined): readonly DrawnBand[] {
  if (answer === undefined) return [];
  const { part, movingCut } = answer;
  const moving = (movingCut?.sections ?? []).map((section) => ({ owner: 'moving' as const, ...section }));
  return [...answer.sections.map((section) => ({ owner: part, ...section })), ...moving].flatMap(
    ({ owner, id, bands }) =>
      bands
        .filter(({ loops }) => loops.length > 0)
        .map((band) => ({
          owner,
          section: id,
          depth: band.depth === null ? null : { fromMm: band.depth[0], toMm: band.depth[1] },
          takeOffMm: band.takeOffMm,
          loops: regionOf(band.loops),
          first: regionOf(band.firstLoops),
          last: regionOf(band.lastLoops),
        })),
  );
}

const regionOf = (loops: GrindAnswer['sections'][number]['bands'][number]['loops']): Region =>
  loops.map((loop) => loopOf(loop, 1));

/** Whether a section stands proud of its own mating face, into the other part's side. */
export const reachesPastFace = ({ depth }: Pick<Section, 'depth'>): boolean => depth === null || depth.fromMm < 0;

/** A foul as drawn: joint frame, over the depth of the fixed part where that is told. */
export type DrawnFoul = Pick<DrawnBand, 'section' | 'depth' | 'loops'>;

/** The fouls of the way in, or of home where only that was asked. */
export function foulsOf({ check, joint }: Pick<DrawInput, 'check' | 'joint'>): readonly DrawnFoul[] {
  const { regions } = (check.wayIn ?? check.home).foul;
  return regions.map(({ section, depth, loops }) => ({
    section,
    loops,
    depth: foulDepth(section, depth, check, joint),
  }));
}

/** The part of a fixed section's depth that the fouling moving sections reach; all of it where that is not told. */
function foulDepth(
  section: string,
  depth: DepthRange | null,
  { home, wayIn }: CheckResult,
  { moving }: Joint,
): DepthRange | null {
  const atHome =
    home.state === 'fouls' && home.nearest !== null
      ? [{ ...home.nearest, from: { standOffMm: 0 }, to: { standOffMm: 0 } }]
      : [];
  const reached = [...(wayIn?.fouling ?? []), ...atHome]
    .filter(({ fixedSection }) => fixedSection === section)
    .flatMap(({ movingSection, from, to }) => {
      const reach = moving.sections.find(({ id }) => id === movingSection)?.depth;
      if (!reach) return [];
      const [low, high] = [Math.min(from.standOffMm, to.standOffMm), Math.max(from.standOffMm, to.standOffMm)];
      return [{ fromMm: -high - reach.toMm, toMm: -low - reach.fromMm }];
    });
  if (depth === null || reached.length === 0) return depth;
  return {
    fromMm: Math.max(depth.fromMm, Math.min(...reached.map(({ fromMm }) => fromMm))),
    toMm: Math.min(depth.toMm, Math.max(...reached.map(({ toMm }) => toMm))),
  };
}

/** The room that matters on a drawing: of the sections that can meet the fixed part on the way in. */
export function roomToDraw(joint: Joint): Region {
  const { fit, fixed, moving } = joint;
  if (fit.legs.length === 0) return [];
  const sections = fixed.sections.some(reachesPastFace) ? moving.sections : moving.sections.filter(reachesPastFace);
  return sections.length === 0 ? [] : roomItSwingsThrough({ ...joint, moving: { ...moving, sections } });
}
