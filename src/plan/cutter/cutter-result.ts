import { type Vec, vec } from '../../geometry/plane/vec.ts';
import { intersection } from '../../geometry/polygons/polygon-engine.ts';
import { polygonise } from '../../geometry/polygons/polygonise.ts';
import { areaMm2 } from '../../geometry/polygons/polygons.ts';
import type { Casting, DepthRange, Section } from '../../job/casting.ts';
import type { Cutter } from '../../job/job.ts';
import { massOfG } from '../../job/mass.ts';
import { layerMm3, sumKnown } from '../bands/amounts.ts';
import { coreOf } from '../bands/core.ts';
import type { BandCut } from '../bands/cut-band.ts';
import { commonDepth } from '../bands/depth-ranges.ts';
import type { SectionCut } from '../bands/layers.ts';
import { filletReachMm, scallopMm } from '../bands/run-out.ts';
import { toleranceMm } from '../bands/tolerance.ts';
import type { Bite } from './bite.ts';
import type { Fillet } from './fillets.ts';

/** What the cutter makes of the cuts of one part; mm. */
export interface CutterResult {
  readonly radiusMm: number;
  readonly nose: Cutter['nose'];
  /** Height of the ridges a ball leaves at the fit's stepover; null without one. */
  readonly scallopMm: number | null;
  /** What the clearance alone would take, and what the cutter takes beyond it. */
  readonly neededVolumeMm3: number | null;
  readonly extraVolumeMm3: number | null;
  readonly extraMassG: number | null;
  readonly ends: readonly CutterEnd[];
  /** Where it cannot get in from the side: the gap between metal that stays. */
  readonly narrow: readonly { readonly section: string; readonly at: Vec; readonly gapMm: number }[];
  /** Sections nearer the face that stand over a cut. */
  readonly covered: readonly Overhang[];
}

export interface CutterEnd {
  readonly section: string;
  /** Depth of the end from the face of the part that is cut, and which way the cut would go on from there. */
  readonly atMm: number;
  readonly towards: 'face' | 'back';
  /**
   * `cut-past`: the plan is lengthened by `mm`. `run-past`: the section ends here as traced; the cutter runs on by `mm`
   * into open air. `left`: the cutter stops here as the fit has it, and `against`: it is kept out by what must stay;
   * either leaves a fillet `mm` high standing where metal ought to go.
   */
  readonly what: 'cut-past' | 'run-past' | 'left' | 'against';
  readonly mm: number;
  /** How far along the depth the fillet reaches. */
  readonly reachMm: number;
  /** The section that keeps it out; null where that is the section's own metal, or nothing. */
  readonly against: string | null;
  readonly at: Vec;
}

export interface Overhang extends Bite {
  readonly section: string;
  readonly by: string;
}

/** What the cutter makes of a plan: the metal it takes beyond need, the ends of its cuts, and where it cannot get in. */
export function cutterResult(
  cutter: Cutter,
  { sections, material }: Casting,
  cuts: readonly SectionCut[],
  fillets: readonly Fillet[],
): CutterResult {
  const bands = cuts.flatMap((cut) => cut.bands);
  const [needed, taken] = [sumKnown(bands.map(({ neededMm3 }) => neededMm3)), sumKnown(bands.map(volumeMm3))];
  const extra = needed === null || taken === null ? null : Math.max(0, taken - needed);
  const { radiusMm, nose, stepoverMm } = cutter;
  return {
    radiusMm,
    nose,
    scallopMm: stepoverMm === null || nose === 'flat' ? null : scallopMm(radiusMm, stepoverMm),
    neededVolumeMm3: needed,
    extraVolumeMm3: extra,
    extraMassG: massOfG(extra, material),
    ends: cuts.flatMap((cut) => endsOf(cutter, cut, fillets)),
    narrow: cuts.flatMap(narrowIn),
    covered: cuts.flatMap((cut) => coveredBy(sections, cut)),
  };
}

/** What is taken for clearance and cutter, whatever a straight edge takes on top. */
const volumeMm3 = ({ depth, planned, straight }: BandCut): number | null =>
  layerMm3(areaMm2(planned) - (straight?.extraMm2 ?? 0), depth);

const narrowIn = ({ section, bands }: SectionCut): CutterResult['narrow'] =>
  bands.flatMap(({ narrow }) => narrow.map(({ at, gapMm }) => ({ section: section.id, at, gapMm })));

/** The open ends of a section's cuts, where the ball runs on, and where a fillet is left; in order of depth. */
function endsOf(cutter: Cutter, cut: SectionCut, fillets: readonly Fillet[]): CutterEnd[] {
  const own = fillets.filter(({ section }) => section === cut.section);
  const left = filletEnds(cutter, cut, own);
  const open = cutter.nose === 'flat' ? [] : openEnds(cutter, cut);
  const isLeft = (end: CutterEnd): boolean =>
    left.some(({ towards, atMm }) => towards === end.towards && atMm === end.atMm);
  return [...open.filter((end) => !isLeft(end)), ...left].sort((x, y) => x.atMm - y.atMm);
}

