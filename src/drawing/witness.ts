import { moveRegion, type Region } from '../geometry/loop.ts';
import { motionAt } from '../geometry/motion/motion.ts';
import { compose, rigid } from '../geometry/rigid.ts';
import { distance, lerp, type Vec, vec } from '../geometry/vec.ts';
import type { Joint } from '../joint/joint.ts';
import type { CheckAnswer } from '../model/check-answer.ts';
import type { Position } from '../model/path.ts';
import { degreesText, lengthText } from '../words/units.ts';
import { reachesPastFace } from './draw-input.ts';
import { layer, line, outline } from './marks.ts';
import type { ArrowMark, Layer, Mark } from './scene.ts';

/** The closest place at home or on the way in, and how it is told. */
export interface Witness {
  readonly fixedAt: Vec;
  readonly movingAt: Vec;
  readonly middle: Vec;
  readonly title: string;
  readonly detail: string | null;
  /** Where on the way in it is; null at home. */
  readonly moment: { readonly leg: number; readonly at: number } | null;
  readonly touches: boolean;
}

/** The closest places, home first; a place that fouls or touches is the first contact along the way. */
export function witnessesOf({ fit }: Joint, { home, install }: CheckAnswer): readonly Witness[] {
  const { units } = fit;
  const told = (what: string, mm: number, worstMm: number | null) => ({
    title: `${what} ${lengthText(mm, units)}`,
    worst: worstMm === null ? 'as traced' : `as traced; at worst ${lengthText(worstMm, units)}`,
  });
  const witnesses: Witness[] = [];
  if (home.nearest !== null && home.clearanceMm !== null) {
    const { title, worst } = told('closest at home', home.clearanceMm, home.worstClearanceMm);
    const touches = home.state === 'touches' || home.state === 'fouls';
    witnesses.push({
      ...placeOf(home.nearest),
      title: touches ? `${home.state} at home` : title,
      detail: touches ? null : worst,
      moment: null,
      touches,
    });
  }
  if (install?.nearest && install.clearanceMm !== null) {
    const { nearest } = install;
    const when = `at ${degreesText(nearest.turnDeg)}, stand-off ${lengthText(nearest.standOffMm, units)}`;
    const { title } = told('closest on the way in', install.clearanceMm, null);
    const touches = install.state === 'touches' || install.state === 'fouls';
    witnesses.push({
      ...placeOf(nearest),
      title: touches ? 'first touch going in' : title,
      detail: when,
      moment: { leg: nearest.leg, at: nearest.at },
      touches,
    });
  }
  return witnesses;
}

type Point = readonly [number, number];

function placeOf({ fixedAt, movingAt }: { readonly fixedAt: Point; readonly movingAt: Point }) {
  const [a, b] = [vec(...fixedAt), vec(...movingAt)];
  return { fixedAt: a, movingAt: b, middle: lerp(a, b, 0.5) };
}

/** The gap as a line between its two witnesses, or a target where the parts touch. */
export function witnessLayers(witnesses: readonly Witness[], reachMm: number): readonly Layer[] {
  const open = witnesses.filter(({ touches, fixedAt, movingAt }) => !touches && distance(fixedAt, movingAt) > 0);
  return [
    layer('witness', open.map(gapArrow)),
    layer(
      'first-touch',
      witnesses.filter(({ touches }) => touches).flatMap(({ fixedAt }) => target(fixedAt, reachMm)),
    ),
  ];
}

const gapArrow = ({ fixedAt, movingAt }: Witness): ArrowMark => ({
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

/** The moving sections that reach past their face, carried from home to a position. */
export const movingAt = ({ moving }: Joint, { turnRad, shift }: Position): readonly Region[] =>
  moving.sections.filter(reachesPastFace).map(({ loops }) => moveRegion(loops, rigid(turnRad, shift)));

/** The same at a moment of a leg; empty where the fit has no such leg. */
export function movingAtMoment(
  { moving, fit }: Joint,
  moment: { readonly leg: number; readonly at: number },
): readonly Region[] {
  const leg = fit.legs[moment.leg - 1];
  if (leg === undefined) return [];
  const placed = compose(motionAt(leg.motion, moment.at), rigid(leg.from.turnRad, leg.from.shift));
  return moving.sections.filter(reachesPastFace).map(({ loops }) => moveRegion(loops, placed));
}
