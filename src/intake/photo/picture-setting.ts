import type { Vec } from '../../geometry/plane/vec.ts';
import type { PlaneFit } from './fit-plane.ts';
import type { TouchNoise } from './touch-noise.ts';

/** A picture set straight: plain data, which can be sent to a worker or kept in a file. */
export interface PictureSetting {
  /** `square-on`: by two points, the camera taken to have looked straight at the plane. */
  readonly by: 'points' | 'square-on';
  readonly fit: PlaneFit;
  readonly noise: TouchNoise;
  /** In the order of the points. */
  readonly points: readonly PointCheck[];
  /** The picture shows the plane from the other side than the points' coordinates do. */
  readonly mirrored: boolean;
  /** Whether the points scatter no more than the stated errors allow; true where nothing is left over to tell by. */
  readonly agree: boolean;
  /** Where they do not: those, counted from 0, without which the rest do; a coordinate may be wrong there. */
  readonly suspects: readonly number[];
}

/** What a setting says of one of its points. */
export interface PointCheck {
  /** From where the point is known to be to where the picture puts it, mm; null where that is beyond the horizon. */
  readonly residualMm: number | null;
  /** Where a picture set by the other points alone puts this touch; null where they do not fix it. */
  readonly othersPutIt: Vec | null;
  /** From where the point is known to be to there, mm. */
  readonly leaveOneOutMm: number | null;
}
