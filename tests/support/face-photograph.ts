import { encode } from 'jpeg-js';
import type { LoopFile, PartFile } from '../../src/files/part-file.ts';
import type { Vec } from '../../src/geometry/plane/vec.ts';
import { type Orientation, toUpright } from '../../src/intake/photo/orientation.ts';
import { alongEdge, xyOf } from '../../viewer/job/arc.ts';
import { at } from '../../viewer/job/point-edits.ts';
import { looksAt, type Pinhole } from './camera.ts';

/** Metal of one shade in one plane; what lies nearer the camera comes first. */
export interface Sheet {
  /** Over the face, toward the camera. */
  readonly zMm: number;
  readonly grey: number;
  readonly covers: (place: Vec) => boolean;
}

const bench = 60;

/** What a camera sees of flat sheets, by rays from it; pixels where two shades meet hold the mean of 4 × 4 rays. */
export function photographOfSheets(camera: Pinhole, sheets: readonly Sheet[]): Uint8Array {
  const { width, height } = camera;
  const ray = looksAt(camera);
  const shade = (px: Vec): number => {
    const inFace = ray(px);
    const hit = sheets.find(({ zMm, covers }) => {
      const reach = (camera.at.z - zMm) / camera.at.z;
      return covers({
        x: camera.at.x + (inFace.x - camera.at.x) * reach,
        y: camera.at.y + (inFace.y - camera.at.y) * reach,
      });
    });
    return hit?.grey ?? bench;
  };
  const corners = Float32Array.from({ length: (width + 1) * (height + 1) }, (_, k) =>
    shade({ x: k % (width + 1), y: Math.floor(k / (width + 1)) }),
  );
  return Uint8Array.from({ length: width * height }, (_, k) => {
    const [column, row] = [k % width, Math.floor(k / width)];
    const first = row * (width + 1) + column;
    const four = [first, first + 1, first + width + 1, first + width + 2].map((i) => corners[i] as number);
    return four.every((grey) => grey === four[0]) ? (four[0] as number) : meanOf(column, row, shade);
  });
}

function meanOf(column: number, row: number, shade: (px: Vec) => number): number {
  const eighths = [0.125, 0.375, 0.625, 0.875];
  const all = eighths.flatMap((down) => eighths.map((right) => shade({ x: column + right, y: row + down })));
  return Math.round(all.reduce((sum, grey) => sum + grey, 0) / all.length);
}

/** A JPEG of upright grey pixels, stored turned as its EXIF orientation says. */
export function jpegOf(grey: Uint8Array, { width, height }: Pinhole, orientation: Orientation = 1): Uint8Array {
  const stored = orientation >= 5 ? { width: height, height: width } : { width, height };
  const data = new Uint8Array(4 * width * height).fill(255);
  for (let k = 0; k < width * height; k += 1) {
    const centre = { x: (k % stored.width) + 0.5, y: Math.floor(k / stored.width) + 0.5 };
    const { x, y } = toUpright(orientation, stored, centre);
    data.fill(grey[Math.floor(y) * width + Math.floor(x)] as number, 4 * k, 4 * k + 3);
  }
  const plain = encode({ ...stored, data }, 90).data;
  return Uint8Array.from([...plain.subarray(0, 2), ...exifSegment(orientation), ...plain.subarray(2)]);
}

/** An EXIF segment that holds an orientation and nothing else (CIPA DC-008, big-endian). */
const exifSegment = (orientation: number): number[] => [
  ...[0xff, 0xe1, 0, 34],
  ...[0x45, 0x78, 0x69, 0x66, 0, 0],
  ...[0x4d, 0x4d, 0, 42, 0, 0, 0, 8],
  ...[0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0],
  ...[0, 0, 0, 0],
];

/** The face of a part as sheets: its first section with round dark holes at depth 0, the others behind where they begin. */
export function sheetsOfPart({ sections, holes = [] }: PartFile): Sheet[] {
  const holeSheet: Sheet = {
    zMm: 0,
    grey: 25,
    covers: (place) =>
      holes.some(({ at: [x, y], diameter = 12 }) => Math.hypot(place.x - x, place.y - y) < diameter / 2),
  };
  const metal = sections.map(({ loops, depth }, i): Sheet => {
    const covers = insideOf(loops);
    return { zMm: -(depth?.[0] ?? 0), grey: i === 0 ? 175 : 120, covers };
  });
  return [holeSheet, ...metal.sort((a, b) => b.zMm - a.zMm)];
}

/** By even-odd crossings of polygons whose arcs have 64 pieces. */
export function insideOf(loops: readonly LoopFile[]): (place: Vec) => boolean {
  const polygons = loops.map((loop) => {
    const points = piecesOf(loop);
    const [x, y] = [points.map((p) => p.x), points.map((p) => p.y)];
    return { points, minX: Math.min(...x), maxX: Math.max(...x), minY: Math.min(...y), maxY: Math.max(...y) };
  });
  return ({ x, y }) => {
    let inside = false;
    for (const { points, minX, maxX, minY, maxY } of polygons) {
      if (x < minX || x > maxX || y < minY || y > maxY) continue;
      for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
        const [a, b] = [points[i] as Vec, points[j] as Vec];
        if (a.y > y !== b.y > y && x < a.x + ((y - a.y) * (b.x - a.x)) / (b.y - a.y)) inside = !inside;
      }
    }
    return inside;
  };
}

function piecesOf(loop: LoopFile): Vec[] {
  if ('circle' in loop) {
    const [x, y] = loop.circle;
    return Array.from({ length: 256 }, (_, k) => ({
      x: x + loop.radius * Math.cos((k * Math.PI) / 128),
      y: y + loop.radius * Math.sin((k * Math.PI) / 128),
    }));
  }
  return loop.flatMap((vertex, i) => {
    const [from, to, bulge] = [xyOf(vertex), xyOf(at(loop, i + 1)), vertex[2] ?? 0];
    const pieces = bulge === 0 ? 1 : 64;
    return Array.from({ length: pieces }, (_, k) => {
      const [x, y] = alongEdge(from, to, bulge, k / pieces);
      return { x, y };
    });
  });
}
