import type { Region } from '../../geometry/plane/loop.ts';
import type { Casting, DepthRange } from '../../job/casting.ts';
import type { Leg } from '../../job/path.ts';
import type { Passing } from './verify-look.ts';
import { RoundShape } from './verify-round.ts';
import { OutlineShape, type Shape } from './verify-shape.ts';
import { atHome, type Stretch, sharedStretch, type Way } from './verify-way.ts';

/** A section, or all that nobody has traced, as the self-check looks at it. */
export interface Extrusion {
  readonly name: string;
  readonly shape: Shape;
  /** Where it stands along z at home, mm; null for every depth. An end on its own mating face is at 0. */
  readonly z: DepthRange | null;
  /** The same of the whole section it is a layer of, and ± of its ends that are no mating face, mm. */
  readonly wholeZ: DepthRange | null;
  readonly depthErrorMm: number;
  readonly traceErrorMm: number;
  readonly untraced: boolean;
}

/** Two extrusions that share depth on a stretch of a way, of which the second is lengthened. */
export interface Meeting extends Passing {
  readonly fixedExtrusion: Extrusion;
  readonly movingExtrusion: Extrusion;
  /** Counts from 1; null at home. */
  readonly leg: number | null;
  readonly stretch: Stretch;
}

export const fixedExtrusions = (casting: Casting): Extrusion[] => extrusionsOf(casting, intoFixed);

export const movingExtrusions = (casting: Casting): Extrusion[] => extrusionsOf(casting, (depth) => depth);

export const rotatingExtrusions = (casting: Casting): Extrusion[] =>
  extrusionsOf(casting, intoFixed, (loops, inverted) => new RoundShape(loops, inverted));

const intoFixed = ({ fromMm, toMm }: DepthRange): DepthRange => ({ fromMm: 0 - toMm, toMm: 0 - fromMm });

function extrusionsOf(
  { sections, traced }: Casting,
  zOf: (depth: DepthRange) => DepthRange,
  shapeOf: (loops: Region, inverted: boolean) => Shape = (loops, inverted) => new OutlineShape(loops, inverted),
): Extrusion[] {
  const extrusions = sections
    .filter(({ loops }) => loops.length > 0)
    .map(({ id, depth, whole, loops, traceErrorMm, depthErrorMm }) => ({
      name: id,
      shape: shapeOf(loops, false),
      z: depth && zOf(depth),
      wholeZ: depth && zOf(whole ?? depth),
      depthErrorMm,
      traceErrorMm,
      untraced: false,
    }));
  if (traced === null) return extrusions;
  const z = traced.depth && zOf(traced.depth);
  const beyond = { shape: shapeOf(traced.loops, true), z, wholeZ: z, depthErrorMm: 0, traceErrorMm: 0 };
  return [...extrusions, { ...beyond, name: 'not traced here', untraced: true }];
}

/** By how much the moving extrusion is lengthened, and whether ends that both lie on mating faces are spared. */
export interface Lengthening {
  readonly marginMm: number;
  readonly sparesFaces: boolean;
  readonly withDepthErrors: boolean;
}

/** Every two extrusions that share depth at home. */
export const meetingsAtHome = (fixed: readonly Extrusion[], moving: readonly Extrusion[], by: Lengthening): Meeting[] =>
  meetingsOn(fixed, moving, by, atHome, null);

/** Every two extrusions that share depth on a leg of the way in. */
export const meetingsOnLegs = (
  legs: readonly Leg[],
  fixed: readonly Extrusion[],
  moving: readonly Extrusion[],
  by: Lengthening,
): Meeting[] => legs.flatMap((leg, i) => meetingsOn(fixed, moving, by, leg, i + 1));

function meetingsOn(
  fixed: readonly Extrusion[],
  moving: readonly Extrusion[],
  by: Lengthening,
  way: Way,
  leg: number | null,
): Meeting[] {
  return fixed.flatMap((f) =>
    moving.flatMap((m) => {
      const stretch = f.untraced && m.untraced ? null : sharedStretch(f.z, m.z && lengthened(m, f, by), way);
      if (stretch === null) return [];
      return [{ fixedExtrusion: f, movingExtrusion: m, fixed: f.shape, moving: m.shape, way, leg, stretch }];
    }),
  );
}

/**
 * Where the moving extrusion counts as metal along z. Its near end looks at the fixed extrusion's end toward z = +∞,
 * its far end at the other; at z = 0 either is a mating face.
 */
function lengthened(moving: Extrusion, fixed: Extrusion, by: Lengthening): DepthRange {
  const [own, whole] = [moving.z as DepthRange, moving.wholeZ as DepthRange];
  const errorsMm = by.withDepthErrors ? [moving.depthErrorMm, fixed.depthErrorMm] : [0, 0];
  const byMm = (end: number, facing: number | undefined): number => {
    if (by.sparesFaces && end === 0 && facing === 0) return 0;
    const counting = [end, facing].map((z, i) => (z === 0 ? 0 : (errorsMm[i] as number)));
    return counting.reduce((sum, mm) => sum + mm, by.marginMm);
  };
  const insideMm = errorsMm.reduce((sum, mm) => sum + mm, by.marginMm);
  return {
    fromMm: Math.max(own.fromMm - insideMm, whole.fromMm - byMm(whole.fromMm, fixed.wholeZ?.toMm)),
    toMm: Math.min(own.toMm + insideMm, whole.toMm + byMm(whole.toMm, fixed.wholeZ?.fromMm)),
  };
}

/** How a result names a pair; no leg is home. */
export interface PairName {
  readonly fixedSection: string;
  readonly movingSection: string;
  readonly leg?: number;
}

export const isNamed = ({ leg, fixedExtrusion, movingExtrusion }: Meeting, name: PairName): boolean =>
  leg === (name.leg ?? null) &&
  fixedExtrusion.name === name.fixedSection &&
  movingExtrusion.name === name.movingSection;

export const pairText = ({ fixedSection, movingSection, leg }: PairName): string =>
  `"${fixedSection}" and "${movingSection}" ${leg === undefined ? 'at home' : `on leg ${leg}`}`;

export const nameOf = ({ leg, fixedExtrusion, movingExtrusion }: Meeting): PairName => ({
  fixedSection: fixedExtrusion.name,
  movingSection: movingExtrusion.name,
  ...(leg !== null && { leg }),
});
