import { mirrorPoint } from '../../src/geometry/plane/loop.ts';
import { apply, type Rigid, rigid } from '../../src/geometry/plane/rigid.ts';
import { rigidFit } from '../../src/geometry/plane/rigid-fit.ts';
import { distance, polar, type Vec, vec } from '../../src/geometry/plane/vec.ts';
import type { Random } from './random.ts';

type PointFile = [number, number] | [number, number, number];

export interface SoundPart {
  readonly format: 'fettle-part/1';
  readonly name: string;
  readonly units: 'mm' | 'in';
  readonly viewedFrom: 'face' | 'back';
  readonly traceError: number;
  readonly holes: readonly { id: string; kind: string; at: PointFile; diameter: number; proud?: number }[];
  readonly sections: readonly { id: string; depth: [number, number]; mayCut: boolean; loops: PointFile[][] }[];
}

export interface SoundFit {
  readonly format: 'fettle-fit/1';
  readonly units: 'mm';
  readonly fixed: string;
  readonly moving: string;
  readonly axis: PointFile;
  readonly dowels: readonly [string, string][];
  readonly bolts: readonly [string, string][];
  readonly offerUp: readonly { standOff: number; turn: number }[];
  readonly clearance: number;
}

/** A fit and its two parts, as their files have them. */
export interface SoundJob {
  readonly fit: SoundFit;
  readonly block: SoundPart;
  readonly housing: SoundPart;
}

/**
 * A job that goes together by design: everything of the housing that reaches past its face stays outside the block's
 * metal by a gap, seen from the axis, and the way in only slides along the axis and turns about it. Both parts are
 * drawn from either side, in either unit, the housing anyhow on its paper.
 */
export function soundJob(random: Random): SoundJob {
  const places = holePlaces(random);
  const outerMm = random.between(190, 210);
  const gapMm = random.between(4, 15);
  const skirtDeg = random.between(0, 360);
  const flanges = random.chance(0.5);
  const deepMm = random.between(30, 50);
  const faceMm = random.between(10, 14);
  const ribs = Array.from({ length: random.whole(2, 5) }, (_, i): Ring => {
    // the first stands behind the skirt at home, so that the parts do come near one another
    const deg = i === 0 ? skirtDeg : random.between(0, 360);
    return { id: `rib-${i + 1}`, depth: [faceMm, random.between(60, 90)], ring: [150, outerMm, deg - 3, deg + 3] };
  });
  const block: Ring[] = [
    ...(flanges ? ([{ id: 'face', depth: [0, faceMm], ring: [150, outerMm, 0, 40] }] as const) : []),
    ...ribs,
  ];
  const innerMm = outerMm + gapMm;
  const housing: Ring[] = [
    ...(flanges ? ([{ id: 'flange', depth: [0, 14], ring: [140, outerMm - 3, 2, 37] }] as const) : []),
    { id: 'skirt', depth: [-deepMm, 0], ring: [innerMm, innerMm + 6, skirtDeg - 20, skirtDeg + 20] },
    { id: 'lip', depth: [-deepMm, 14 - deepMm], ring: [innerMm, innerMm + 20, skirtDeg - 5, skirtDeg + 5] },
  ];
  const onPaper = rigid(random.between(-3, 3), vec(random.between(-300, 300), random.between(-300, 300)));
  const blockAt = rigid(0, vec(random.between(-200, 200), random.between(-200, 200)));
  const sides = [random.pick(['face', 'back'] as const), random.pick(['face', 'back'] as const)] as const;
  const units = [random.pick(['mm', 'in'] as const), random.pick(['mm', 'in'] as const)] as const;
  const fixedPen: Pen = { on: blockAt, mirrored: sides[0] === 'back', units: units[0] };
  const movingPen: Pen = { on: onPaper, mirrored: sides[1] === 'face', units: units[1] };
  const turn = random.pick([-1, 1]) * random.between(8, 35);
  const standOff = random.between(10, 18);
  const nth = (name: string, count: number): string[] => Array.from({ length: count }, (_, i) => `${name}${i + 1}`);
  const bolts = places.length - 2;
  return {
    fit: {
      format: 'fettle-fit/1',
      units: 'mm',
      fixed: 'block.part.json',
      moving: 'housing.part.json',
      axis: pointOnPaper(vec(0, 0), fixedPen),
      dowels: [
        ['D1', 'P1'],
        ['D2', 'P2'],
      ],
      bolts: nth('B', bolts).map((id, i) => [id, `H${i + 1}`] as const satisfies [string, string]),
      offerUp: [
        { standOff: deepMm + random.between(5, 100), turn },
        { standOff, turn },
        { standOff, turn: 0 },
        { standOff: 0, turn: 0 },
      ],
      clearance: 2,
    },
    block: partOf('Block', sides[0], fixedPen, block, places, ['D', 'B']),
    housing: partOf('Housing', sides[1], movingPen, housing, places, ['P', 'H']),
  };
}

