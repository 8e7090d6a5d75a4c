import { type CameraPlace, cameraOf, focalOf, fromMiddle } from './camera.ts';
import { pictureMap } from './fit-plane.ts';
import type { Homography } from './homography.ts';
import type { PictureSize } from './orientation.ts';
import { found, type PhotoOutcome, refused } from './photo-fault.ts';
import type { PictureSetting } from './picture-setting.ts';
import { outOfRange } from './ranges.ts';
import { limitAlong } from './setting-error.ts';

/** What the camera's height is worked out from. `picture`: the upright picture's size, not cut to a part of it. */
export type HeightFrom =
  | { readonly kind: 'points' }
  | { readonly kind: 'focal'; readonly focal35Mm: number }
  | { readonly kind: 'height'; readonly heightMm: number };

export interface FoundCamera extends CameraPlace {
  /** ± limit of the height, as a share of it; null where it rests on what the camera or a person said. */
  readonly relativeError: number | null;
}

/** A height known no better than this says nothing worth having. */
const worstRelativeError = 0.3;

/**
 * Where the camera stood: from the points, where they were seen obliquely enough; else from the focal length in the
 * file, or from its height as measured. It takes the axis to go through the middle of the whole picture.
 */
export function findCamera(setting: PictureSetting, picture: PictureSize, from: HeightFrom): PhotoOutcome<FoundCamera> {
  const centred = fromMiddle(setting.fit.toPicture, picture);
  switch (from.kind) {
    case 'points':
      return cameraFromPoints(setting, picture, centred);
    case 'focal': {
      const faults = outOfRange({ focal35Mm: from.focal35Mm }, 'above 0');
      if (faults.length > 0) return refused(...faults);
      const focalPx = (from.focal35Mm * Math.hypot(picture.width, picture.height)) / Math.hypot(36, 24);
      return found({ ...cameraOf(centred, focalPx), relativeError: null });
    }
    case 'height':
      return cameraAtHeight(centred, picture, from.heightMm);
  }
}

function cameraFromPoints(
  setting: PictureSetting,
  picture: PictureSize,
  centred: Homography,
): PhotoOutcome<FoundCamera> {
  const place = cameraPlaceOf(centred);
  if (place === null) return refused({ code: 'too-square-on', tiltRad: 0, relativeError: null });
  const relativeError = heightError(setting, picture);
  return relativeError !== null && relativeError <= worstRelativeError
    ? found({ ...place, relativeError })
    : refused({ code: 'too-square-on', tiltRad: place.tiltRad, relativeError });
}

function cameraPlaceOf(centred: Homography): CameraPlace | null {
  const focalPx = focalOf(centred);
  return focalPx === null ? null : cameraOf(centred, focalPx);
}

/** The ± limit of the logarithm of the height, by differences in the eight numbers of the fit. */
function heightError(setting: PictureSetting, picture: PictureSize): number | null {
  const { inside } = setting.fit;
  const step = 1e-6;
  const heightWith = (index: number, by: number) => {
    const map = inside.map.map((value, i) => (i === index ? value + by : value));
    return cameraPlaceOf(fromMiddle(pictureMap({ ...inside, map }), picture))?.heightMm ?? Number.NaN;
  };
  const slopes = inside.map.map((_, i) => Math.log(heightWith(i, step) / heightWith(i, -step)) / (2 * step));
  return slopes.every(Number.isFinite) ? limitAlong(slopes, setting) : null;
}

/** Focal lengths tried, in diagonals of the picture: from a fish-eye's to a long telephoto's, each a tenth longer. */
const [shortestFocal, longestFocal, longer] = [0.2, 50, 1.1];

/**
 * The least focal length at which the camera stands that high, by halving: for a plane seen obliquely the height rises
 * with the focal length to a greatest and falls again, and the camera that sees squares as squares is on the rise.
 */
function cameraAtHeight(centred: Homography, picture: PictureSize, heightMm: number): PhotoOutcome<FoundCamera> {
  const faults = outOfRange({ heightMm }, 'above 0');
  if (faults.length > 0) return refused(...faults);
  const diagonal = Math.hypot(picture.width, picture.height);
  const below = (focalPx: number) => cameraOf(centred, focalPx).heightMm < heightMm;
  let high = shortestFocal * diagonal;
  while (below(high) && high < longestFocal * diagonal) high *= longer;
  let low = high / longer;
  if (below(high) || !below(low)) return refused({ code: 'no-such-height', heightMm });
  for (let halving = 0; halving < 50; halving += 1) {
    const middle = (low + high) / 2;
    if (below(middle)) low = middle;
    else high = middle;
  }
  return found({ ...cameraOf(centred, high), relativeError: null });
}
