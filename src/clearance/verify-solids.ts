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
  /** z where it stands at home, mm; null for every depth. The moving part's are lengthened. */
  readonly z: DepthRange | null;
  readonly traceErrorMm: number;
  readonly untraced: boolean;
}

/** Two solids that share depth on a stretch of a way. */
export interface Meeting extends Passing {
  readonly fixedSolid: Solid;
  readonly movingSolid: Solid;
  /** Counts from 1; null at home. */
  readonly leg: number | null;
  readonly stretch: Stretch;
}

const untracedName = 'not traced here';

/** The name, depth and shape of all that stands for a part; `shapeOf` makes a shape of a section's loops. */
function solidsOf(casting: Casting, zOf: (depth: DepthRange) => DepthRange, isRound = false): Solid[] {
  const sections = casting.sections
    .filter(({ loops }) => loops.length > 0)
    .map(({ id, depth, loops, traceErrorMm }) => ({
      name: id,
      shape: isRound ? new RoundShape(loops) : new OutlineShape(loops),
      z: depth && zOf(depth),
      traceErrorMm,
      untraced: false,
    }));
  const { traced } = casting;
  if (traced === null) return sections;
  const beyond = new OutlineShape(traced.loops, true);
  return [
    ...sections,
    { name: untracedName, shape: beyond, z: traced.depth && zOf(traced.depth), traceErrorMm: 0, untraced: true },
  ];
}

/** A depth lengthened at both ends, but never at an end on the mating face. */
function lengthened({ fromMm, toMm }: DepthRange, byMm: number): DepthRange {
  return { fromMm: fromMm === 0 ? 0 : fromMm - byMm, toMm: toMm === 0 ? 0 : toMm + byMm };
}

const intoFixed = ({ fromMm, toMm }: DepthRange): DepthRange => ({ fromMm: 0 - toMm, toMm: 0 - fromMm });

export const fixedSolids = (casting: Casting, lengthenedMm = 0): Solid[] =>
  solidsOf(casting, (depth) => intoFixed(lengthened(depth, lengthenedMm)));

export const movingSolids = (casting: Casting, lengthenedMm: number): Solid[] =>
  solidsOf(casting, (depth) => lengthened(depth, lengthenedMm));

export const rotatingSolids = (casting: Casting): Solid[] => solidsOf(casting, intoFixed, true);

/** Every two solids that share depth at home. */
export const meetingsAtHome = (fixed: readonly Solid[], moving: readonly Solid[]): Meeting[] =>
  meetingsOn(fixed, moving, atHome, null);

/** Every two solids that share depth on a leg of the way in. */
export const meetingsOnLegs = (legs: readonly Leg[], fixed: readonly Solid[], moving: readonly Solid[]): Meeting[] =>
  legs.flatMap((leg, i) => meetingsOn(fixed, moving, leg, i + 1));

function meetingsOn(fixed: readonly Solid[], moving: readonly Solid[], way: Way, leg: number | null): Meeting[] {
  return fixed.flatMap((f) =>
    moving.flatMap((m) => {
      const stretch = f.untraced && m.untraced ? null : sharedStretch(f.z, m.z, way);
      if (stretch === null) return [];
      return [{ fixedSolid: f, movingSolid: m, fixed: f.shape, moving: m.shape, way, leg, stretch }];
    }),
  );
}
