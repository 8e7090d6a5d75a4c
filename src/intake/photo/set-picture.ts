import { distance, type Vec } from '../../geometry/plane/vec.ts';
import { fitPlane, type PlaneFit } from './fit-plane.ts';
import { carried, turnsOver } from './homography.ts';
import type { KnownPoint } from './known-point.ts';
import { found, type PhotoFault, type PhotoOutcome, refused } from './photo-fault.ts';
import type { PictureSetting, PointCheck } from './picture-setting.ts';
import { pointsAgree, type StatedErrors, statedFaults, statedVariancePx2, touchNoise } from './touch-noise.ts';

/**
 * Sets a picture straight by four or more points touched in it, more being better: with four nothing is left over, so
 * all residuals are 0 and errors rest on what was stated alone; from six on a point that does not belong is
 * found, or narrowed to a few; from eight on it stands alone.
 */
export function setPicture(points: readonly KnownPoint[], stated: StatedErrors): PhotoOutcome<PictureSetting> {
  const faults = statedFaults(stated);
  if (faults.length > 0) return refused(...faults);
  const outcome = fitPlane(points);
  const without = points.map((_, i) => fitPlane(points.filter((_, k) => k !== i)));
  if (!outcome.ok) return refused(...outcome.faults.map((fault) => withSuspects(fault, points, without, stated)));
  const fit = outcome.value;
  const statedPx2 = statedVariancePx2(fit, points, stated);
  const agree = pointsAgree(fit, statedPx2);
  return found({
    by: 'points',
    fit,
    noise: touchNoise(fit, statedPx2),
    points: points.map((point, i) => pointCheck(point, fit, without[i] as PhotoOutcome<PlaneFit>)),
    mirrored: !turnsOver(fit.toPicture, fit.inside.plane.middle),
    agree,
    suspects: agree ? [] : suspectsOf(points, without, stated),
  });
}

function pointCheck({ px, at }: KnownPoint, fit: PlaneFit, others: PhotoOutcome<PlaneFit>): PointCheck {
  const othersPutIt = others.ok ? carried(others.value.toPlane, px) : null;
  return {
    residualMm: between(carried(fit.toPlane, px), at),
    othersPutIt,
    leaveOneOutMm: between(othersPutIt, at),
  };
}

const between = (put: Vec | null, at: Vec): number | null => (put === null ? null : distance(put, at));

const withSuspects = (
  fault: PhotoFault,
  points: readonly KnownPoint[],
  without: readonly PhotoOutcome<PlaneFit>[],
  stated: StatedErrors,
): PhotoFault => (fault.code === 'behind-camera' ? { ...fault, suspects: suspectsOf(points, without, stated) } : fault);

/** The points without which the rest agree; of five points the rest always do, so none is told from another. */
function suspectsOf(
  points: readonly KnownPoint[],
  without: readonly PhotoOutcome<PlaneFit>[],
  stated: StatedErrors,
): readonly number[] {
  return without.flatMap((fit, i) => {
    if (!fit.ok || fit.value.degreesOfFreedom === 0) return [];
    const rest = points.filter((_, k) => k !== i);
    return pointsAgree(fit.value, statedVariancePx2(fit.value, rest, stated)) ? [i] : [];
  });
}
