import { circleLoop, type Loop, polygonLoop, type Region } from '../../src/geometry/plane/loop.ts';
import { type Vec, vec } from '../../src/geometry/plane/vec.ts';
import type { Casting, DoNotCut, Hole, HoleKind, Hollow, Section, WallReading } from '../../src/job/casting.ts';
import type { Clearances, Fit, HolePair, Job } from '../../src/job/job.ts';
import { type Leg, motionBetween, type Position } from '../../src/job/path.ts';

/**
 * Jobs as the reader would hand them on, made from as little as a test needs to say: points are [x, y], depths
 * [from, to], turns degrees, lengths mm, and everything left out is harmless.
 *
 *   jobOf({
 *     fixed: castingOf({ sections: [{ id: 'rib', depth: [12, 90], loops: [box(0, 0, 40, 8)] }], holes: [dowel('D1', [-150, 0], 9)] }),
 *     moving: castingOf({ holes: [dowel('P1', [-150, 0])] }),
 *     dowels: [['D1', 'P1']],
 *     offerUp: [{ standOff: 50, turn: 20 }, { standOff: 14, turn: 20 }, { standOff: 14 }, {}],
 *   })
 */
type Point = readonly [x: number, y: number];
type Depth = readonly [from: number, to: number] | null;

const at = ([x, y]: Point): Vec => vec(x, y);
const depthOf = (depth: Depth) => depth && { fromMm: depth[0], toMm: depth[1] };

/** A rectangle between two corners. */
export const box = (x0: number, y0: number, x1: number, y1: number): Loop =>
  polygonLoop([vec(x0, y0), vec(x1, y0), vec(x1, y1), vec(x0, y1)]);

export const disc = (x: number, y: number, radius: number): Loop => circleLoop(vec(x, y), radius);

/** A loop in part-file notation: [x, y] or [x, y, bulge]. */
export const outline = (...points: readonly (readonly [x: number, y: number, bulge?: number])[]): Loop => ({
  kind: 'path',
  vertices: points.map(([x, y, bulge = 0]) => ({ x, y, bulge })),
});

/** A piece of a ring about (x, y) between two radii, from one angle to another (degrees, anticlockwise). */
export function ringPiece(inner: number, outer: number, fromDeg: number, toDeg: number, [x, y]: Point = [0, 0]): Loop {
  const bulge = Math.tan(((toDeg - fromDeg) * Math.PI) / 720);
  const on = (radius: number, deg: number) => {
    const rad = (deg * Math.PI) / 180;
    return [x + radius * Math.cos(rad), y + radius * Math.sin(rad)] as const;
  };
  const corners = [on(outer, fromDeg), on(outer, toDeg), on(inner, toDeg), on(inner, fromDeg)] as const;
  return outline([...corners[0], bulge], corners[1], [...corners[2], -bulge], corners[3]);
}

type SectionSpec = Partial<Omit<Section, 'depth'>> & { readonly depth?: Depth };

/** By default a 10 mm square at the origin, 10 deep, traced to ± 0.5, not to be cut. */
export const sectionOf = ({ depth = [0, 10], ...rest }: SectionSpec = {}): Section => ({
  id: 'body',
  mayCut: false,
  loops: [box(-5, -5, 5, 5)],
  traceErrorMm: 0.5,
  depthErrorMm: 1,
  gotBy: null,
  traceErrorStated: true,
  note: null,
  ...rest,
  depth: depthOf(depth),
});

type HoleSpec = Partial<Omit<Hole, 'id' | 'at' | 'depth'>> & {
  readonly id: string;
  readonly at: Point;
  readonly depth?: Depth;
};

export const holeOf = ({ at: place, depth = null, ...rest }: HoleSpec): Hole => ({
  kind: 'bolt',
  diameterMm: null,
  proudMm: 0,
  proudStated: true,
  thread: null,
  keepWallMm: null,
  mayBreak: false,
  ...rest,
  depth: depthOf(depth),
  at: at(place),
});

/** A dowel (`proudMm` over 0) or its hole. */
export const dowel = (id: string, place: Point, proudMm = 0, diameterMm: number | null = null): Hole =>
  holeOf({ id, at: place, kind: 'dowel', proudMm, diameterMm });

export const tapped = (id: string, place: Point, thread: string | null = 'M12x1.75'): Hole =>
  holeOf({ id, at: place, kind: 'tapped', thread });

/** A clearance hole; `kind` for the odd ones. */
export const boltHole = (id: string, place: Point, diameterMm: number | null = null, kind: HoleKind = 'bolt'): Hole =>
  holeOf({ id, at: place, kind, diameterMm });

type HollowSpec = Partial<Omit<Hollow, 'depth'>> & { readonly depth?: Depth };
type DoNotCutSpec = Partial<Omit<DoNotCut, 'depth'>> & { readonly depth?: Depth };

