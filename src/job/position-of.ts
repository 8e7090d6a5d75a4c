import type { PositionFile } from '../files/fit-file.ts';
import { vec } from '../geometry/plane/vec.ts';
import { pointOf } from './lengths.ts';
import type { Position } from './path.ts';

/** A position as written, in mm and radians. */
export const positionOf = ({ standOff = 0, turn = 0, shift }: PositionFile, mm: number): Position => ({
  standOffMm: standOff * mm,
  turnRad: (turn * Math.PI) / 180,
  shift: shift === undefined ? vec(0, 0) : pointOf(shift, mm),
});

export const isHome = ({ standOffMm, turnRad, shift }: Position): boolean =>
  standOffMm === 0 && turnRad === 0 && shift.x === 0 && shift.y === 0;
