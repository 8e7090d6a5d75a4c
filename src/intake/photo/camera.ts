import { Matrix, SVD } from 'ml-matrix';
import { length, type Vec, vec } from '../../geometry/plane/vec.ts';
import { chainedMaps, type Homography } from './homography.ts';
import type { PictureSize } from './orientation.ts';

/** Where the camera stood over the plane, and how it looked at it. */
export interface CameraPlace {
  /** Square to the plane, mm. */
  readonly heightMm: number;
  /** The point of the plane square below the camera. */
  readonly foot: Vec;
  /** Between the camera's axis and the plane's normal. */
  readonly tiltRad: number;
  readonly focalPx: number;
}

/** A map plane → picture with the picture's coordinates counted from its middle, which the camera's axis goes through. */
export const fromMiddle = (toPicture: Homography, { width, height }: PictureSize): Homography =>
  chainedMaps([1, 0, -width / 2, 0, 1, -height / 2, 0, 0, 1], toPicture);

/**
 * The focal length (px) that makes the plane's two axes equally long and square to one another before the camera, for
 * square pixels (Zhang, IEEE PAMI 22 (2000) 1330, eqs. 3 and 4, in one unknown by least squares); null where there is
 * none, as of a plane seen square-on.
 */
export function focalOf([a, b, , c, d, , e, f]: Homography): number | null {
  // (first + i·second)² of the two columns: real part, difference of lengths; imaginary part, twice their product
  const inPicture = vec(a * a + c * c - b * b - d * d, 2 * (a * b + c * d));
  const along = vec(e * e - f * f, 2 * e * f);
  const square = -(inPicture.x ** 2 + inPicture.y ** 2) / (inPicture.x * along.x + inPicture.y * along.y);
  return square > 0 && Number.isFinite(square) ? Math.sqrt(square) : null;
}

/** The camera of that focal length which sees the plane so; the columns of a turn nearest to the map's are taken. */
export function cameraOf(centred: Homography, focalPx: number): CameraPlace {
  const [a, b, u, c, d, v, e, f, w] = centred;
  const svd = new SVD(new Matrix([[a, b].map((x) => x / focalPx), [c, d].map((x) => x / focalPx), [e, f]]));
  const turn = svd.leftSingularVectors.subMatrix(0, 2, 0, 1).mmul(svd.rightSingularVectors.transpose());
  const scale = ((svd.diagonal[0] as number) + (svd.diagonal[1] as number)) / 2;
  const shift = [u / focalPx / scale, v / focalPx / scale, w / scale] as const;
  const [p, q] = [turn.getColumn(0), turn.getColumn(1)] as unknown as [Triple, Triple];
  const normal: Triple = [p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]];
  return {
    heightMm: Math.abs(inner(normal, shift)),
    foot: vec(-inner(p, shift), -inner(q, shift)),
    tiltRad: Math.atan2(length(vec(normal[0], normal[1])), Math.abs(normal[2])),
    focalPx,
  };
}

type Triple = readonly [number, number, number];

const inner = (left: Triple, right: Triple): number => left[0] * right[0] + left[1] * right[1] + left[2] * right[2];
