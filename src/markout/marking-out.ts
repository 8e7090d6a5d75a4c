import type { MarkingRow } from '../answers/marking-row.ts';
import type { Part } from '../clearance/passes.ts';
import { round6, roundPoint6 } from '../geometry/plane/rounding.ts';
import { distance, type Vec } from '../geometry/plane/vec.ts';
import type { Joint } from '../joint/joint.ts';
import type { CutPlan } from '../plan/cut-plan.ts';
import { handErrorOf } from '../plan/walls/walls.ts';
import { type Measured, measured, pointAlong } from './marking-out-along.ts';
import { type WorkBand, workBands } from './marking-out-bands.ts';
import { type DividerHoles, dividerHoles } from './marking-out-dividers.ts';
import { type Place, placesAlong } from './marking-out-places.ts';
import { takeOffAlong } from './marking-out-take-off.ts';
import { isInReach, wallLeft, wallMm } from './marking-out-walls.ts';

/** A place of the table before it is measured. */
interface Marked {
  readonly band: WorkBand;
  readonly edge: number;
  readonly run: Measured;
  readonly place: Place;
}

/**
 * The marking-out table: along every edge a cut leaves, in each section and band, a row every 10 mm and at every extreme
 * (ends, corners, the deepest place, the thinnest wall). Places are in the joint frame, mm; angles are as seen looking at
 * the mating face of the part that is cut.
 */
export function markingOut(joint: Joint, { answer }: CutPlan): readonly MarkingRow[] {
  const { part } = answer;
  const marked = workBands(joint[part], answer).flatMap((band) => markedOn(joint, part, band));
  const holes = dividerHoles(joint, part, marked.map(placeOf));
  return marked.map((mark, i) => rowOf(joint, part, holes, mark, i + 1));
}

const placeOf = ({ run, place }: Marked): Vec => pointAlong(run, place.alongMm);

function markedOn(joint: Joint, part: Part, band: WorkBand): Marked[] {
  const walls = joint[part].hollows.map((hollow) => (at: Vec) => ({ hollow, mm: wallMm(hollow, at, band.depth) }));
  return band.edges.cuts.flatMap((cut, i) => {
    const run = measured(cut);
    const near = walls.filter((wall) => {
      const least = cut.points.map(wall).reduce((a, b) => (a.mm <= b.mm ? a : b));
      return isInReach(least.hollow, least.mm);
    });
    const wallsTo = near.map((wall) => (at: Vec) => wall(at).mm);
    return placesAlong(run, band.present, wallsTo).map((place) => ({ band, edge: i + 1, run, place }));
  });
}

function rowOf(joint: Joint, part: Part, holes: DividerHoles | null, mark: Marked, place: number): MarkingRow {
  const { band, edge, run } = mark;
  const { kind, alongMm } = mark.place;
  const at = pointAlong(run, alongMm);
  const { firstMm, plannedMm, lastMm, lastAt } = takeOffAlong(run, alongMm, band.present, band.trees, band.takeOffMm);
  const hand = handErrorOf(joint.fit);
  return {
    place,
    section: band.section.id,
    depth: band.depth && [round6(band.depth.fromMm), round6(band.depth.toMm)],
    edge,
    kind,
    alongMm: round6(alongMm),
    at: roundPoint6(at),
    angleDeg: angleDeg(at, part),
    radiusMm: round6(Math.hypot(at.x, at.y)),
    dividers: holes && [dividerTo(at, holes[0]), dividerTo(at, holes[1])],
    firstMm: round6(firstMm),
    plannedMm: round6(plannedMm),
    lastMm: round6(lastMm),
    wall: wallLeft(joint[part].hollows, at, lastAt, band.depth, hand),
  };
}

/** Looking at the moving part's own face, left and right of the joint frame change places. */
function angleDeg({ x, y }: Vec, part: Part): number {
  const deg = round6((Math.atan2(y, part === 'moving' ? 0 - x : x) * 180) / Math.PI);
  return deg === -180 ? 180 : deg;
}

const dividerTo = (at: Vec, hole: DividerHoles[0]): { from: string; mm: number } => ({
  from: hole.id,
  mm: round6(distance(at, hole.at)),
});
