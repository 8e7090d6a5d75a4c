import type { CutAnswer } from '../../../src/answers/grind-answer.ts';
import type { Casting, DepthRange, Section } from '../../../src/job/casting.ts';
import { loopOf } from '../../../src/job/lengths.ts';
import type { GeosPlane, Shape } from './geos-plane.ts';

/** Arcs are handed to GEOS as chords no higher than this, mm. */
export const chordMm = 5e-4;

/** What chords alone would leave of a cut along an arc, mm: taken off with it. */
const filmMm = 2e-3;

/** Depths are rounded in a plan's JSON: ends no farther apart than this, mm, are one. */
const roundMm = 2e-6;

/** What a plan's JSON says is cut from each section of a part. */
export type Cuts = CutAnswer['sections'];

/** A section at one layer. */
export interface SectionLayer {
  readonly section: Section;
  /** As drawn. */
  readonly metal: Shape;
  /** What the plan takes off this section. */
  readonly cut: Shape;
  /** What it leaves of this section. */
  readonly left: Shape;
}

/** A range of depth within which a part and its plan are the same throughout; the ends may be infinite. */
export interface Layer extends DepthRange {
  readonly sections: readonly SectionLayer[];
  readonly metal: Shape;
  /** What must stay: a section's metal that its own bands leave, also where another section's bands are over it. */
  readonly stay: Shape;
  /** What is to go. */
  readonly planned: Shape;
}

/** A part and its plan as layers along the crank, in order of depth; none where there is no metal. */
export function layersOf(geos: GeosPlane, { sections }: Casting, cuts: Cuts): Layer[] {
  const outlines = new Map(sections.map((section) => [section, geos.region(section.loops, chordMm)]));
  return rangesOf(sections, cuts).flatMap((range) => {
    const here = sections
      .filter(({ depth }) => covers(depth, range))
      .map((section) => sectionLayer(geos, section, outlines.get(section) as Shape, loopsAt(cuts, section, range)));
    if (here.length === 0) return [];
    const metal = geos.union(...here.map((s) => s.metal));
    const stay = geos.union(...here.map((s) => s.left));
    return [{ ...range, sections: here, metal, stay, planned: geos.difference(metal, stay) }];
  });
}

function sectionLayer(
  geos: GeosPlane,
  section: Section,
  metal: Shape,
  loops: Cuts[0]['bands'][0]['loops'],
): SectionLayer {
  if (loops.length === 0) return { section, metal, cut: geos.shape([]), left: metal };
  const band = geos.region(
    loops.map((loop) => loopOf(loop, 1)),
    chordMm,
  );
  const cut = geos.intersection(metal, band);
  return { section, metal, cut, left: geos.difference(metal, geos.buffer(band, filmMm, 4)) };
}

/** The loops of a section's bands that reach over a range. */
const loopsAt = (cuts: Cuts, { id }: Section, range: DepthRange): Cuts[0]['bands'][0]['loops'] =>
  cuts
    .filter((cut) => cut.id === id)
    .flatMap(({ bands }) => bands)
    .filter(({ depth }) => covers(depth && { fromMm: depth[0], toMm: depth[1] }, range))
    .flatMap(({ loops }) => loops);

const covers = (depth: DepthRange | null, { fromMm, toMm }: DepthRange): boolean =>
  depth === null || (depth.fromMm <= fromMm + roundMm && toMm <= depth.toMm + roundMm);

function rangesOf(sections: readonly Section[], cuts: Cuts): DepthRange[] {
  const ends = sections.flatMap(({ depth }) => (depth === null ? [] : [depth.fromMm, depth.toMm]));
  const bandEnds = cuts.flatMap(({ bands }) => bands.flatMap(({ depth }) => depth ?? []));
  const endless = sections.some(({ depth }) => depth === null)
    ? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
    : [];
  const all = [...ends, ...bandEnds, ...endless].sort((a, b) => a - b);
  const stops = all.filter((mm, i) => i === 0 || mm - (all[i - 1] as number) > roundMm);
  return stops.slice(1).map((toMm, i) => ({ fromMm: stops[i] as number, toMm }));
}

/** The layer that holds a depth, null in free air; at an end, the deeper of two. */
export const layerAt = (layers: readonly Layer[], mm: number): Layer | null =>
  layers.find(({ fromMm, toMm }) => fromMm <= mm && mm < toMm) ?? null;

/**
 * Depths at which to look at a layer: just inside its ends, at eighths of a cutter's radius and finer as far as a fillet
 * can reach from them, and in the middle.
 */
export function depthsOf({ fromMm, toMm }: DepthRange, radiusMm: number): number[] {
  const steps = [
    0.01,
    radiusMm / 32,
    ...Array.from({ length: 8 }, (_, i) => ((i + 1) * radiusMm) / 8),
    1.05 * radiusMm,
  ];
  const middle = Number.isFinite(fromMm)
    ? Number.isFinite(toMm)
      ? (fromMm + toMm) / 2
      : fromMm + 2 * radiusMm
    : toMm - 2 * radiusMm;
  const depths = [
    Number.isFinite(middle) ? middle : 0,
    ...steps.map((mm) => fromMm + mm),
    ...steps.map((mm) => toMm - mm),
  ];
  return [...new Set(depths.filter((mm) => mm > fromMm && mm < toMm))].sort((a, b) => a - b);
}
