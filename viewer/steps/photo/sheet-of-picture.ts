import type { Vec } from '../../../src/geometry/plane/vec.ts';
import type { Homography } from '../../../src/intake/photo/homography.ts';
import type { PictureSize } from '../../../src/intake/photo/orientation.ts';
import type { XY } from '../../job/arc.ts';
import { type Extent, toPane, toPlane, type View } from '../../stage/view.ts';

// While a picture is not set straight the pane shows it as a sheet of its own: so many mm for each of its pixels.
const mmPerPx = 0.1;

export const sheetMap: Homography = [mmPerPx, 0, 0, 0, -mmPerPx, 0, 0, 0, 1];
export const sheetMapBack: Homography = [1 / mmPerPx, 0, 0, 0, -1 / mmPerPx, 0, 0, 0, 1];

export const sheetExtent = ({ width, height }: PictureSize): Extent => ({
  minX: 0,
  maxX: width * mmPerPx,
  minY: -height * mmPerPx,
  maxY: 0,
});

/** Where a pixel of the picture is in the pane. */
export const pxInPane = (view: View, [x, y]: XY): Vec => toPane(view, { x: x * mmPerPx, y: -y * mmPerPx });

/** Which pixel of the picture a place of the pane is, to fractions of it. */
export function pxUnder(view: View, place: Vec): XY {
  const { x, y } = toPlane(view, place);
  return [x / mmPerPx, -y / mmPerPx];
}

export const isIn = ({ width, height }: PictureSize, [x, y]: XY): boolean =>
  x >= 0 && y >= 0 && x <= width && y <= height;

/** Pixels of the pane for one of the picture's. */
export const nearness = (view: View): number => view.pxPerMm * mmPerPx;
