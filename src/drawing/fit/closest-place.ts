import type { CheckResult, Clearance, Instant, NearestPlaces } from '../../clearance/check-result.ts';
import { reachesPastFace } from '../../clearance/room.ts';
import { motionAt } from '../../geometry/motion/motion.ts';
import { moveRegion, type Region } from '../../geometry/plane/loop.ts';
import { compose, rigid } from '../../geometry/plane/rigid.ts';
import { distance, lerp, type Vec, vec } from '../../geometry/plane/vec.ts';
import { lengthText } from '../../job/length-text.ts';
import type { Units } from '../../job/lengths.ts';
import type { Joint } from '../../joint/joint.ts';
import { turnText } from '../../words/units.ts';
import { layer, line, outline } from '../scene/marks.ts';
import type { ArrowMark, Layer, Mark } from '../scene/scene.ts';

/** The closest place at home or on the way in, and how it is told. */
export interface ClosestPlace {
  readonly fixedAt: Vec;
  readonly movingAt: Vec;
  readonly middle: Vec;
  readonly title: string;
  readonly detail: string | null;
  /** Where on the way in it is; null at home. */
  readonly moment: Pick<Instant, 'leg' | 'at'> | null;
  readonly touches: boolean;
}

/**
 * The closest places: home, the way in, and each rotating part that is nearer than asked. A place that fouls or touches
 * is the first contact along the way.
 */
export function closestPlacesOf({ fit }: Joint, { home, wayIn, rotating }: CheckResult): readonly ClosestPlace[] {
  const { clearance, units } = fit;
  const close = rotating.filter(({ clearanceMm }) => clearanceMm !== null && clearanceMm < clearance.rotatingMm);
  return [
    ...closestPlaceAt('at home', home, null, units),
    ...(wayIn === null ? [] : closestPlaceAt('on the way in', wayIn, wayIn.nearest, units)),
    ...close.flatMap((part) =>
      closestPlaceAt(`to ${part.part}`, { ...part, worstClearanceMm: null }, part.instant, units),
    ),
  ];
}

interface NearestMeasure extends Pick<Clearance, 'state' | 'clearanceMm' | 'worstClearanceMm'> {
  readonly nearest: NearestPlaces | null;
}

function closestPlaceAt(where: string, measured: NearestMeasure, moment: Instant | null, units: Units): ClosestPlace[] {
  const { state, clearanceMm, worstClearanceMm, nearest } = measured;
  if (nearest === null || clearanceMm === null) return [];
  const touches = state === 'touches' || state === 'fouls';
  const when = moment && `at ${turnText(moment.turnRad)}, stand-off ${lengthText(moment.standOffMm, units)}`;
  const worst = worstClearanceMm === null ? 'as traced' : `as traced; at worst ${lengthText(worstClearanceMm, units)}`;
  const first = moment ? `first touch ${where}` : `${state} ${where}`;
  return [
    {
      fixedAt: nearest.fixedAt,
      movingAt: nearest.movingAt,
      middle: lerp(nearest.fixedAt, nearest.movingAt, 0.5),
      title: touches ? first : `closest ${where} ${lengthText(clearanceMm, units)}`,
      detail: when ?? (touches ? null : worst),
      moment,
      touches,
    },
  ];
}

/** The gap as a line between its two ends, or a target where the parts touch. */
export function closestPlaceLayers(closestPlaces: readonly ClosestPlace[], reachMm: number): readonly Layer[] {
  const open = closestPlaces.filter(({ touches, fixedAt, movingAt }) => !touches && distance(fixedAt, movingAt) > 0);
  return [
    layer('witness', open.map(gapArrow)),
    layer(
      'first-touch',
      closestPlaces.filter(({ touches }) => touches).flatMap(({ fixedAt }) => target(fixedAt, reachMm)),
    ),
  ];
}

const gapArrow = ({ fixedAt, movingAt }: ClosestPlace): ArrowMark => ({
  kind: 'arrow',
  from: fixedAt,
  to: movingAt,
  heads: 'both',
});

/** A ring with a cross that stands outside it. */
export function target(at: Vec, reachMm: number): Mark[] {
  const [x, y] = [at.x, at.y];
  const ring = 0.6 * reachMm;
  const arms = [vec(1, 0), vec(0, 1), vec(-1, 0), vec(0, -1)];
  return [
    outline([{ kind: 'circle', centre: at, radius: ring }]),
    ...arms.map((arm) =>
      line(vec(x + arm.x * ring * 0.45, y + arm.y * ring * 0.45), vec(x + arm.x * reachMm, y + arm.y * reachMm)),
    ),
  ];
}

/** The moving sections that reach past their face at a moment of a leg; empty where the fit has no such leg. */
export function movingAtMoment(
  { moving, fit }: Joint,
  moment: { readonly leg: number; readonly at: number },
): readonly Region[] {
  const leg = fit.legs[moment.leg - 1];
  if (leg === undefined) return [];
  const placed = compose(motionAt(leg.motion, moment.at), rigid(leg.from.turnRad, leg.from.shift));
  return moving.sections.filter(reachesPastFace).map(({ loops }) => moveRegion(loops, placed));
}
