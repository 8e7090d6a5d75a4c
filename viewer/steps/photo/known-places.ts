import type { PartDraft, PictureFile, TouchFile } from '../../../src/files/job-file.ts';
import type { XY } from '../../job/arc.ts';
import { photoWords as words } from '../../words/photo.ts';

/** The place that is touched next: a hole of the part, or one typed, as far as it is typed. */
export type NextPlace =
  | { readonly kind: 'hole'; readonly id: string }
  | { readonly kind: 'typed'; readonly at: XY | null };

/** The hole to be touched next: the one chosen, if it is still there and not touched; else the first that is not. */
export function nextPlace(part: PartDraft, { touches, squareOn }: PictureFile, chosen: NextPlace | null): NextPlace {
  const holes = part.holes ?? [];
  const isTouched = (id: string): boolean => touches.some(({ hole }) => hole === id);
  // of two points and their distance the first is the origin
  const typed: NextPlace = { kind: 'typed', at: squareOn && touches.length === 0 ? [0, 0] : null };
  if (chosen?.kind === 'typed') return chosen.at === null ? typed : chosen;
  if (chosen !== null && holes.some(({ id }) => id === chosen.id)) return chosen;
  const first = holes.find(({ id }) => !isTouched(id));
  return first === undefined ? typed : { kind: 'hole', id: first.id };
}

/** Whether the next point is known by its distance from the first alone. */
export const isByDistance = ({ touches, squareOn = false }: PictureFile): boolean =>
  squareOn && touches.length === 1 && touches[0]?.hole === undefined;

/** A touch of a place; null where it is not said yet where that is. */
export function touchOf(part: PartDraft, next: NextPlace, px: XY): TouchFile | null {
  if (next.kind === 'typed') return next.at === null ? null : { px: [...px], at: [...next.at] };
  const hole = part.holes?.find(({ id }) => id === next.id);
  return hole === undefined ? null : { px: [...px], at: [...hole.at], hole: hole.id };
}

/** What each touched point is called. */
export const namesOfTouches = (touches: readonly TouchFile[]): readonly string[] =>
  touches.map(({ hole }, i) => hole ?? words.placed(i + 1));
