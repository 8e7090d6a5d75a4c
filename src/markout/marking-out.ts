import { distance, type Vec } from '../geometry/plane/vec.ts';
import type { Hole } from '../job/casting.ts';
import type { Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';
import type { PartCut } from '../plan/part-cut.ts';
import type { PlanResult } from '../plan/plan-result.ts';
import { handErrorOf } from '../plan/walls/walls.ts';
import { type MeasuredRun, measured, pointAlong } from './marking-out-along.ts';
import { type WorkBand, workBands } from './marking-out-bands.ts';
import { dividerHoles, standsAtMm } from './marking-out-dividers.ts';
import { type EdgePlace, placesAlong } from './marking-out-places.ts';
import { takeOffAlong, takesTip, tipOffAlong } from './marking-out-take-off.ts';
import { isInReach, wallLeft, wallMm } from './marking-out-walls.ts';
import type { Divider, MarkingRow, MarkingTable } from './marking-row.ts';

/** A place of the table before it is measured. */
interface PlaceOnBand {
  readonly band: WorkBand;
  readonly nth: number;
  readonly edge: number;
  readonly run: MeasuredRun;
  readonly wholeTip: boolean;
  readonly place: EdgePlace;
}

/**
 * The marking-out table of each part that is cut: along every edge a cut leaves, in each section and band, a row every
 * 10 mm and at every extreme (ends, corners, the deepest place, the thinnest wall).
 */
export const markingOut = (joint: Joint, { cuts }: PlanResult): MarkingTable[] =>
  cuts.map((cut) => tableOf(joint, cut));

function tableOf(joint: Joint, cut: PartCut): MarkingTable {
  const { part } = cut;
  const marked = workBands(joint[part], cut).flatMap((band, i) => markedOn(joint, part, band, i));
  const pair = dividerHoles(joint, part, marked.map(pointOnRun));
  const standing = (hole: Hole): StandingHole => ({ hole, standsMm: standsAtMm(joint, part, hole) });
  const holes = pair && ([standing(pair[0]), standing(pair[1])] as const);
  return marked.map((mark, i) => rowOf(joint, part, holes, mark, i + 1));
}

/** A hole to set dividers from, and how deep they stand in it; mm, null where that is not known. */
interface StandingHole {
  readonly hole: Hole;
  readonly standsMm: number | null;
}

const pointOnRun = ({ run, place }: PlaceOnBand): Vec => pointAlong(run, place.alongMm);

function markedOn(joint: Joint, part: Part, band: WorkBand, nth: number): PlaceOnBand[] {
  const walls = joint[part].hollows.map((hollow) => (at: Vec) => ({ hollow, mm: wallMm(hollow, at, band.depth) }));
  return band.edges.cuts.flatMap((cut, i) => {
    const run = measured(cut);
    const near = walls.filter((wall) => {
      const least = cut.points.map(wall).reduce((a, b) => (a.mm <= b.mm ? a : b));
      return isInReach(least.hollow, least.mm);
    });
    const wallsTo = near.map((wall) => (at: Vec) => wall(at).mm);
    const edge = { band, nth, edge: i + 1, run, wholeTip: takesTip(run, band.present) };
    return placesAlong(run, band.present, wallsTo).map((place) => ({ ...edge, place }));
  });
}

function rowOf(
  joint: Joint,
  part: Part,
  holes: readonly [StandingHole, StandingHole] | null,
  mark: PlaceOnBand,
  place: number,
): MarkingRow {
  const { band, nth, edge, run, wholeTip } = mark;
  const { kind, alongMm } = mark.place;
  const at = pointAlong(run, alongMm);
  const { firstMm, plannedMm, lastMm, lastAt } = wholeTip
    ? tipOffAlong(run, alongMm, band.present, band.trees)
    : takeOffAlong(run, alongMm, band.present, band.trees, band.takeOffMm);
  const hand = handErrorOf(joint.fit);
  const depthMm = band.depth?.fromMm ?? 0;
  return {
    place,
    band: nth,
    section: band.section.id,
    depth: band.depth,
    edge,
    kind,
    wholeTip,
    alongMm,
    at,
    angleRad: angleRad(at, part),
    radiusMm: Math.hypot(at.x, at.y),
    dividers: holes && [dividerTo(at, depthMm, holes[0]), dividerTo(at, depthMm, holes[1])],
    firstMm,
    plannedMm,
    lastMm,
    wall: wallLeft(joint[part].hollows, at, lastAt, band.depth, hand),
  };
}

/** A direction this near to 9 o'clock is that, whichever side of it. */
const hairRad = 8e-9;

/** Looking at the moving part's own face, left and right of the joint frame change places. */
function angleRad({ x, y }: Vec, part: Part): number {
  const rad = Math.atan2(y, part === 'moving' ? 0 - x : x);
  return rad < hairRad - Math.PI ? Math.PI : rad;
}

/** The setting of dividers is the hypotenuse of the distance in plan and the difference in depth. */
function dividerTo(at: Vec, depthMm: number, { hole, standsMm }: StandingHole): Divider {
  const mm = distance(at, hole.at);
  return { from: hole.id, mm, setMm: standsMm === null ? null : Math.hypot(mm, depthMm - standsMm) };
}
