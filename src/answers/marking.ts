import { round6, roundPoint6 } from '../geometry/plane/rounding.ts';
import type { Divider, MarkingRow } from '../markout/marking-row.ts';
import type { MarkingRowAnswer } from './marking-row.ts';
import { roundDegrees, roundDepth, roundOrNull } from './rounded.ts';

/** A row of the marking-out table as the answer gives it. */
export const markingAnswer = (row: MarkingRow): MarkingRowAnswer => ({
  place: row.place,
  section: row.section,
  depth: roundDepth(row.depth),
  edge: row.edge,
  kind: row.kind,
  wholeTip: row.wholeTip,
  alongMm: round6(row.alongMm),
  at: roundPoint6(row.at),
  angleDeg: roundDegrees(row.angleRad),
  radiusMm: round6(row.radiusMm),
  dividers: row.dividers && [dividerAnswer(row.dividers[0]), dividerAnswer(row.dividers[1])],
  firstMm: round6(row.firstMm),
  plannedMm: round6(row.plannedMm),
  lastMm: round6(row.lastMm),
  wall: row.wall && {
    hollow: row.wall.hollow,
    nominalMm: round6(row.wall.nominalMm),
    wallMm: round6(row.wall.wallMm),
  },
});

const dividerAnswer = ({ from, mm, setMm }: Divider): Divider => ({
  from,
  mm: round6(mm),
  setMm: roundOrNull(setMm),
});