/** Two dowels, then three to five bolts: none near another, and no pattern that its mirror image comes near. */
function holePlaces(random: Random): Vec[] {
  for (;;) {
    const count = 2 + random.whole(3, 5);
    const places = Array.from({ length: count }, () =>
      polar(vec(0, 0), random.between(125, 185), random.between(-3.2, 3.2)),
    );
    const apart = places.every((a, i) => places.slice(i + 1).every((b) => distance(a, b) > 30));
    const mirrored = rigidFit(places.map((to) => ({ from: mirrorPoint(to), to })));
    if (apart && distance(places[0] as Vec, places[1] as Vec) > 150 && mirrored.rmsMm > 10) return places;
  }
}

/** A piece of a ring about the axis: radii in mm, angles in degrees. */
interface Ring {
  readonly id: string;
  readonly depth: readonly [number, number];
  readonly ring: readonly [inner: number, outer: number, fromDeg: number, toDeg: number];
}

/** How a part is put on paper. */
interface Pen {
  readonly on: Rigid;
  readonly mirrored: boolean;
  readonly units: 'mm' | 'in';
}

function partOf(
  name: string,
  viewedFrom: 'face' | 'back',
  pen: Pen,
  rings: readonly Ring[],
  places: readonly Vec[],
  [dowel, bolt]: readonly [string, string],
): SoundPart {
  const long = (mm: number): number => mm / mmIn(pen.units);
  return {
    format: 'fettle-part/1',
    name,
    units: pen.units,
    viewedFrom,
    traceError: long(0.5),
    holes: places.map((place, i) => ({
      id: i < 2 ? `${dowel}${i + 1}` : `${bolt}${i - 1}`,
      kind: i < 2 ? 'dowel' : 'bolt',
      at: pointOnPaper(place, pen),
      diameter: long(13),
    })),
    sections: rings.map(({ id, depth, ring }) => ({
      id,
      depth: [long(depth[0]), long(depth[1])],
      mayCut: true,
      loops: [loopOf(ring, pen)],
    })),
  };
}

function loopOf([inner, outer, fromDeg, toDeg]: Ring['ring'], pen: Pen): PointFile[] {
  const on = (radius: number, deg: number): PointFile =>
    pointOnPaper(polar(vec(0, 0), radius, (deg * Math.PI) / 180), pen);
  const bulge = (pen.mirrored ? -1 : 1) * Math.tan(((toDeg - fromDeg) * Math.PI) / 720);
  const [a, b, c, d] = [on(outer, fromDeg), on(outer, toDeg), on(inner, toDeg), on(inner, fromDeg)];
  return [[a[0], a[1], bulge], b, [c[0], c[1], -bulge], d];
}

function pointOnPaper(place: Vec, { on, mirrored, units }: Pen): PointFile {
  const put = apply(on, place);
  return [(mirrored ? 0 - put.x : put.x) / mmIn(units), put.y / mmIn(units)];
}

const mmIn = (units: 'mm' | 'in'): number => (units === 'in' ? 25.4 : 1);
