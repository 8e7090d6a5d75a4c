import { treeOf } from '../clearance/trees.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { offset } from '../geometry/polygons/offset.ts';
import { difference, intersection, union } from '../geometry/polygons/polygon-engine.ts';
import { loopsOf, outlinesOf, type Polygons } from '../geometry/polygons/polygons.ts';
import type { Casting } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import type { MarkingTable } from '../markout/marking-row.ts';
import { layersOf, withLayers } from '../plan/bands/layers.ts';
import { metalOf } from '../plan/bands/metal.ts';
import { toleranceMm } from '../plan/bands/tolerance.ts';
import type { CutBand, PartCut } from '../plan/part-cut.ts';
import type { PlanResult } from '../plan/plan-result.ts';
import { type Offered, uncut } from './contact.ts';
import type { CutSoFar } from './trial.ts';

/** Outlines this near to one another are one, mm: a plan keeps arcs within 5e-3 mm. */
const sameMm = 0.02;

/** Of arcs of outlines that are cut to a line, mm. */
const arcsMm = 1e-3;

/** The castings as they are offered up with so much cut. Tables as `markingOut` makes them of the same plan. */
export function offeredWith(joint: Joint, plan: PlanResult, tables: readonly MarkingTable[], cut: CutSoFar): Offered {
  if (cut.kind === 'none') return uncut(joint);
  const cutJoint = cut.kind === 'planned' ? plan.judged : cutTo(joint, plan, tables, cut);
  return { joint: cutJoint, isCutAt: (section, at) => !liesOn(joint.fixed, section, at) };
}

/** Whether a point lies on an outline of a section as it was traced. */
const liesOn = ({ sections }: Casting, id: string, at: { readonly x: number; readonly y: number }): boolean =>
  sections.some((section) => section.id === id && nearestOnOutline(treeOf(section.loops), at).distanceMm < sameMm);

function cutTo(joint: Joint, plan: PlanResult, tables: readonly MarkingTable[], cut: CutSoFar): Joint {
  const made = plan.cuts.map((partCut, k) => [
    partCut.part,
    castingCutTo(joint[partCut.part], partCut, tables[k] ?? [], cut),
  ]);
  return { ...joint, ...Object.fromEntries(made) };
}

function castingCutTo(casting: Casting, { sections }: PartCut, table: MarkingTable, cut: CutSoFar): Casting {
  let counted = 0;
  const cuts = casting.sections.flatMap((section) => {
    const own = sections.find(({ id }) => id === section.id);
    if (own === undefined) return [];
    const bands = own.bands.map((band) => ({ ...band, number: counted++ }));
    return [{ section, bands }];
  });
  return withLayers(casting, cuts, (one) =>
    layersOf(one).map(({ depth, cut: band }) => ({
      depth,
      loops:
        band === null ? null : loopsOf(bandCutTo(metalOf(one.section.loops, toleranceMm, 'outside'), band, table, cut)),
    })),
  );
}

/** What is left of a band's metal. Of measured places the mean counts; a band in which none was measured is not cut. */
function bandCutTo(
  metal: Polygons,
  { first, planned, number }: CutBand & { readonly number: number },
  table: MarkingTable,
  cut: CutSoFar,
): Polygons {
  if (cut.kind !== 'measured') return without(metal, cut.kind === 'first' ? first : planned);
  const beyond = cut.places.flatMap(({ place, takeOffMm }) => {
    const row = table.find((one) => one.place === place && one.band === number);
    return row === undefined ? [] : [takeOffMm - row.plannedMm];
  });
  if (beyond.length === 0) return metal;
  const beyondMm = beyond.reduce((sum, mm) => sum + mm, 0) / beyond.length;
  if (beyondMm >= 0) return without(metal, grown(planned, beyondMm));
  return intersection(metal, grown(without(metal, planned), -beyondMm));
}

/** Outlines that share an arc may have it by other chords: a hair beyond both leaves no film of it, mm. */
const hairMm = 0.01;

const without = (metal: Polygons, cut: Polygons): Polygons => difference(metal, grown(cut, hairMm));

const grown = (polygons: Polygons, byMm: number): Polygons =>
  byMm === 0 || polygons.length === 0
    ? union(polygons)
    : offset(outlinesOf(polygons), byMm, arcsMm, 'outside').polygons;