export interface CastingSpec
  extends Partial<Omit<Casting, 'sections' | 'holes' | 'hollows' | 'doNotCut' | 'wallReadings' | 'traced'>> {
  readonly sections?: readonly SectionSpec[];
  readonly holes?: readonly Hole[];
  readonly hollows?: readonly HollowSpec[];
  readonly doNotCut?: readonly DoNotCutSpec[];
  readonly wallReadings?: readonly (Partial<Omit<WallReading, 'at'>> & { readonly at: Point })[];
  readonly traced?: { readonly depth?: Depth; readonly loops: Region } | null;
}

/** By default one harmless section, seen looking at its own face, of no stated material. */
export function castingOf(spec: CastingSpec = {}): Casting {
  const { sections = [{}], holes = [], hollows = [], doNotCut = [], wallReadings = [], traced = null, ...rest } = spec;
  return {
    file: `${rest.name ?? 'part'}.part.json`,
    name: 'part',
    viewedFrom: 'face',
    mirrored: false,
    units: 'mm',
    material: null,
    castingNumber: null,
    ...rest,
    sections: sections.map(sectionOf),
    holes,
    hollows: hollows.map(({ depth = null, ...hollow }, i) => ({
      id: `hollow-${i + 1}`,
      loops: [disc(0, 0, 1)],
      keepWallMm: null,
      traceErrorMm: 0.5,
      ...hollow,
      depth: depthOf(depth),
    })),
    doNotCut: doNotCut.map(({ depth = null, ...keep }, i) => ({
      id: `keep-${i + 1}`,
      loops: [disc(0, 0, 1)],
      ...keep,
      depth: depthOf(depth),
    })),
    wallReadings: wallReadings.map(({ at: place, ...reading }) => ({
      depthMm: 10,
      wallMm: 8,
      errorMm: 0.5,
      ...reading,
      at: at(place),
    })),
    traced: traced && { depth: depthOf(traced.depth ?? null), loops: traced.loops },
  };
}

/** A position of the way in; all zero is home. */
export interface PositionSpec {
  readonly standOff?: number;
  readonly turn?: number;
  readonly shift?: Point;
}

const positionOf = ({ standOff = 0, turn = 0, shift = [0, 0] }: PositionSpec): Position => ({
  standOffMm: standOff,
  turnRad: (turn * Math.PI) / 180,
  shift: at(shift),
});

/** The legs through positions in order. */
export function legsOf(offerUp: readonly PositionSpec[]): Leg[] {
  const positions = offerUp.map(positionOf);
  return positions.slice(1).map((to, i) => {
    const from = positions[i] as Position;
    const motion = motionBetween(from, to);
    if (motion === null) throw new Error(`leg ${i + 1} has no single motion: add a position`);
    return { from, to, motion };
  });
}

type IdPair = readonly [fixed: string, moving: string];

export interface JobSpec extends Partial<Omit<Fit, 'axis' | 'dowels' | 'bolts' | 'legs' | 'clearance'>> {
  readonly fixed?: Casting;
  readonly moving?: Casting;
  readonly rotating?: readonly Casting[];
  readonly axis?: Point;
  readonly dowels?: readonly IdPair[];
  readonly bolts?: readonly IdPair[];
  readonly offerUp?: readonly PositionSpec[];
  /** One figure for home and way in (rotating stays 4), or each. */
  readonly clearance?: number | Partial<Clearances>;
}

/** By default home only, nothing paired, axis at the fixed drawing's origin, 2 mm asked. */
export function jobOf(spec: JobSpec = {}): Job {
  const {
    fixed = castingOf({ name: 'block' }),
    moving = castingOf({ name: 'housing' }),
    rotating = [],
    axis = [0, 0],
    dowels = [],
    bolts = [],
    offerUp = [],
    clearance = 2,
    ...stated
  } = spec;
  const pairOf = ([f, m]: IdPair): HolePair => ({ fixed: holeNamed(fixed, f), moving: holeNamed(moving, m) });
  const asked = clearancesOf(clearance);
  const fit: Fit = {
    file: 'job.fit.json',
    title: 'A job',
    units: 'mm',
    engagesAtMm: null,
    wander: null,
    depthMarginMm: asked.homeMm,
    cut: 'fixed',
    share: 0.5,
    cutter: null,
    cuttersMm: null,
    straight: false,
    minWallMm: null,
    registrationMm: null,
    nothingShares: false,
    axisHole: null,
    ...stated,
    axis: at(axis),
    dowels: dowels.map(pairOf),
    bolts: bolts.map(pairOf),
    legs: legsOf(offerUp),
    clearance: asked,
  };
  return { fit, fixed, moving, rotating };
}

function clearancesOf(clearance: number | Partial<Clearances>): Clearances {
  if (typeof clearance === 'number') return { homeMm: clearance, wayInMm: clearance, rotatingMm: 4 };
  const { homeMm = 2, wayInMm = homeMm, rotatingMm = 4 } = clearance;
  return { homeMm, wayInMm, rotatingMm };
}

function holeNamed({ name, holes }: Casting, id: string): Hole {
  const hole = holes.find((h) => h.id === id);
  if (hole === undefined) throw new Error(`${name} has no hole ${id}`);
  return hole;
}
