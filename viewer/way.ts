import { type Leg, type Position, positionAlong } from '../src/job/path.ts';
import type { Way } from './heavy/questions.ts';

/** A place of the way in: the leg, counting from 1, how far along it, and where the moving part stands there. */
export interface Stop {
  readonly leg: number;
  readonly at: number;
  readonly position: Position;
}

/** Places count in pieces of the curve, so that every piece is as wide as any other; the last is home. */
export const lastStop = ({ curve }: Way): number => curve.pieces.length;

export function stopOf({ curve }: Way, legs: readonly Leg[], place: number): Stop | null {
  const index = Math.min(curve.pieces.length - 1, Math.floor(place));
  const piece = curve.pieces[index];
  const leg = piece && legs[piece.leg - 1];
  if (piece === undefined || leg === undefined) return null;
  const at = piece.fromAt + (place - index) * (piece.toAt - piece.fromAt);
  return { leg: piece.leg, at, position: positionAlong(leg, at) };
}

/** The place of a fraction of a leg. */
export function placeOnWay({ curve: { pieces } }: Way, leg: number, at: number): number {
  const index = pieces.findIndex((piece) => piece.leg === leg && at <= piece.toAt);
  const piece = pieces[index];
  if (piece === undefined) return pieces.length;
  return index + Math.max(0, (at - piece.fromAt) / (piece.toAt - piece.fromAt));
}