/** Ends of cuts that no neighbouring band of the section goes on from, as the ball takes them. */
function openEnds(cutter: Cutter, { section, bands }: SectionCut): CutterEnd[] {
  return bands.flatMap((band) => {
    const { depth } = band;
    if (depth === null || section.depth === null) return [];
    const isOpen = (mm: number): boolean =>
      !bands.some((other) => other !== band && (other.depth?.fromMm === mm || other.depth?.toMm === mm));
    return [
      ...(isOpen(depth.fromMm) ? openEnd(cutter, section, band, depth.fromMm, 'face') : []),
      ...(isOpen(depth.toMm) ? openEnd(cutter, section, band, depth.toMm, 'back') : []),
    ];
  });
}

function openEnd(
  { radiusMm, runOut }: Cutter,
  section: Section,
  band: BandCut,
  atMm: number,
  towards: CutterEnd['towards'],
): CutterEnd[] {
  const isOwnEnd = section.depth?.fromMm === atMm || section.depth?.toMm === atMm;
  // open air lies before the mating face itself; what stops within the section is told by its fillet
  if (isOwnEnd ? atMm === 0 : runOut === 'leave') return [];
  const what = isOwnEnd ? 'run-past' : 'cut-past';
  const reachMm = filletReachMm(radiusMm, band.takeOff?.mm ?? radiusMm);
  return [{ ...endAt(section, band, atMm, towards), what, mm: radiusMm, reachMm, against: null }];
}

const endAt = (section: Section, band: BandCut, atMm: number, towards: CutterEnd['towards']) => ({
  section: section.id,
  atMm,
  towards,
  at: band.takeOff?.at ?? band.planned[0]?.[0] ?? vec(0, 0),
});

/** The fillets of a section at either end of what is needed, each end told once. */
function filletEnds(
  { radiusMm, runOut, nose }: Cutter,
  { section, bands }: SectionCut,
  own: readonly Fillet[],
): CutterEnd[] {
  return bands.flatMap((band) =>
    band.pieces.flatMap(({ needed }) => {
      const { depth } = band;
      if (needed === null || depth === null) return [];
      const middle = (needed.fromMm + needed.toMm) / 2;
      return (['face', 'back'] as const).flatMap((towards): CutterEnd[] => {
        const isFace = towards === 'face';
        const end = isFace ? needed.fromMm : needed.toMm;
        // told of the band that the end lies in
        if (isFace ? end < depth.fromMm || end >= depth.toMm : end <= depth.fromMm || end > depth.toMm) return [];
        const here = own.filter(
          (fillet) =>
            commonDepth(fillet.depth, needed) !== null &&
            (fillet.depth.fromMm + fillet.depth.toMm) / 2 < middle === isFace,
        );
        const [first] = here.toSorted((a, b) => b.heightMm - a.heightMm);
        if (first === undefined) return [];
        const depths = here.flatMap((fillet) => [fillet.depth.fromMm, fillet.depth.toMm]);
        const mm = Math.min(radiusMm, first.heightMm);
        const against = here.map((fillet) => fillet.against).find((id) => id !== null) ?? null;
        return [
          {
            ...endAt(section, band, isFace ? depth.fromMm : depth.toMm, towards),
            at: first.metal[0]?.[0] ?? vec(0, 0),
            what: against === null && runOut === 'leave' && nose === 'ball' ? 'left' : 'against',
            mm,
            reachMm: Math.min(filletReachMm(radiusMm, mm), Math.max(...depths) - Math.min(...depths)),
            against,
          },
        ];
      });
    }),
  );
}

/** Sections that stand between the mating face and a cut, over it: the largest of each. */
function coveredBy(sections: readonly Section[], { section, bands }: SectionCut): Overhang[] {
  return sections
    .filter((other) => other !== section)
    .flatMap((other) => {
      const bites = bands
        .filter(({ depth }) => standsBefore(other.depth, depth))
        .flatMap((band) => bite(band, other) ?? []);
      const [worst] = bites.sort((a, b) => b.areaMm2 - a.areaMm2);
      return worst === undefined ? [] : [{ section: section.id, by: other.id, ...worst }];
    });
}

/** Nearer the face than a band: a part is worked on from its mating face, whichever side of it the metal stands. */
const standsBefore = (other: DepthRange | null, band: DepthRange | null): boolean =>
  other !== null && band !== null && other.toMm <= band.fromMm;

/** A cut grazes what it only touches. */
const grazeMm = 0.05;

function bite({ planned }: BandCut, { loops }: Section): Bite | null {
  const over = intersection(planned, polygonise(loops, toleranceMm, 'inside'));
  const at = coreOf(over, grazeMm);
  return at === null ? null : { areaMm2: areaMm2(over), at };
}
