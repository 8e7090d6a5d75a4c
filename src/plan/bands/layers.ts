import type { Region } from '../../geometry/plane/loop.ts';
import { loopsOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import type { Casting, DepthRange, Section } from '../../job/casting.ts';
import type { BandCut } from './cut-band.ts';
import { metalOf } from './metal.ts';
import { toleranceMm } from './tolerance.ts';

/** A section and what is cut from it, its bands in order of depth. */
interface CutIn<Band> {
  readonly section: Section;
  readonly bands: readonly Band[];
}

export type SectionCut = CutIn<BandCut>;

/** A section after the cut, layer by layer in order of depth; `cut` null where it stays as it was. */
interface DepthLayer<Band> {
  readonly depth: DepthRange | null;
  readonly cut: Band | null;
}

interface OfDepth {
  readonly depth: DepthRange | null;
}

/** The bands of a section with the ranges between them that are left alone. */
export function layersOf<Band extends OfDepth>({ section, bands }: CutIn<Band>): DepthLayer<Band>[] {
  const { depth } = section;
  if (depth === null || bands.length === 0) return [{ depth, cut: bands[0] ?? null }];
  const layers: DepthLayer<Band>[] = [];
  let fromMm = depth.fromMm;
  for (const cut of bands) {
    const range = cut.depth ?? depth;
    if (range.fromMm > fromMm) layers.push({ depth: { fromMm, toMm: range.fromMm }, cut: null });
    layers.push({ depth: range, cut });
    fromMm = range.toMm;
  }
  return fromMm < depth.toMm ? [...layers, { depth: { fromMm, toMm: depth.toMm }, cut: null }] : layers;
}

/** The casting as the cut leaves it: cut bands as sections of their own under the old name, all else as it was. */
export const castingAfter = (casting: Casting, cuts: readonly SectionCut[]): Casting =>
  withLayers(casting, cuts, (cut) =>
    layersOf(cut).map(({ depth, cut: band }) => ({ depth, loops: band === null ? null : loopsOf(band.left) })),
  );

/** A section over one range of its depth; its own outline where `loops` is null. */
export interface LayerLeft {
  readonly depth: DepthRange | null;
  readonly loops: Region | null;
}

/** A casting of which each section that is cut stands as layers of its own under the old name. */
export function withLayers<Band>(
  casting: Casting,
  cuts: readonly CutIn<Band>[],
  layersLeft: (cut: CutIn<Band>) => readonly LayerLeft[],
): Casting {
  const sections = casting.sections.flatMap((section) => {
    const made = cuts.find((cut) => cut.section === section);
    return made === undefined ? [section] : layersLeft(made).flatMap((layer) => sectionOf(section, layer));
  });
  return { ...casting, sections };
}

function sectionOf(section: Section, { depth, loops }: LayerLeft): Section[] {
  const whole = section.whole ?? section.depth;
  const layer = { ...section, depth, ...(whole && { whole }) };
  if (loops === null) return [layer];
  return loops.length === 0 ? [] : [{ ...layer, loops }];
}

/** Metal over a range of depth; polygons in the joint frame. */
export interface MetalLayer {
  readonly depth: DepthRange;
  readonly metal: Polygons;
}

/** A layer of one section as the plan leaves it. */
export interface SectionLayer extends MetalLayer {
  readonly section: Section;
}

/** Sections without depth stand at every depth that any other could have. */
export const everywhere: DepthRange = { fromMm: -1e6, toMm: 1e6 };

/** Every section of a casting as planned, layer by layer. */
export function sectionLayers({ sections }: Casting, cuts: readonly SectionCut[]): SectionLayer[] {
  return sections.flatMap((section) => {
    const whole = metalOf(section.loops, toleranceMm, 'outside');
    const cut = cuts.find((one) => one.section === section) ?? { section, bands: [] };
    return layersOf(cut).map((layer) => ({
      section,
      depth: layer.depth ?? everywhere,
      metal: layer.cut?.left ?? whole,
    }));
  });
}
