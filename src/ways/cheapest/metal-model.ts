import { matingRule } from '../../clearance/passings.ts';
import { reachOf, type Stretch } from '../../clearance/shared-depth.ts';
import { treeOf } from '../../clearance/trees.ts';
import { nearestOnOutline } from '../../geometry/motion/nearest-point.ts';
import { vec } from '../../geometry/plane/vec.ts';
import { metalOnLeft } from '../../geometry/polygons/metal-on-left.ts';
import { offset } from '../../geometry/polygons/offset.ts';
import { polygonise } from '../../geometry/polygons/polygonise.ts';
import type { Polygons } from '../../geometry/polygons/polygons.ts';
import { areaMm2, loopsOf } from '../../geometry/polygons/polygons.ts';
import type { DepthRange, Section } from '../../job/casting.ts';
import { otherPart, type Part } from '../../job/part.ts';
import type { Joint } from '../../joint/joint.ts';
import { metalOf } from '../../plan/bands/metal.ts';
import { coversAxis, type RingCover, type Rings, ringCover } from './ring-cover.ts';

/** What would take metal off a section: a section of the other part, grown by the clearance, over depths of its own. */
export interface Tool {
  readonly cover: RingCover;
  /** Its depths as those of the section it meets: at stand-off 0 it stands over `-depth`. */
  readonly depth: DepthRange;
}

/** A section that may lose metal, in rings. */
export interface Target {
  readonly id: string;
  readonly mayCut: boolean;
  readonly depth: DepthRange;
  /** All of its metal, never too little. */
  readonly volumeMm3: number;
  readonly cover: RingCover;
  /** Square millimetres a radian of each ring. */
  readonly ringMm2: readonly number[];
  readonly tools: readonly Tool[];
  /** What stands at home by the clearance asked there, where that is more than on the way in. */
  readonly homeTools: readonly Tool[];
  /** +1 where the tools turn with the moving part, −1 where the section does. */
  readonly sense: 1 | -1;
}

/** Arcs are taken by chords within this, on the side that makes less metal go, mm. */
const arcsMm = 1e-3;

/** No ring is narrower, mm; and no more of them are made. */
const leastRingMm = 0.1;
const mostRings = 400;

/** The part that is cut as rings, with what sweeps through it; sections without depth take no part. */
export function metalModel(joint: Joint, part: Part): Target[] {
  const own = joint[part].sections.filter(hasDepth);
  const others = joint[otherPart(part)].sections.filter(hasDepth);
  const { wayInMm, homeMm } = joint.fit.clearance;
  const solids = own.map(({ loops }) => polygonise(loops, arcsMm, 'inside'));
  const grown = others.map((other) => grownBy(other, wayInMm));
  const rings = ringsOf(solids.flat(), grown.flat());
  if (rings.length < 2) return [];
  const covers = grown.map((polygons) => ringCover(polygons, rings));
  const homeCovers = homeMm > wayInMm ? others.map((other) => ringCover(grownBy(other, homeMm), rings)) : null;
  return own.map((section, i) => {
    const depths = others.map((other) => depthAgainst(joint, part, section, other));
    const toolsOf = (told: readonly RingCover[]): Tool[] =>
      told.map((cover, k) => ({ cover, depth: depths[k] as DepthRange }));
    return {
      id: section.id,
      mayCut: section.mayCut,
      depth: section.depth,
      volumeMm3: areaMm2(metalOf(section.loops, arcsMm, 'outside')) * (section.depth.toMm - section.depth.fromMm),
      cover: ringCover(solids[i] as Polygons, rings),
      ringMm2: rings.slice(1).map((r, k) => (r * r - (rings[k] as number) ** 2) / 2),
      tools: toolsOf(covers),
      homeTools: homeCovers === null ? [] : toolsOf(homeCovers),
      sense: part === 'fixed' ? 1 : -1,
    };
  });
}

type Deep = Section & { readonly depth: DepthRange };

const hasDepth = (section: Section): section is Deep => section.depth !== null;

const grownBy = ({ loops }: Section, byMm: number): Polygons =>
  byMm === 0 ? polygonise(loops, arcsMm, 'inside') : offset(metalOnLeft(loops), byMm, arcsMm, 'inside').polygons;

/** The depths of another section, lengthened so that it meets one where the check has the two share depth. */
function depthAgainst(joint: Joint, part: Part, section: Deep, other: Deep): DepthRange {
  const [own, tool] = [wholeOf(section), wholeOf(other)];
  const rule = matingRule(joint);
  if (part === 'fixed') return reachOf(tool, own, rule, 'as-measured');
  // the moving one's own metal is what it is: the other is lengthened in its stead
  const reach = reachOf(own, tool, rule, 'as-measured');
  return {
    fromMm: tool.depth.fromMm - (own.depth.fromMm - reach.fromMm),
    toMm: tool.depth.toMm + (reach.toMm - own.depth.toMm),
  };
}

const wholeOf = ({ depth, whole = depth, depthErrorMm }: Deep): Stretch => ({ depth, whole, depthErrorMm });

/** Rings over the radii that both the solids and what sweeps through them have. */
function ringsOf(solid: Polygons, tools: Polygons): Rings {
  const [a, b] = [radiiOf(solid), radiiOf(tools)];
  const [fromMm, toMm] = [Math.max(a.fromMm, b.fromMm), Math.min(a.toMm, b.toMm)];
  if (!(toMm > fromMm)) return [];
  const count = Math.max(1, Math.min(mostRings, Math.ceil((toMm - fromMm) / leastRingMm)));
  return Array.from({ length: count + 1 }, (_, i) => fromMm + ((toMm - fromMm) * i) / count);
}

/** From the point nearest to the axis to the farthest one; from the axis where it is in the metal. */
function radiiOf(polygons: Polygons): { fromMm: number; toMm: number } {
  const toMm = polygons.flat().reduce((most, p) => Math.max(most, Math.hypot(p.x, p.y)), 0);
  const { distanceMm } = nearestOnOutline(treeOf(loopsOf(polygons)), vec(0, 0));
  return { fromMm: coversAxis(polygons) ? 0 : distanceMm, toMm };
}
