import type { Region } from '../geometry/loop.ts';
import type { Casting, DepthRange } from '../model/casting.ts';
import type { Leg } from '../model/path.ts';
import type { Passing } from './verify-look.ts';
import { RoundShape } from './verify-round.ts';
import { OutlineShape, type Shape } from './verify-shape.ts';
import { atHome, type Stretch, sharedStretch, type Way } from './verify-way.ts';

/** A section, or all that nobody has traced, as the self-check looks at it. */
export interface Solid {
  readonly name: string;
  readonly shape: Shape;
  /** Where it stands along z at home, mm; null for every depth. An end on its own mating face is at 0. */
  readonly z: DepthRange | null;
  readonly traceErrorMm: number;
  readonly untraced: boolean;
}

/** Two solids that share depth on a stretch of a way, of which the second is lengthened. */
export interface Meeting extends Passing {
  readonly fixedSolid: Solid;
  readonly movingSolid: Solid;
  /** Counts from 1; null at home. */
  readonly leg: number | null;
  readonly stretch: Stretch;
}

export const fixedSolids = (casting: Casting): Solid[] => solidsOf(casting, intoFixed);

export const movingSolids = (casting: Casting): Solid[] => solidsOf(casting, (depth) => depth);

export const rotatingSolids = (casting: Casting): Solid[] =>
  solidsOf(casting, intoFixed, (loops, inverted) => new RoundShape(loops, inverted));

const intoFixed = ({ fromMm, toMm }: DepthRange): DepthRange => ({ fromMm: 0 - toMm, toMm: 0 - fromMm });

function solidsOf(
  { sections, traced }: Casting,
  zOf: (depth: DepthRange) => DepthRange,
  shapeOf: (loops: Region, inverted: boolean) => Shape = (loops, inverted) => new OutlineShape(loops, inverted),
): Solid[] {
  const solids = sections
    .filter(({ loops }) => loops.length > 0)
    .map(({ id, depth, loops, traceErrorMm }) => ({
      name: id,
      shape: shapeOf(loops, false),
      z: depth && zOf(depth),
      traceErrorMm,
      untraced: false,
    }));
  if (traced === null) return solids;
  const beyond = { shape: shapeOf(traced.loops, true), z: traced.depth && zOf(traced.depth) };
  return [...solids, { ...beyond, name: 'not traced here', traceErrorMm: 0, untraced: true }];
}

/** Every two solids that share depth at home. */
export const meetingsAtHome = (fixed: readonly Solid[], moving: readonly Solid[], marginMm: number): Meeting[] =>
  meetingsOn(fixed, moving, marginMm, atHome, null);

/** Every two solids that share depth on a leg of the way in. */
export const meetingsOnLegs = (
  legs: readonly Leg[],
  fixed: readonly Solid[],
  moving: readonly Solid[],
  marginMm: number,
): Meeting[] => legs.flatMap((leg, i) => meetingsOn(fixed, moving, marginMm, leg, i + 1));

function meetingsOn(
  fixed: readonly Solid[],
  moving: readonly Solid[],
  marginMm: number,
  way: Way,
  leg: number | null,
): Meeting[] {
  return fixed.flatMap((f) =>
    moving.flatMap((m) => {
      const stretch = f.untraced && m.untraced ? null : sharedStretch(f.z, m.z && lengthened(m.z, marginMm), way);
      if (stretch === null) return [];
      return [{ fixedSolid: f, movingSolid: m, fixed: f.shape, moving: m.shape, way, leg, stretch }];
    }),
  );
}

/** Lengthened at both ends, but never at an end on the mating face. */
const lengthened = ({ fromMm, toMm }: DepthRange, byMm: number): DepthRange => ({
  fromMm: fromMm === 0 ? 0 : fromMm - byMm,
  toMm: toMm === 0 ? 0 : toMm + byMm,
});

/** How an answer names a pair; no leg is home. */
export interface PairName {
  readonly fixedSection: string;
  readonly movingSection: string;
  readonly leg?: number;
}

export const isNamed = ({ leg, fixedSolid, movingSolid }: Meeting, name: PairName): boolean =>
  leg === (name.leg ?? null) && fixedSolid.name === name.fixedSection && movingSolid.name === name.movingSection;

export const pairText = ({ fixedSection, movingSection, leg }: PairName): string =>
  `"${fixedSection}" and "${movingSection}" ${leg === undefined ? 'at home' : `on leg ${leg}`}`;

export const nameOf = ({ leg, fixedSolid, movingSolid }: Meeting): PairName => ({
  fixedSection: fixedSolid.name,
  movingSection: movingSolid.name,
  ...(leg !== null && { leg }),
});
