import type { Vec } from '../../src/geometry/plane/vec.ts';
import type { Random } from './random.ts';

/** A place in space over the plane: x right, y up, z out of the plane toward the camera; mm. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** A pinhole camera in space, by textbook vectors; it shares nothing with the code it judges. */
export interface Pinhole {
  readonly at: Place;
  /** What its axis goes through. */
  readonly aim: Vec;
  /** About its axis. */
  readonly rollRad: number;
  readonly focalPx: number;
  readonly width: number;
  readonly height: number;
  /** Radial distortion, r ↦ r·(1 + k·r²) with r in focal lengths. */
  readonly distortion?: number;
}

interface Axes {
  readonly right: Place;
  readonly down: Place;
  readonly ahead: Place;
}

const minus = (a: Place, b: Place): Place => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
const times = (a: Place, t: number): Place => ({ x: a.x * t, y: a.y * t, z: a.z * t });
const plus = (a: Place, b: Place): Place => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });
const inner = (a: Place, b: Place): number => a.x * b.x + a.y * b.y + a.z * b.z;
const outer = (a: Place, b: Place): Place => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});
const unit = (a: Place): Place => times(a, 1 / Math.sqrt(inner(a, a)));

function axesOf({ at, aim, rollRad }: Pinhole): Axes {
  const ahead = unit(minus({ ...aim, z: 0 }, at));
  const level = unit(outer(ahead, { x: 0, y: 1, z: 0 }));
  const below = outer(ahead, level);
  const [cos, sin] = [Math.cos(rollRad), Math.sin(rollRad)];
  return {
    ahead,
    right: plus(times(level, cos), times(below, sin)),
    down: plus(times(below, cos), times(level, -sin)),
  };
}

/** Where the camera sees a place, px. */
export function seenBy(camera: Pinhole, place: Place): Vec {
  const { right, down, ahead } = axesOf(camera);
  const ray = minus(place, camera.at);
  const [u, v] = [inner(ray, right) / inner(ray, ahead), inner(ray, down) / inner(ray, ahead)];
  const bent = 1 + (camera.distortion ?? 0) * (u * u + v * v);
  return { x: camera.width / 2 + camera.focalPx * u * bent, y: camera.height / 2 + camera.focalPx * v * bent };
}

export const seenInPlane = (camera: Pinhole, at: Vec): Vec => seenBy(camera, { ...at, z: 0 });

/** Where in the plane a pixel of a camera without distortion looks; one turn of the axes serves many pixels. */
export function looksAt(camera: Pinhole): (px: Vec) => Vec {
  const { right, down, ahead } = axesOf(camera);
  return (px) => {
    const across = times(right, (px.x - camera.width / 2) / camera.focalPx);
    const ray = plus(plus(ahead, across), times(down, (px.y - camera.height / 2) / camera.focalPx));
    const reach = -camera.at.z / ray.z;
    return { x: camera.at.x + ray.x * reach, y: camera.at.y + ray.y * reach };
  };
}

/** Between the camera's axis and the plane's normal. */
export const tiltOf = (camera: Pinhole): number => Math.acos(-axesOf(camera).ahead.z);

/** Somewhere over a plate 450 mm wide, the plate about filling 3000 px; up to `mostTiltRad` off square. */
export function randomCamera(random: Random, mostTiltRad = 0.5): Pinhole {
  const tilt = random.between(0, mostTiltRad);
  const round = random.between(0, 2 * Math.PI);
  const awayMm = random.between(700, 3000);
  const aim = { x: random.between(-20, 20), y: random.between(-20, 20) };
  return {
    aim,
    at: {
      x: aim.x + awayMm * Math.sin(tilt) * Math.cos(round),
      y: aim.y + awayMm * Math.sin(tilt) * Math.sin(round),
      z: awayMm * Math.cos(tilt),
    },
    rollRad: random.between(-Math.PI, Math.PI),
    focalPx: (awayMm * 3000) / 450,
    width: 3600,
    height: 2700,
  };
}

/** A normally distributed number (Box & Muller, 1958). */
export const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());
