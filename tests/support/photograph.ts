import { decode, encode } from 'jpeg-js';
import type { Vec } from '../../src/geometry/plane/vec.ts';
import type { GreyWindow } from '../../src/intake/photo/pull-to-edge.ts';
import { looksAt, normal, type Pinhole, seenInPlane } from './camera.ts';
import type { Random } from './random.ts';

/** What a plate with round holes looks like: light metal, dark holes. */
export interface Plate {
  readonly holes: readonly Vec[];
  readonly radiusMm: number;
}

const [metal, hole] = [170, 40];
const [samples, noise] = [4, 3];

/**
 * Photographs the plate: pixels near a hole hold the mean of 4 × 4 rays from the camera to the plane, all have noise of
 * 3 of 255, and the whole has been through a JPEG of quality 85.
 */
export function photograph(camera: Pinhole, plate: Plate, random: Random): GreyWindow {
  const { width, height } = camera;
  const clean = new Float32Array(width * height).fill(metal);
  for (const centre of plate.holes) paintHole(clean, camera, centre, plate.radiusMm);
  // noise drawn once and laid out at random starts: as good as new for every pixel, and quick
  const drawn = Float32Array.from({ length: 65_536 }, () => noise * normal(random));
  const data = new Uint8Array(4 * width * height);
  for (let row = 0; row < height; row += 1) {
    const start = random.whole(0, drawn.length - 1);
    for (let column = 0; column < width; column += 1) {
      const pixel = row * width + column;
      const grey = (clean[pixel] as number) + (drawn[(start + column) % drawn.length] as number);
      data.fill(Math.max(0, Math.min(255, Math.round(grey))), 4 * pixel, 4 * pixel + 4);
    }
  }
  return greyOf(decode(encode({ width, height, data }, 85).data, { useTArray: true, maxMemoryUsageInMB: 1024 }));
}

function paintHole(clean: Float32Array, camera: Pinhole, centre: Vec, radiusMm: number): void {
  const at = looksAt(camera);
  const { left, right, top, bottom } = boxRound(camera, centre, radiusMm);
  for (let row = top; row <= bottom; row += 1) {
    for (let column = left; column <= right; column += 1) {
      let inside = 0;
      for (let s = 0; s < samples * samples; s += 1) {
        const px = { x: column + ((s % samples) + 0.5) / samples, y: row + (Math.floor(s / samples) + 0.5) / samples };
        const p = at(px);
        if (Math.hypot(p.x - centre.x, p.y - centre.y) < radiusMm) inside += 1;
      }
      clean[row * camera.width + column] = metal + ((hole - metal) * inside) / (samples * samples);
    }
  }
}

function boxRound(camera: Pinhole, centre: Vec, radiusMm: number) {
  const rim = Array.from({ length: 16 }, (_, k) => {
    const angle = (k * Math.PI) / 8;
    const at = { x: centre.x + 1.1 * radiusMm * Math.cos(angle), y: centre.y + 1.1 * radiusMm * Math.sin(angle) };
    return seenInPlane(camera, at);
  });
  const [x, y] = [rim.map((p) => p.x), rim.map((p) => p.y)];
  return {
    left: Math.floor(Math.min(...x)),
    right: Math.ceil(Math.max(...x)),
    top: Math.floor(Math.min(...y)),
    bottom: Math.ceil(Math.max(...y)),
  };
}

function greyOf({ width, height, data }: { width: number; height: number; data: Uint8Array }): GreyWindow {
  return { width, height, grey: Uint8Array.from({ length: width * height }, (_, k) => data[4 * k] as number) };
}

/** The middle of the dark within `reachPx` of a place, by the weight of its darkness; pixel centres lie at halves. */
export function darkMiddle({ width, grey }: GreyWindow, near: Vec, reachPx: number): Vec {
  let [sum, x, y] = [0, 0, 0];
  for (let row = Math.floor(near.y - reachPx); row <= near.y + reachPx; row += 1) {
    for (let column = Math.floor(near.x - reachPx); column <= near.x + reachPx; column += 1) {
      const dark = Math.max(0, (metal + hole) / 2 + 40 - (grey[row * width + column] as number));
      sum += dark;
      x += dark * (column + 0.5);
      y += dark * (row + 0.5);
    }
  }
  return { x: x / sum, y: y / sum };
}
