import { type Rigid, rigid, rotate } from '../geometry/plane/rigid.ts';
import { add, type Vec, vec } from '../geometry/plane/vec.ts';
import type { Part } from '../job/part.ts';
import type { Position } from '../job/path.ts';

/** How the outlines of a part truly lie against its dowels: x ↦ R(turnRad)·x + shift, in the joint frame at home; mm. */
export interface Lie {
  readonly shift: Vec;
  readonly turnRad: number;
}

/**
 * How the castings stand against their drawings: how the outlines of each lie, and each section larger all round by its
 * own offset, mm. What was cut was laid out from the dowels, and lies where it should.
 */
export interface Correction {
  readonly fixed: Lie;
  readonly moving: Lie;
  readonly offsetMm: (part: Part, section: string) => number;
}

const square: Lie = { shift: vec(0, 0), turnRad: 0 };

export const asTraced: Correction = { fixed: square, moving: square, offsetMm: () => 0 };

export const motionOf = ({ turnRad, shift }: Lie): Rigid => rigid(turnRad, shift);

/** Where the outlines as drawn have to be put for the moving part to be where it truly is at a position. */
export const truly = ({ standOffMm, turnRad, shift }: Position, { moving }: Correction): Position => ({
  standOffMm,
  turnRad: turnRad + moving.turnRad,
  shift: add(rotate(rigid(turnRad, vec(0, 0)), moving.shift), shift),
});

/** One figure of a correction that is looked for. */
export type Unknown =
  | { readonly kind: 'shift-x' | 'shift-y' | 'turn'; readonly part: Part }
  | { readonly kind: 'offset'; readonly part: Part; readonly section: string }
  | { readonly kind: 'farther-on'; readonly moment: string };

/** The figures of a correction as a list, all in mm: a turn as what it moves a point `leverMm` from the crank. */
export interface Unknowns {
  readonly list: readonly Unknown[];
  readonly leverMm: number;
}

export const offsetKey = (part: Part, section: string): string => `${part} ${section}`;

export function correctionOf({ list, leverMm }: Unknowns, values: readonly number[]): Correction {
  const figureOf = (part: Part, kind: Unknown['kind']): number =>
    values[list.findIndex((one) => one.kind === kind && 'part' in one && one.part === part)] ?? 0;
  const lieOf = (part: Part): Lie => ({
    shift: vec(figureOf(part, 'shift-x'), figureOf(part, 'shift-y')),
    turnRad: figureOf(part, 'turn') / leverMm,
  });
  const offsets = new Map(
    list.flatMap((one, i) =>
      one.kind === 'offset' ? [[offsetKey(one.part, one.section), values[i] ?? 0] as const] : [],
    ),
  );
  return {
    fixed: lieOf('fixed'),
    moving: lieOf('moving'),
    offsetMm: (part, section) => offsets.get(offsetKey(part, section)) ?? 0,
  };
}
