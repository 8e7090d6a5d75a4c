import { offset } from '../geometry/offset.ts';
import { intersection } from '../geometry/polygon-engine.ts';
import { polygonise } from '../geometry/polygonise.ts';
import { areaMm2, outlinesOf, type Polygons } from '../geometry/polygons.ts';
import { round6, roundPoint6 } from '../geometry/rounding.ts';
import { vec } from '../geometry/vec.ts';
import type { DepthRange, Material, Section } from '../model/casting.ts';
import type { CutterAnswer, CutterEnd } from '../model/grind-answer.ts';
import type { Cutter } from '../model/job.ts';
import { allMm3, layerMm3, massOfG } from './amounts.ts';
import { type BandCut, toleranceMm } from './cut-band.ts';
import type { SectionCut } from './layers.ts';
import { filletReachMm, scallopMm } from './run-out.ts';

/** What the cutter makes of a plan: the metal it takes beyond need, the ends of its cuts, and where it cannot get in. */
export function cutterAnswer(
  cutter: Cutter,
  sections: readonly Section[],
  cuts: readonly SectionCut[],
  material: Material | null,
): CutterAnswer {
  const bands = cuts.flatMap((cut) => cut.bands);
  const [needed, taken] = [allMm3(bands.map(({ neededMm3 }) => neededMm3)), allMm3(bands.map(volumeMm3))];
  const extra = needed === null || taken === null ? null : Math.max(0, taken - needed);
  const { radiusMm, nose, stepoverMm } = cutter;
  return {
    radiusMm: round6(radiusMm),
    nose,
    scallopMm: stepoverMm === null || nose === 'flat' ? null : round6(scallopMm(radiusMm, stepoverMm)),
    neededVolumeMm3: needed && round6(needed),
    extraVolumeMm3: extra && round6(extra),
    extraMassG: massOfG(extra, material),
    ends: nose === 'flat' ? [] : cuts.flatMap((cut) => endsOf(cutter, sections, cut)),
    narrow: cuts.flatMap(narrowIn),
    covered: cuts.flatMap((cut) => coveredBy(sections, cut)),
  };
}

/** What is taken for clearance and cutter, whatever a straight edge takes on top. */
const volumeMm3 = ({ depth, planned, straight }: BandCut): number | null =>
  layerMm3(areaMm2(planned) - (straight?.extraMm2 ?? 0), depth);

const narrowIn = ({ section, bands }: SectionCut): CutterAnswer['narrow'] =>
  bands.flatMap(({ narrow }) =>
    narrow.map(({ at, gapMm }) => ({ section: section.id, at: roundPoint6(at), gapMm: round6(gapMm) })),
  );

/** Ends of cuts that no neighbouring band of the section goes on from. */
function endsOf(cutter: Cutter, sections: readonly Section[], { section, bands }: SectionCut): CutterEnd[] {
  return bands.flatMap((band) => {
    const { depth } = band;
    if (depth === null || section.depth === null) return [];
    const isOpen = (mm: number): boolean =>
      !bands.some((other) => other !== band && (other.depth?.fromMm === mm || other.depth?.toMm === mm));
    return [
      ...(isOpen(depth.fromMm) ? endOf(cutter, sections, section, band, depth.fromMm, 'face') : []),
      ...(isOpen(depth.toMm) ? endOf(cutter, sections, section, band, depth.toMm, 'back') : []),
    ];
  });
}

function endOf(
  { radiusMm, runOut }: Cutter,
  sections: readonly Section[],
  section: Section,
  band: BandCut,
  atMm: number,
  towards: CutterEnd['towards'],
): CutterEnd[] {
  const deepMm = band.takeOff?.mm ?? radiusMm;
  const fillet = {
    section: section.id,
    atMm: round6(atMm),
    towards,
    reachMm: round6(filletReachMm(radiusMm, deepMm)),
    at: roundPoint6(band.takeOff?.at ?? band.planned[0]?.[0] ?? vec(0, 0)),
  };
  const heightMm = round6(Math.min(deepMm, radiusMm));
  const isOwnEnd = section.depth?.fromMm === atMm || section.depth?.toMm === atMm;
  if (!isOwnEnd) {
    const left = runOut === 'leave';
    return [{ ...fillet, what: left ? 'left' : 'cut-past', mm: left ? heightMm : round6(radiusMm), against: null }];
  }
  const floor = sections.find(
    (other) => other !== section && standsAt(other, atMm, towards) && bite(band, other) !== null,
  );
  // open air lies before the mating face itself
  if (floor === undefined && atMm === 0) return [];
  if (floor === undefined) return [{ ...fillet, what: 'run-past', mm: round6(radiusMm), against: null }];
  return [{ ...fillet, what: 'against', mm: heightMm, against: floor.id }];
}

/** Whether a section goes on from a depth, toward the face or away from it. */
const standsAt = ({ depth }: Section, mm: number, towards: CutterEnd['towards']): boolean =>
  depth === null ||
  (towards === 'face' ? depth.fromMm < mm && mm <= depth.toMm : depth.fromMm <= mm && mm < depth.toMm);

/** Sections that stand between the mating face and a cut, over it: the largest of each. */
function coveredBy(sections: readonly Section[], { section, bands }: SectionCut): CutterAnswer['covered'] {
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

function bite({ planned }: BandCut, { loops }: Section): { areaMm2: number; at: [number, number] } | null {
  const over: Polygons = intersection(planned, polygonise(loops, toleranceMm, 'inside'));
  const at = offset(outlinesOf(over), -grazeMm / 2, toleranceMm, 'outside').polygons[0]?.[0];
  return at === undefined ? null : { areaMm2: round6(areaMm2(over)), at: roundPoint6(at) };
}
