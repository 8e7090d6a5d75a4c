import { offset } from '../geometry/polygons/offset.ts';
import { difference, intersection, pieces } from '../geometry/polygons/polygon-engine.ts';
import { polygonise } from '../geometry/polygons/polygonise.ts';
import { areaMm2, outlinesOf, type Polygons } from '../geometry/polygons/polygons.ts';
import { toleranceMm } from '../plan/bands/tolerance.ts';
import type { Bench, BenchBand } from './marking-out-bench.ts';
import { metalWithin } from './marking-out-plate.ts';

/** Just above or below a depth is as far from it as this, mm. */
const justMm = 0.05;
/** An edge as thin as this, all round, is no metal that stays, mm. */
const filmMm = 0.05;
const roughMm = 0.02;

/**
 * What a band grinds down of bosses on the mating face: it stands proud, the cut takes its top off, and metal stays
 * under it. Down to the face itself, where the cut leaves some of the boss beside it that is a side trimmed, which its
 * profile gauge proves, and no boss.
 */
export function groundDown({ after, present }: Bench, { section, depth, lines }: BenchBand): Polygons[] {
  if (depth === null || depth.fromMm >= -justMm) return [];
  const { fromMm, toMm } = depth;
  const above = metalWithin(after, { fromMm: Number.NEGATIVE_INFINITY, toMm: fromMm + justMm });
  const below = metalWithin(after, { fromMm: toMm, toMm: toMm + justMm });
  const stays = difference(polygonise(section.loops, toleranceMm, 'outside'), lines.planned);
  const own = present.sections.filter(({ id }) => id === section.id);
  return pieces(lines.planned).filter((boss) => {
    const within = (metal: Polygons): number => areaMm2(intersection(boss, metal)) / areaMm2(boss);
    if (own.length === 0 || within(above) > filmMm || within(below) < 0.5) return false;
    return toMm < -justMm || !touches(boss, stays);
  });
}

/** Whether a boss goes on in metal that stays. */
function touches(boss: Polygons, stays: Polygons): boolean {
  const thick = outlinesOf(stays).length === 0 ? [] : offset(outlinesOf(stays), -filmMm, roughMm, 'inside').polygons;
  if (thick.length === 0) return false;
  const round = offset(outlinesOf(boss), 3 * filmMm, roughMm, 'outside').polygons;
  return intersection(round, thick).length > 0;
}
