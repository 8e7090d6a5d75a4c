import { type Doubt, doubt } from '../../clearance/verify/verify-doubt.ts';
import { OutlineShape } from '../../clearance/verify/verify-shape.ts';
import { type Vec, vec } from '../../geometry/plane/vec.ts';
import { loopsOf } from '../../geometry/polygons/polygons.ts';
import type { Casting, DepthRange, Section } from '../../job/casting.ts';
import type { Cutter } from '../../job/job.ts';
import type { PartCut } from '../part-cut.ts';

/** A cutter so much smaller than named must get there, of its radius: the search for its place is no finer. */
const smallerBy = 0.07;

/** Places looked at in each band, and for each the directions and distances its middle is tried in. */
const placesInBand = 40;
const directions = 40;
const distances = [0, 0.3, 0.6, 0.8, 0.9, 0.99] as const;
const heights = Array.from({ length: 41 }, (_, i) => (i - 20) / 20).sort((a, b) => Math.abs(a) - Math.abs(b));

/** A place this near to metal that stays is passed over, of the radius: a corner there is as narrow as the cutter. */
const besideMetal = 0.1;

interface ShapeInDepth {
  readonly depth: DepthRange | null;
  readonly shape: OutlineShape;
}

/**
 * Places that a plan has cut away, in `judged`, though no cutter gets there clear of the metal that stays as planned:
 * looked for at places in the cut, each by trying where the cutter could stand.
 */
export function cutterDoubts(judged: Casting, cut: PartCut, cutter: Cutter | null): Doubt[] {
  if (cutter === null) return [];
  const stays = cut.after.sections.map(shapeInDepth);
  const left = judged.sections.map(shapeInDepth);
  const radiusMm = cutter.radiusMm * (1 - smallerBy);
  return cut.sections.flatMap(({ id, bands }) =>
    bands.flatMap(({ depth, planned }): Doubt[] => {
      if (depth === null) return [];
      const shape = new OutlineShape(loopsOf(planned));
      const missed = placesIn(shape, depth).find(
        ({ at, z }) =>
          !isIn(left, at, z) &&
          !isIn(stays, at, z) &&
          stays.every((one) => !isAt(one, z) || one.shape.gapMm(at, 10) > besideMetal * cutter.radiusMm) &&
          !canStand(stays, at, z, radiusMm, cutter.nose),
      );
      if (missed === undefined) return [];
      const text = `The cutter does not get to a place of the cut in "${id}" at depth ${missed.z} clear of what must stay.`;
      return [doubt('cutter-reach', 'plan', text, { at: [missed.at.x, missed.at.y] })];
    }),
  );
}

const shapeInDepth = ({ depth, loops }: Section): ShapeInDepth => ({ depth, shape: new OutlineShape(loops) });

const isAt = ({ depth }: ShapeInDepth, z: number): boolean => depth === null || (depth.fromMm < z && z < depth.toMm);

const isIn = (shapes: readonly ShapeInDepth[], at: Vec, z: number): boolean =>
  shapes.some((one) => isAt(one, z) && one.shape.gapMm(at, 1) < 0);

/** Places spread over a region and its depth, the same each time (the additive recurrence of Roberts, 2018; from memory). */
export function placesIn(shape: OutlineShape, { fromMm, toMm }: DepthRange): { at: Vec; z: number }[] {
  const points = shape.stations.flatMap((runs, outline) => runs.map((run) => shape.pointAt(run, outline)));
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const [minX, minY] = [xs, ys].map((all) => all.reduce((a, b) => Math.min(a, b))) as [number, number];
  const [maxX, maxY] = [xs, ys].map((all) => all.reduce((a, b) => Math.max(a, b))) as [number, number];
  const places: { at: Vec; z: number }[] = [];
  for (let i = 1; places.length < placesInBand && i < 50 * placesInBand; i++) {
    const [u, v, w] = [0.8191725134, 0.6710436067, 0.5497004779].map((step) => (0.5 + i * step) % 1) as [
      number,
      number,
      number,
    ];
    const at = vec(minX + u * (maxX - minX), minY + v * (maxY - minY));
    if (shape.gapMm(at, 1) < 0) places.push({ at, z: fromMm + w * (toMm - fromMm) });
  }
  return places;
}

/** Whether a cutter that covers a place can stand anywhere clear of metal. */
function canStand(stays: readonly ShapeInDepth[], at: Vec, z: number, radiusMm: number, nose: Cutter['nose']): boolean {
  for (const height of nose === 'ball' ? heights : [0]) {
    const middleZ = z + height * radiusMm;
    const reachMm = radiusMm * Math.sqrt(1 - height * height);
    for (const part of distances) {
      for (let k = 0; k < (part === 0 ? 1 : directions); k++) {
        const turn = (2 * Math.PI * k) / directions;
        const middle = vec(at.x + part * reachMm * Math.cos(turn), at.y + part * reachMm * Math.sin(turn));
        if (stays.every((one) => isClear(one, middle, middleZ, radiusMm, nose))) return true;
      }
    }
  }
  return false;
}

function isClear(
  { depth, shape }: ShapeInDepth,
  middle: Vec,
  z: number,
  radiusMm: number,
  nose: Cutter['nose'],
): boolean {
  const offMm = depth === null ? 0 : Math.max(0, depth.fromMm - z, z - depth.toMm);
  const wideMm =
    nose === 'flat' ? (offMm === 0 ? radiusMm : 0) : Math.sqrt(Math.max(0, radiusMm * radiusMm - offMm * offMm));
  return wideMm === 0 || shape.gapMm(middle, wideMm + 1) >= wideMm;
}
