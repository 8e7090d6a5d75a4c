import { type Rigid, rigid, rotate } from '../geometry/plane/rigid.ts';
import { add, type Vec, vec } from '../geometry/plane/vec.ts';
import type { Part } from '../job/part.ts';
import type { Position } from '../job/path.ts';

/**
 * How the castings stand against their drawings: the outlines of the moving part, at home, by x ↦ R(turnRad)·x + shift in
 * the joint frame, and each section larger all round by its own offset, mm.
 */
export interface Correction {
  readonly shift: Vec;
  readonly turnRad: number;
  readonly offsetMm: (part: Part, section: string) => number;
}

export const asTraced: Correction = { shift: vec(0, 0), turnRad: 0, offsetMm: () => 0 };

export const motionOf = ({ turnRad, shift }: Correction): Rigid => rigid(turnRad, shift);

/** Where the outlines as drawn have to be put for the moving part to be where it truly is at a position. */
export const truly = ({ standOffMm, turnRad, shift }: Position, correction: Correction): Position => ({
  standOffMm,
  turnRad: turnRad + correction.turnRad,
  shift: add(rotate(rigid(turnRad, vec(0, 0)), correction.shift), shift),
});

/** One figure of a correction that is looked for. */
export type Unknown =
  | { readonly kind: 'shift-x' | 'shift-y' | 'turn' }
  | { readonly kind: 'offset'; readonly part: Part; readonly section: string };

/** The figures of a correction as a list, all in mm: a turn as what it moves a point `leverMm` from the crank. */
export interface Unknowns {
  readonly list: readonly Unknown[];
  readonly leverMm: number;
}

export const offsetKey = (part: Part, section: string): string => `${part} ${section}`;

export function correctionOf({ list, leverMm }: Unknowns, values: readonly number[]): Correction {
  const figureOf = (kind: Unknown['kind']): number => values[list.findIndex((one) => one.kind === kind)] ?? 0;
  const offsets = new Map(
    list.flatMap((one, i) =>
      one.kind === 'offset' ? [[offsetKey(one.part, one.section), values[i] ?? 0] as const] : [],
    ),
  );
  return {
    shift: vec(figureOf('shift-x'), figureOf('shift-y')),
    turnRad: figureOf('turn') / leverMm,
    offsetMm: (part, section) => offsets.get(offsetKey(part, section)) ?? 0,
  };
}
