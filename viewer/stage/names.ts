import { textWidthMm } from '../../src/drawing/scene/text-size.ts';
import { type Vec, vec } from '../../src/geometry/plane/vec.ts';
import type { Extent, Size } from './view.ts';

/** A name, how wide it is, and the place of the pane it stands beside; pixels. */
export interface Name {
  readonly widthPx: number;
  readonly at: Vec;
}

/** What the page writes names in, pixels. */
const letterPx = 13;
const besidePx = 7;

/** Never less than it will be; told once, as it is asked letter by letter. */
export const widthOfName = (text: string): number => textWidthMm(text, letterPx);

/** The room a line of text takes up, its base line beginning at a point. */
export const roomOfLine = (widthPx: number, { x, y }: Vec, sizePx = letterPx): Extent => ({
  minX: x - 2,
  maxX: x + widthPx + 2,
  minY: y - sizePx,
  maxY: y + 0.35 * sizePx,
});

/**
 * Where names begin that find room on a pane, those that come first before the others: each beside its place at one of
 * four corners, clear of what is taken and of the pane's edges. Null: it gives way.
 */
export function placedNames(names: readonly Name[], pane: Size, taken: readonly Extent[] = []): (Vec | null)[] {
  const all = [...taken];
  return names.map(({ widthPx, at: { x, y } }) => {
    if (!isOn(pane, { minX: x, maxX: x, minY: y, maxY: y })) return null;
    const [right, left] = [x + besidePx, x - besidePx - widthPx];
    const [above, below] = [y - besidePx, y + besidePx + 0.7 * letterPx];
    const corners = [vec(right, above), vec(left, above), vec(right, below), vec(left, below)];
    for (const corner of corners) {
      const room = roomOfLine(widthPx, corner);
      if (!isOn(pane, room) || all.some((other) => meet(room, other))) continue;
      all.push(room);
      return corner;
    }
    return null;
  });
}

const isOn = ({ width, height }: Size, { minX, maxX, minY, maxY }: Extent): boolean =>
  minX >= 0 && maxX <= width && minY >= 0 && maxY <= height;

const meet = (a: Extent, b: Extent): boolean =>
  a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
