/** Why a photograph, or a point of it, cannot be used: a code and its facts. Points are counted from 0. */
export type PhotoFault =
  /** The bytes are no JPEG. */
  | { readonly code: 'not-a-jpeg' }
  /** A JPEG that ends, or goes wrong, before it says how large it is. */
  | { readonly code: 'no-picture-size' }
  | { readonly code: 'too-few-points'; readonly found: number; readonly needed: number }
  | { readonly code: 'not-a-number'; readonly point: number }
  /** Two points touched in one place of the picture, or said to be in one place of the plane. */
  | { readonly code: 'coincident'; readonly where: PhotoSide; readonly points: readonly [number, number] }
  /** All points, but one at most, lie in one line: nothing says how the plane leans across it. */
  | { readonly code: 'in-a-line'; readonly where: PhotoSide; readonly points: readonly number[] }
  /**
   * No camera can have seen all these points from one side: two are swapped, or one is far out. `suspects` are those
   * without which the rest agree, where five or more are left.
   */
  | { readonly code: 'behind-camera'; readonly points: readonly number[]; readonly suspects: readonly number[] }
  /** The least squares find no single answer. */
  | { readonly code: 'undetermined' }
  /** A figure that must be above 0, or not below it. */
  | { readonly code: 'out-of-range'; readonly what: string; readonly found: number }
  /** The plane is seen too nearly square-on for its points to tell how far the camera was. */
  | { readonly code: 'too-square-on'; readonly tiltRad: number; readonly relativeError: number | null }
  /** No camera at that height over the plane sees the points so. */
  | { readonly code: 'no-such-height'; readonly heightMm: number }
  /** The depth asked for is at or beyond the camera. */
  | { readonly code: 'beyond-camera'; readonly depthMm: number; readonly heightMm: number };

export type PhotoSide = 'picture' | 'plane';

/** A value, or everything that keeps it from being one. */
export type PhotoOutcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly PhotoFault[] };

export const found = <T>(value: T): PhotoOutcome<T> => ({ ok: true, value });

export const refused = (...faults: readonly PhotoFault[]): PhotoOutcome<never> => ({ ok: false, faults });
