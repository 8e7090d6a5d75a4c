import type { PartDraft, PictureFile } from '../../../src/files/job-file.ts';
import type { LoopFile } from '../../../src/files/part-file.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { carried, chainedMaps, type Homography, inverseMap, weightAt } from '../../../src/intake/photo/homography.ts';
import type { PictureSetting } from '../../../src/intake/photo/picture-setting.ts';
import type { Units } from '../../../src/job/lengths.ts';
import type { PullInput } from '../../heavy/pull.ts';
import type { PulledOutline } from '../../heavy/pull-outline.ts';
import type { CameraPosition } from '../../heavy/set-straight.ts';
import type { Place } from '../../job/part-edits.ts';
import type { Beneath } from '../../stage/picture-under.ts';
import type { Extent } from '../../stage/view.ts';
import { behindMm, looksAtFace } from './asked-of-picture.ts';
import type { LoadedPicture } from './loaded-picture.ts';
import { statedError } from './stated-error.ts';
import type { OpenPicture } from './use-picture.ts';

/** A picture, set straight, that outlines are traced over. */
export interface OverPicture {
  readonly picture: PictureFile;
  readonly loaded: LoadedPicture;
  readonly setting: PictureSetting;
  /** Null where it is not known how far the camera was: then nothing is right but the plane of the touched points. */
  readonly camera: CameraPosition | null;
  /** What a place in the plane of the points is good to, in the part's units; null where that cannot be said. */
  readonly error: number | null;
  readonly strength: number;
  readonly pull: (asked: PullInput) => Promise<PulledOutline<LoopFile> | null>;
}

/** A picture as it can be traced over; null where it does not come to that. */
export function overPicture(
  units: Units,
  opened: OpenPicture | null,
  strength: number,
  pull: OverPicture['pull'],
): OverPicture | null {
  if (opened === null || strength === 0) return null;
  const { picture, loaded, set } = opened;
  if (loaded === null || set === null || !set.setting.ok) return null;
  const camera = set.camera.ok ? set.camera.value : null;
  return { picture, loaded, setting: set.setting.value, camera, error: statedError(set, units), strength, pull };
}

/** How a picture lies for one place: over the plane in which that is traced. */
interface ForPlace {
  readonly beneath: Beneath;
  /** From the plane traced to the picture's pixels. */
  readonly toPicture: Homography;
  /** How far that plane lies behind the touched points as the picture is shown, mm; 0 where the camera is not known. */
  readonly behindMm: number;
}

export function forPlace(over: OverPicture, part: PartDraft, place: Place | null): ForPlace {
  const { setting, loaded, camera, strength } = over;
  const wanted = place === null ? 0 : behindMm(part, over.picture, place, looksAtFace(part, setting.mirrored));
  const behind = camera !== null && camera.heightMm + wanted > 0 ? wanted : 0;
  const toPlane =
    camera === null || behind === 0 ? setting.fit.toPlane : chainedMaps(behindMap(camera, behind), setting.fit.toPlane);
  const beneath = { url: loaded.url, size: loaded.size, toPlane, strength };
  return { beneath, toPicture: inverseMap(toPlane), behindMm: behind };
}

/** The room a picture takes up on the plane; null where it reaches to the horizon, or nearly. */
export function pictureExtent({ setting, loaded }: OverPicture): Extent | null {
  const { width, height } = loaded.size;
  const { toPlane } = setting.fit;
  const corners = [vec(0, 0), vec(width, 0), vec(0, height), vec(width, height)].map((px) => carried(toPlane, px));
  const middle = weightAt(toPlane, vec(width / 2, height / 2));
  const isFar = corners.some(
    (at, i) => at === null || weightAt(toPlane, vec(i % 2 ? width : 0, i > 1 ? height : 0)) < middle / 4,
  );
  if (isFar) return null;
  const [x, y] = [corners.map((at) => at?.x ?? 0), corners.map((at) => at?.y ?? 0)];
  return { minX: Math.min(...x), maxX: Math.max(...x), minY: Math.min(...y), maxY: Math.max(...y) };
}

/** From where a place seems to be in the plane of the points to where it is, so far behind it; as `trueAtDepth`. */
function behindMap({ heightMm, foot }: CameraPosition, depthMm: number): Homography {
  const grow = (heightMm + depthMm) / heightMm;
  return [grow, 0, foot.x * (1 - grow), 0, grow, foot.y * (1 - grow), 0, 0, 1];
}
