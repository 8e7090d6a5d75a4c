import { treeOf } from '../clearance/trees.ts';
import { outlinePoints, outwardNormal } from '../geometry/motion/outline-points.ts';
import { boxOfOutline } from '../geometry/motion/outline-tree.ts';
import { moveRegion, type Region } from '../geometry/plane/loop.ts';
import { cross, length } from '../geometry/plane/vec.ts';
import { metalOnLeft } from '../geometry/polygons/metal-on-left.ts';
import { offset } from '../geometry/polygons/offset.ts';
import { difference, intersection, union } from '../geometry/polygons/polygon-engine.ts';
import { loopsOf, outlinesOf, type Polygons, withoutSlivers } from '../geometry/polygons/polygons.ts';
import type { Casting, Section } from '../job/casting.ts';
import type { Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';
import { metalOf } from '../plan/bands/metal.ts';
import { toleranceMm } from '../plan/bands/tolerance.ts';
import { type Correction, motionOf } from './correction.ts';
import { sdOfLimit } from './equations.ts';
import { type Explanation, type Posterior, varianceAlong } from './solve.ts';

const arcsMm = 1e-3;

/** Offsets smaller than this change no line that a hand could follow, mm. */
const tellingMm = 0.02;

/**
 * The joint as the readings have it: the moving outlines where they truly lie, every outline as large as it truly is, and
 * tracing errors narrowed to what the readings leave of them, never widened. `asCut` is the joint with what has come off.
 */
export function jointExplained(joint: Joint, asCut: Joint, { correction, posterior }: Explanation): Joint {
  return {
    ...asCut,
    fixed: withSections(asCut.fixed, (section) => {
      const traced = joint.fixed.sections.find(({ id }) => id === section.id) ?? section;
      const loops = asItTrulyIs(traced.loops, section.loops, correction, section.id);
      return { ...section, loops, traceErrorMm: fixedErrorMm(posterior, section) };
    }),
    moving: withSections(asCut.moving, (section) => {
      const byMm = correction.offsetMm('moving', section.id);
      const grown = Math.abs(byMm) < tellingMm ? section.loops : loopsOf(resized(section.loops, byMm));
      const loops = moveRegion(grown, motionOf(correction.moving));
      return { ...section, loops, traceErrorMm: movingErrorMm(posterior, section) };
    }),
  };
}

const withSections = (casting: Casting, of: (section: Section) => Section): Casting => ({
  ...casting,
  sections: casting.sections.map(of),
});

const resized = (loops: Region, byMm: number): Polygons =>
  offset(metalOnLeft(loops), byMm, arcsMm, byMm < 0 ? 'inside' : 'outside').polygons;

/** Metal as it was cut, its surfaces as cast where they truly are: what was cut was laid out from the dowels, and stays. */
function asItTrulyIs(traced: Region, asCut: Region, { fixed, offsetMm }: Correction, section: string): Region {
  const byMm = offsetMm('fixed', section);
  const reachMm = Math.abs(byMm) + length(fixed.shift) + Math.abs(fixed.turnRad) * reachOf(traced);
  if (reachMm < tellingMm) return asCut;
  const cast = metalOf(traced, toleranceMm, 'outside');
  const left = metalOf(asCut, toleranceMm, 'outside');
  const truly = resized(moveRegion(traced, motionOf(fixed)), byMm);
  const cut = withoutFilms(difference(cast, left));
  const mouth = cut.length === 0 ? [] : offset(outlinesOf(cut), reachMm + filmMm, arcsMm, 'outside').polygons;
  return loopsOf(withoutFilms(union([...intersection(left, truly), ...difference(truly, union([...cast, ...mouth]))])));
}

/** What of an outline is thinner than this is of chords that do not fall on one another, mm. */
const filmMm = 5e-3;

const withoutFilms = (polygons: Polygons): Polygons =>
  withoutSlivers(withoutSlivers(polygons, 'inside', filmMm), 'outside', filmMm);

/** How far an outline goes from the axis, mm, or a little more. */
function reachOf(region: Region): number {
  const { minX, minY, maxX, maxY } = boxOfOutline(treeOf(region));
  return Math.hypot(Math.max(-minX, maxX), Math.max(-minY, maxY));
}

const offsetIndex = ({ unknowns }: Posterior, part: Part, section: string): number =>
  unknowns.list.findIndex((one) => one.kind === 'offset' && one.part === part && one.section === section);

/** What an outline wanders by, of its stated error, is half of its variance. */
const wanderMm2 = ({ tracedWithin2 }: Posterior, { traceErrorMm }: Section): number =>
  (tracedWithin2 * sdOfLimit(traceErrorMm) ** 2) / 2;

function fixedErrorMm(posterior: Posterior, section: Section): number {
  const i = offsetIndex(posterior, 'fixed', section.id);
  const mm2 = i < 0 ? 0 : posterior.covariance.get(i, i);
  return Math.min(section.traceErrorMm, 1.96 * Math.sqrt(mm2 + wanderMm2(posterior, section)));
}

const pointsApartMm = 10;

/** How far the outline of a moving section may yet lie from where it is put, the worst of its places, ± limit of 95 %. */
function movingErrorMm(posterior: Posterior, section: Section): number {
  const { unknowns } = posterior;
  const own = offsetIndex(posterior, 'moving', section.id);
  const tree = treeOf(section.loops);
  let most = 0;
  for (const { edge, point } of outlinePoints(tree, pointsApartMm)) {
    const normal = outwardNormal(tree, edge, point);
    const slopes = unknowns.list.map((one, i) => {
      if (one.kind === 'offset') return i === own ? 1 : 0;
      if (one.kind === 'farther-on' || one.part === 'fixed') return 0;
      return { 'shift-x': normal.x, 'shift-y': normal.y, turn: cross(point, normal) / unknowns.leverMm }[one.kind];
    });
    most = Math.max(most, varianceAlong(posterior, slopes));
  }
  return Math.min(section.traceErrorMm, 1.96 * Math.sqrt(most + wanderMm2(posterior, section)));
}
