import type { CheckResult } from '../../clearance/check-result.ts';
import type { Region } from '../../geometry/plane/loop.ts';
import type { DepthRange } from '../../job/casting.ts';
import type { Part } from '../../job/part.ts';
import type { Joint } from '../../joint/joint.ts';
import type { Alternative } from '../../plan/alternatives/alternative.ts';
import type { PlanResult } from '../../plan/plan-result.ts';

/** The results a drawing shows; it computes none of them. */
export interface DrawInput {
  readonly joint: Joint;
  readonly check: CheckResult;
  /** Null where no cut was planned. */
  readonly plan: PlanResult | null;
  /** What else would give where the plan does not hold; empty where it was not worked out. */
  readonly alternatives: readonly Alternative[];
  /** Everything the moving part covers on its way in, joint frame. */
  readonly room: Region;
  /** The side that the side view was seen from before, which is kept; else it is that of what is in the way. */
  readonly seenFrom?: 'left' | 'right';
}

/** One band of metal to come off, as drawn: joint frame, depth from the face of the part that is cut. */
export interface DrawnBand {
  readonly part: Part;
  readonly section: string;
  readonly depth: DepthRange | null;
  readonly takeOffMm: number | null;
  readonly loops: Region;
  readonly first: Region;
  readonly last: Region;
}

/** The bands of a plan that take anything off, the moving part's last where both are cut. */
export const bandsOf = (plan: PlanResult | null): readonly DrawnBand[] =>
  (plan?.cuts ?? []).flatMap(({ part, sections }) =>
    sections.flatMap(({ id, bands }) =>
      bands
        .filter(({ planned }) => planned.length > 0)
        .map(({ depth, takeOff, lines }) => ({
          part,
          section: id,
          depth,
          takeOffMm: takeOff?.mm ?? null,
          loops: lines.planned,
          first: lines.first,
          last: lines.last,
        })),
    ),
  );

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
