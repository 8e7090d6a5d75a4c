import type { PartDraft, PictureFile } from '../../../src/files/job-file.ts';
import type { LoopFile } from '../../../src/files/part-file.ts';
import { usualErrors } from '../../../src/intake/photo/touch-noise.ts';
import { mmIn } from '../../../src/job/length-text.ts';
import type { PictureInput } from '../../heavy/set-straight.ts';
import { alongEdge, type XY, xyOf } from '../../job/arc.ts';
import { holderAt, type Place } from '../../job/part-edits.ts';
import { placeOfTouch } from '../../job/picture-edits.ts';
import { depthName } from '../../job/picture-names.ts';
import { at } from '../../job/point-edits.ts';
import type { LoadedPicture } from './loaded-picture.ts';

/** What the core is asked of a picture, in mm. */
export function askedOfPicture(part: PartDraft, picture: PictureFile, { size, head }: LoadedPicture): PictureInput {
  const mm = mmIn(part.units);
  const inMm = ([x, y]: XY) => ({ x: x * mm, y: y * mm });
  const { touches, squareOn = false, cameraAway, touchErrorPx, knownError } = picture;
  return {
    points: touches.map((touch) => ({
      px: { x: touch.px[0], y: touch.px[1] },
      at: inMm(placeOfTouch(part, touch)),
    })),
    squareOn,
    stated: {
      touchErrorPx: touchErrorPx ?? usualErrors.touchErrorPx,
      knownErrorMm: knownError === undefined ? usualErrors.knownErrorMm : knownError * mm,
    },
    size,
    head,
    cameraMm: cameraAway === undefined ? null : cameraAway * mm,
    outlined: part.sections.flatMap(({ loops }) => loops.flatMap(outermost)).map(inMm),
  };
}

/** Vertices, and the middles of edges, which a bent one puts further out. */
function outermost(loop: LoopFile): XY[] {
  if (!('circle' in loop))
    return loop.flatMap((vertex, i) => [
      xyOf(vertex),
      alongEdge(xyOf(vertex), xyOf(at(loop, i + 1)), vertex[2] ?? 0, 0.5),
    ]);
  const [[x, y], r] = [loop.circle, loop.radius];
  return [
    [x - r, y],
    [x + r, y],
    [x, y - r],
    [x, y + r],
  ];
}

/** Whether a camera looked at the mating face itself, and so sees what is deeper further off; else through the part. */
export const looksAtFace = ({ viewedFrom }: PartDraft, mirrored: boolean): boolean =>
  (viewedFrom === 'back') === mirrored;

/**
 * The depth from the mating face at which a place is traced: as said, else at its end that is nearer the camera, else
 * the points' own.
 */
export function tracedDepth(
  part: PartDraft,
  { planeDepth = 0, tracedDepths = {} }: PictureFile,
  place: Place,
  atFace: boolean,
): number {
  const holder = holderAt(part, place);
  const name = depthName(place.list, holder?.id ?? '');
  if (Object.hasOwn(tracedDepths, name)) return tracedDepths[name] as number;
  return holder?.depth?.[atFace ? 0 : 1] ?? planeDepth;
}

/** How far behind the plane of the touched points, seen from the camera, the outlines of a place lie (negative: before it), mm. */
export function behindMm(part: PartDraft, picture: PictureFile, place: Place, atFace: boolean): number {
  const deeper = tracedDepth(part, picture, place, atFace) - (picture.planeDepth ?? 0);
  return (atFace ? deeper : -deeper) * mmIn(part.units);
}
