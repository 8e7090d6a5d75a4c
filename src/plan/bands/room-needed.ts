import type { Pass } from '../../clearance/passes.ts';
import { isMotionless, motionAt } from '../../geometry/motion/motion.ts';
import type { Side } from '../../geometry/plane/arc-points.ts';
import { compose, type Rigid } from '../../geometry/plane/rigid.ts';
import { distance } from '../../geometry/plane/vec.ts';
import { offset } from '../../geometry/polygons/offset.ts';
import { engineErrorMm, union } from '../../geometry/polygons/polygon-engine.ts';
import { outlinesOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import type { Joint } from '../../joint/joint.ts';
import type { Sweeps } from './sweeps.ts';

/** What must be free of metal for a set of passes, and how far that may go beyond the truth. */
export interface Room {
  readonly polygons: Polygons;
  readonly boundMm: number;
}

/** What is asked of one pass, mm. */
export const clearanceOf = ({ fit }: Joint, { leg }: Pass): number =>
  leg === null ? fit.clearance.homeMm : fit.clearance.wayInMm;

/** What moves the line as marked out from the dowels, mm: the passing outline and its place, not the cut part's own. */
export const errorOf = (joint: Joint, { section }: Pass): number =>
  section.traceErrorMm + joint.dowelPlayMm + joint.fitRmsMm;

/** The room that gives the asked clearance as traced; never too little. */
export const plannedRoom = (joint: Joint, passes: readonly Pass[], sweeps: Sweeps, toleranceMm: number): Room =>
  room(passes, { toleranceMm, side: 'outside', sweeps, shrink: () => 0, grow: (pass) => clearanceOf(joint, pass) });

/** The planned room where every pass is given at least `leastMm`: a disc of that radius gets at all of it. */
export const roomForDisc = (
  joint: Joint,
  passes: readonly Pass[],
  sweeps: Sweeps,
  toleranceMm: number,
  leastMm: number,
): Room =>
  room(passes, {
    toleranceMm,
    side: 'outside',
    sweeps,
    shrink: () => 0,
    grow: (pass) => Math.max(leastMm, clearanceOf(joint, pass)),
  });

/** The room that is needed even if every error is in the builder's favour; never too much. */
export const leastRoom = (joint: Joint, passes: readonly Pass[], sweeps: Sweeps, toleranceMm: number): Room =>
  room(passes, {
    toleranceMm,
    side: 'inside',
    sweeps,
    shrink: (pass) => errorOf(joint, pass),
    grow: (pass) => clearanceOf(joint, pass),
  });

/** The room that is enough even if every error is against the builder; never too little. */
export const mostRoom = (joint: Joint, passes: readonly Pass[], sweeps: Sweeps, toleranceMm: number): Room =>
  room(passes, {
    toleranceMm,
    side: 'outside',
    sweeps,
    shrink: () => 0,
    grow: (pass) => clearanceOf(joint, pass) + errorOf(joint, pass),
  });

/** More than the engine can shift an outline on its way through sweep, union, offset and cut. */
const snapMm = 4 * engineErrorMm;

interface Growth {
  readonly toleranceMm: number;
  readonly side: Side;
  readonly sweeps: Sweeps;
  readonly shrink: (pass: Pass) => number;
  readonly grow: (pass: Pass) => number;
}

/** Passes without those that only stand where another of the same section sets out or ends: it covers them. */
const withoutStops = (passes: readonly Pass[]): Pass[] =>
  passes.filter((pass) => !isMotionless(pass.motion) || !passes.some((other) => stopsAt(other, pass)));

function stopsAt({ section, start, motion }: Pass, stop: Pass): boolean {
  if (section !== stop.section || isMotionless(motion)) return false;
  return [start, compose(motionAt(motion, 1), start)].some((end) => isSamePlacement(end, stop.start));
}

/** To within the rounding of a motion, far below the grid of the polygon engine. */
const isSamePlacement = (a: Rigid, b: Rigid): boolean =>
  Math.abs(a.turnRad - b.turnRad) < 1e-13 && distance(a.shift, b.shift) < 1e-10;

/** What lies in any of several solids; one alone is what it is. */
const united = (solids: readonly Polygons[]): Polygons =>
  solids.length === 1 ? (solids[0] as Polygons) : union(solids.flat());

/** Passes that grow by the same are united first: they overlap, and what is united is offset once. */
function room(passes: readonly Pass[], { toleranceMm, side, sweeps, shrink, grow }: Growth): Room {
  const amounts = [...new Set(passes.map(grow))];
  const bias = side === 'outside' ? snapMm : -snapMm;
  const grown = amounts.map((byMm) => {
    const swept = withoutStops(passes.filter((pass) => grow(pass) === byMm)).map((pass) =>
      sweeps(pass, side, shrink(pass)),
    );
    const ground = outlinesOf(united(swept.map((s) => s.polygons)));
    const { polygons, boundMm } = offset(ground, byMm + bias, toleranceMm, side);
    return {
      polygons,
      boundMm: Math.abs(bias) + boundMm + engineErrorMm + Math.max(0, ...swept.map((s) => s.boundMm)),
    };
  });
  return {
    polygons: united(grown.map((g) => g.polygons)),
    boundMm: engineErrorMm + Math.max(0, ...grown.map((g) => g.boundMm)),
  };
}
