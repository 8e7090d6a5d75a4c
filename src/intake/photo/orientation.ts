import { type Vec, vec } from '../../geometry/plane/vec.ts';

/** How a picture's stored rows and columns lie when it is upright; the numbers are EXIF's. */
export type Orientation = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

/** In pixels. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/**
 * Pixel coordinates, here and everywhere: x right and y down from the picture's top left corner, so that the pixel of
 * column i and row j covers [i, i + 1] × [j, j + 1] and its centre is (i + 0.5, j + 0.5).
 */
export function toUpright(orientation: Orientation, { width, height }: PictureSize, { x, y }: Vec): Vec {
  const [right, below] = [width - x, height - y];
  switch (orientation) {
    case 1:
      return vec(x, y);
    case 2:
      return vec(right, y);
    case 3:
      return vec(right, below);
    case 4:
      return vec(x, below);
    case 5:
      return vec(y, x);
    case 6:
      return vec(below, x);
    case 7:
      return vec(below, right);
    case 8:
      return vec(y, right);
  }
}

/** Back to the stored pixels; `stored` is the size as stored. */
export const toStored = (orientation: Orientation, stored: PictureSize, upright: Vec): Vec =>
  toUpright(undone(orientation), uprightSize(orientation, stored), upright);

export const uprightSize = (orientation: Orientation, { width, height }: PictureSize): PictureSize =>
  orientation >= 5 ? { width: height, height: width } : { width, height };

/** The quarter turns undo one another; all others undo themselves. */
const undone = (orientation: Orientation): Orientation => (orientation === 6 ? 8 : orientation === 8 ? 6 : orientation);
