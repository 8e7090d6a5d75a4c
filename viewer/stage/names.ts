import { textWidthMm } from '../../src/drawing/scene/text-size.ts';
import type { Vec } from '../../src/geometry/plane/vec.ts';
import type { Extent, Size } from './view.ts';

/** A name, and the place of the pane it stands beside; pixels. */
export interface Name {
  readonly text: string;
  readonly at: Vec;
}

/** What the page writes names in, pixels. */
const letterPx = 13;
const besidePx = 7;

/** The room a line of text takes up, its base line beginning at a point; never less than it will be. */
export const roomOfText = (text: string, { x, y }: Vec, sizePx = letterPx, bold = false): Extent => ({
  minX: x - 2,
  maxX: x + textWidthMm(text, sizePx, bold) + 2,
  minY: y - sizePx,
  maxY: y + 0.35 * sizePx,
});

/**
 * Where names begin that find room on a pane, those that come first before the others: each beside its place at one of
 * four corners, clear of what is taken and of the pane's edges. Null: it gives way.
 */
export function placedNames(names: readonly Name[], pane: Size, taken: readonly Extent[] = []): (Vec | null)[] {
  const all = [...taken];
  return names.map(({ text, at }) => {
    if (!isOn(pane, { minX: at.x, maxX: at.x, minY: at.y, maxY: at.y })) return null;
    const left = at.x - besidePx - textWidthMm(text, letterPx);
    const [right, above, below] = [at.x + besidePx, at.y - besidePx, at.y + besidePx + 0.7 * letterPx];
    const corners = [
      { x: right, y: above },
      { x: left, y: above },
      { x: right, y: below },
      { x: left, y: below },
    ];
    const free = corners.find((corner) => {
      const room = roomOfText(text, corner);
      return isOn(pane, room) && !all.some((other) => meet(room, other));
    });
    if (free === undefined) return null;
    all.push(roomOfText(text, free));
    return free;
  });
}

const isOn = ({ width, height }: Size, { minX, maxX, minY, maxY }: Extent): boolean =>
  minX >= 0 && maxX <= width && minY >= 0 && maxY <= height;

const meet = (a: Extent, b: Extent): boolean =>
  a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
