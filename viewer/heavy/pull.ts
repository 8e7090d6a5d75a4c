import type { LoopFile } from '../../src/files/part-file.ts';
import { type Vec, vec } from '../../src/geometry/plane/vec.ts';
import { carried, type Homography } from '../../src/intake/photo/homography.ts';
import { alongEdge, type XY, xyOf } from '../job/arc.ts';
import { at } from '../job/point-edits.ts';
import { type PulledOutline, pulledCircle, pulledPoints, type Sight } from './pull-outline.ts';

/** An outline to be pulled onto the edges of a picture. */
export interface PullInput {
  readonly picture: Blob;
  /** From the plane that was traced (mm, y up) to the upright picture's pixels. */
  readonly toPicture: Homography;
  readonly outline: LoopFile;
  readonly closed: boolean;
  /** Millimetres in one of the outline's units. */
  readonly mm: number;
}

/** More pixels round an outline than any edge is looked for in. */
const marginPx = 64;

/** Pulls an outline onto the contrast of a picture; null where it lies outside or the picture cannot be read. */
export async function pull(asked: PullInput): Promise<PulledOutline<LoopFile> | null> {
  const { outline, closed, mm, toPicture } = asked;
  const toPx = ([x, y]: XY): Vec | null => carried(toPicture, vec(x * mm, y * mm));
  const seen = placesOn(outline).flatMap((place) => toPx(place) ?? []);
  const sight = await sightOf(asked.picture, seen);
  if (sight === null) return null;
  const whole: Sight = { ...sight, toPx };
  return 'circle' in outline ? pulledCircle(whole, outline, mm) : pulledPoints(whole, outline, closed, mm);
}

/** Enough of an outline to say where it reaches in a picture. */
function placesOn(outline: LoopFile): XY[] {
  if (!('circle' in outline))
    return outline.flatMap((vertex, i) =>
      [0, 0.25, 0.5, 0.75].map((t) => alongEdge(xyOf(vertex), xyOf(at(outline, i + 1)), vertex[2] ?? 0, t)),
    );
  const [[x, y], r] = [outline.circle, outline.radius];
  return [
    [x - r, y],
    [x + r, y],
    [x, y - r],
    [x, y + r],
  ];
}

/** The pixels about some places, in grey, upright as the page shows them. */
async function sightOf(picture: Blob, places: readonly Vec[]): Promise<Omit<Sight, 'toPx'> | null> {
  const bitmap = await createImageBitmap(picture, { imageOrientation: 'from-image' });
  const [x, y] = [places.map((p) => p.x), places.map((p) => p.y)];
  const left = Math.max(0, Math.floor(Math.min(...x)) - marginPx);
  const top = Math.max(0, Math.floor(Math.min(...y)) - marginPx);
  const width = Math.min(bitmap.width, Math.ceil(Math.max(...x)) + marginPx) - left;
  const height = Math.min(bitmap.height, Math.ceil(Math.max(...y)) + marginPx) - top;
  if (!(width > 0 && height > 0)) return null;
  const canvas = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
  if (canvas === null) return null;
  canvas.drawImage(bitmap, -left, -top);
  bitmap.close();
  const { data } = canvas.getImageData(0, 0, width, height);
  // luma of ITU-R BT.601
  const grey = Uint8Array.from(
    { length: width * height },
    (_, k) =>
      0.299 * (data[4 * k] as number) + 0.587 * (data[4 * k + 1] as number) + 0.114 * (data[4 * k + 2] as number),
  );
  return { grey: { width, height, grey }, corner: vec(left, top) };
}
