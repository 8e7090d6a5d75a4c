import { mirrorPoint, mirrorRegion, type Region } from '../geometry/plane/loop.ts';
import { distance, leftOf, lerp, scale, type Vec, vec } from '../geometry/plane/vec.ts';
import type { Casting } from '../job/casting.ts';
import type { Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';
import { carried, type PlaneMap } from '../joint/move-casting.ts';
import type { PartCut } from '../plan/part-cut.ts';
import type { PlanResult } from '../plan/plan-result.ts';
import { type WorkBand, workBands } from './marking-out-bands.ts';
import type { DividerHoles } from './marking-out-dividers.ts';
import { type ReliefEdges, reliefEdges } from './marking-out-edges.ts';
import { type BenchTouch, benchTouch } from './marking-out-touch.ts';
import type { MarkingRow, MarkingTable } from './marking-row.ts';

/** A place of the marking-out table where it lies on the bench. */
export interface BenchPlace {
  readonly row: MarkingRow;
  readonly at: Vec;
  /** Into the metal that stays, a unit vector. */
  readonly inward: Vec;
}

export interface BenchBand extends WorkBand {
  readonly firstEdges: ReliefEdges;
  readonly lastEdges: ReliefEdges;
  readonly places: readonly BenchPlace[];
}

/**
 * The casting that is cut as it lies on the bench: mm from the crank, looking at its own mating face. Only where
 * `mirrored` was asked for is it seen as in a mirror.
 */
export interface Bench {
  /** Where both parts are cut, with the other one as its own cut leaves it. */
  readonly joint: Joint;
  /** As a whole, and what of it is this casting's own. */
  readonly plan: PlanResult;
  readonly own: PartCut;
  readonly table: MarkingTable;
  /** Whether the other part is cut as well. */
  readonly both: boolean;
  readonly cut: Part;
  readonly mirrored: boolean;
  /** The casting as it is. */
  readonly present: Casting;
  /** The casting as the cut leaves it. */
  readonly after: Casting;
  readonly bands: readonly BenchBand[];
  /** What gauges are located from: the holes the table's dividers are set from. */
  readonly holes: DividerHoles | null;
  /** Where it first touches on the way in, as both castings are; null where it never does. */
  readonly touch: BenchTouch | null;
  /** Carries the joint frame to the bench. */
  readonly seen: PlaneMap;
}

/** The castings a plan cuts, each on its own bench with the places of its marking-out table. */
export const benchesOf = (
  joint: Joint,
  plan: PlanResult,
  tables: readonly MarkingTable[],
  mirrored: boolean,
): Bench[] =>
  plan.cuts.map((own, i) => {
    const other = plan.cuts[1 - i];
    const swung = other === undefined ? joint : { ...joint, [other.part]: other.after };
    return benchOf({ joint, swung, plan, own, table: tables[i] ?? [], mirrored });
  });

interface OnBench extends Pick<Bench, 'plan' | 'own' | 'table' | 'mirrored'> {
  /** As both castings are, and with the other one as it will be. */
  readonly joint: Joint;
  readonly swung: Joint;
}

function benchOf({ joint, swung, plan, own, table, mirrored }: OnBench): Bench {
  const cut = own.part;
  // the joint is seen looking at the fixed part's face, which is looking through the moving part from behind
  const flip = (cut === 'moving') !== mirrored;
  const seen = flip ? { point: mirrorPoint, region: mirrorRegion } : { point: same<Vec>, region: same<Region> };
  const present = flip ? carried(joint[cut], seen) : joint[cut];
  return {
    joint: swung,
    plan,
    own,
    table,
    both: plan.cuts.length > 1,
    cut,
    mirrored,
    present,
    after: flip ? carried(own.after, seen) : own.after,
    bands: workBands(present, own, seen.region).map((band, i) => ({
      ...band,
      firstEdges: reliefEdges(band.first, band.present),
      lastEdges: reliefEdges(band.last, band.present),
      places: table.filter((row) => row.band === i).map((row) => benchPlaceOf(row, seen.point(row.at), band)),
    })),
    holes: namedHoles(table, present),
    touch: benchTouch(joint, cut, seen.point),
    seen,
  };
}

const same = <T>(value: T): T => value;

/** With metal to come off on the left of an edge, what stays is on its right. */
function benchPlaceOf(row: MarkingRow, at: Vec, { edges }: WorkBand): BenchPlace {
  let [off, inward] = [Number.POSITIVE_INFINITY, vec(0, -1)];
  for (const { points } of edges.cuts) {
    for (const [i, b] of points.slice(1).entries()) {
      const a = points[i] as Vec;
      const mm = distance(at, lerp(a, b, 0.5)) - distance(a, b) / 2;
      if (mm < off && distance(a, b) > 0) [off, inward] = [mm, scale(leftOf(a, b), -1)];
    }
  }
  return { row, at, inward };
}

function namedHoles([row]: MarkingTable, { holes }: Casting): DividerHoles | null {
  const [a, b] = (row?.dividers ?? []).map(({ from }) => holes.find(({ id }) => id === from));
  return a === undefined || b === undefined ? null : [a, b];
}
