import { distance, type Vec, vec } from '../../src/geometry/plane/vec.ts';
import { type FoundCamera, findCamera, type HeightFrom } from '../../src/intake/photo/camera-place.ts';
import { carried } from '../../src/intake/photo/homography.ts';
import { jpegHead } from '../../src/intake/photo/jpeg-head.ts';
import type { KnownPoint } from '../../src/intake/photo/known-point.ts';
import type { PictureSize } from '../../src/intake/photo/orientation.ts';
import { type PhotoFault, type PhotoOutcome, refused } from '../../src/intake/photo/photo-fault.ts';
import type { PictureSetting } from '../../src/intake/photo/picture-setting.ts';
import { setPicture } from '../../src/intake/photo/set-picture.ts';
import { setSquareOn } from '../../src/intake/photo/set-square-on.ts';
import { traceErrorMm } from '../../src/intake/photo/setting-error.ts';
import { tiltErrorMm } from '../../src/intake/photo/tilt-error.ts';
import type { StatedErrors } from '../../src/intake/photo/touch-noise.ts';

/** A picture to be set straight, all of it in mm and pixels of the upright picture. */
export interface PictureInput {
  readonly points: readonly KnownPoint[];
  readonly squareOn: boolean;
  readonly stated: StatedErrors;
  readonly size: PictureSize;
  /** The first bytes of its file, in which a JPEG says its focal length. */
  readonly head: Uint8Array;
  /** From the camera square to the plane as measured; null where nobody measured. */
  readonly cameraMm: number | null;
  /** Where the part has outlines: the error is told for those of them that the picture shows. */
  readonly outlined: readonly Vec[];
}

/** A camera, and what its place was worked out from. */
export interface CameraPosition extends FoundCamera {
  readonly by: HeightFrom['kind'];
}

/** How a picture lies, or why it cannot be said. */
export interface PictureSet {
  readonly setting: PhotoOutcome<PictureSetting>;
  readonly camera: PhotoOutcome<CameraPosition>;
  /** ± limit of a place touched as well as the points were, at the worst of them and of the outlines in the picture, mm. */
  readonly errorMm: number | null;
  /** What a lean of so much, which two points cannot show, would put wrong at the worst of them; null for other settings. */
  readonly lean: Lean | null;
}

export interface Lean {
  readonly reachMm: number;
  readonly oneDegreeMm: number | null;
  readonly twoDegreesMm: number | null;
}

/** Sets a picture straight and says all that follows from it. */
export function setStraight(asked: PictureInput): PictureSet {
  const setting = settingOf(asked);
  if (!setting.ok) return { setting, camera: refused(), errorMm: null, lean: null };
  const { value } = setting;
  const places = [...asked.points.map(({ at }) => at), ...asked.outlined.filter((at) => isSeen(value, asked.size, at))];
  const camera = cameraOf(value, asked);
  return {
    setting,
    camera,
    errorMm: traceErrorMm(value, places),
    lean: asked.squareOn ? leanOf(value, asked.size, places, camera.ok ? camera.value.heightMm : null) : null,
  };
}

function settingOf({ points, squareOn, stated }: PictureInput): PhotoOutcome<PictureSetting> {
  if (!squareOn) return setPicture(points, stated);
  const [first, second, third] = points;
  if (first === undefined || second === undefined || third !== undefined)
    return refused({ code: 'too-few-points', found: points.length, needed: 2 });
  return setSquareOn(first, second, stated);
}

function isSeen({ fit }: PictureSetting, { width, height }: PictureSize, at: Vec): boolean {
  const px = carried(fit.toPicture, at);
  return px !== null && px.x >= 0 && px.y >= 0 && px.x <= width && px.y <= height;
}

/** What was measured goes before what the points tell, and that before what the file says. */
function cameraOf(setting: PictureSetting, { cameraMm, size, head }: PictureInput): PhotoOutcome<CameraPosition> {
  const jpeg = jpegHead(head);
  const focal35Mm = jpeg.ok ? jpeg.value.focal35Mm : null;
  const ways: HeightFrom[] =
    cameraMm !== null
      ? [{ kind: 'height', heightMm: cameraMm }]
      : [{ kind: 'points' }, ...(focal35Mm === null ? [] : [{ kind: 'focal', focal35Mm } as const])];
  const faults: PhotoFault[] = [];
  for (const from of ways) {
    const found = findCamera(setting, size, from);
    if (found.ok) return { ok: true, value: { ...found.value, by: from.kind } };
    faults.push(...found.faults);
  }
  return refused(...faults);
}

const degree = Math.PI / 180;

function leanOf(
  { fit }: PictureSetting,
  { width, height }: PictureSize,
  places: readonly Vec[],
  cameraMm: number | null,
): Lean {
  const middle = carried(fit.toPlane, vec(width / 2, height / 2));
  const reachMm = middle === null ? 0 : Math.max(...places.map((at) => distance(at, middle)));
  const wrong = (tiltRad: number) => (cameraMm === null ? null : tiltErrorMm({ tiltRad, reachMm, cameraMm }));
  return { reachMm, oneDegreeMm: wrong(degree), twoDegreesMm: wrong(2 * degree) };
}
