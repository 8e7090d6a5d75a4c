import type { Side } from '../plane/arc-points.ts';
import { reversedEdge } from '../plane/edge.ts';
import type { Box } from '../plane/edge-box.ts';
import { moveRegion, type Region } from '../plane/loop.ts';
import type { Rigid } from '../plane/rigid.ts';
import type { Vec } from '../plane/vec.ts';
import { metalOnLeft } from '../polygons/metal-on-left.ts';
import { engineErrorMm, union } from '../polygons/polygon-engine.ts';
import { appendEdge, polygonise } from '../polygons/polygonise.ts';
import type { Polygon, Polygons } from '../polygons/polygons.ts';
import { solidNear } from '../polygons/solid-near.ts';
import { closePockets } from './close-pockets.ts';
import { isMotionless, type Motion } from './motion.ts';
import { ringsSwept } from './rings.ts';
import { type MonotoneRun, runsOf } from './runs.ts';
import { type Travel, travelOf } from './travel.ts';

/** What a solid passes over: polygons that err to one side of the truth by no more than `boundMm`. */
export interface SweptRegion {
  readonly polygons: Polygons;
  readonly boundMm: number;
}

/**
 * The region a solid covers over one motion, begun at the placement `start`: never smaller than the truth where it errs
 * `outside`, never larger where `inside`, but for the grid of the engine; arcs within `toleranceMm`.
 *
 * With metal on the left of an outline, the pieces on which the level rises (levels growing to the right of the
 * travel) trail and the others lead. Leaving the trailing pieces where they start, carrying the leading ones to the
 * end, and joining the two by the track of the point where they meet gives one closed curve per outline. Its winding
 * number about a point is the number of stretches of metal that pass over the point, so the region is where it is
 * positive: this is the convolution of the solid with an arc shorter than a circle, or with a segment (Guibas, Ramshaw
 * and Stolfi, A kinetic framework for computational geometry, 1983). A full turn or more covers whole rings.
 */
export const sweptRegion = (
  region: Region,
  start: Rigid,
  motion: Motion,
  toleranceMm: number,
  side: Side = 'outside',
): SweptRegion => sweepOf(region, start, motion)(toleranceMm, side);

/**
 * The region a solid covers over one motion, to be asked for within a tolerance, mm, on either side. Where it matters in
 * a box only, that is soon had; beyond the box it may then be anything.
 */
export type Sweep = (toleranceMm: number, side: Side, within?: Box) => SweptRegion;

/** As `sweptRegion`, for one that is asked for more than once: what leads and what trails is told apart but once. */
export function sweepOf(region: Region, start: Rigid, motion: Motion): Sweep {
  const outlines = outlinesSwept(moveRegion(region, start), motion);
  return (toleranceMm, side, within) => {
    const swept = outlines(toleranceMm, side);
    return {
      polygons: union(within ? solidNear(swept, within) : swept),
      boundMm: toleranceMm + engineErrorMm,
    };
  };
}

function outlinesSwept(placed: Region, motion: Motion): (toleranceMm: number, side: Side) => Polygons {
  if (isMotionless(motion)) return (toleranceMm, side) => polygonise(placed, toleranceMm, side);
  if (motion.kind === 'turn' && Math.abs(motion.angleRad) >= 2 * Math.PI) {
    const rings = ringsSwept(placed, motion.pole);
    return (toleranceMm, side) => polygonise(rings, toleranceMm, side);
  }
  const travel = travelOf(motion);
  const rings = metalOnLeft(placed).map((outline) => closePockets(runsOf(outline, travel), travel));
  return (toleranceMm, side) => rings.map((runs) => sweptOutline(runs, travel, toleranceMm, side));
}

function sweptOutline(runs: readonly MonotoneRun[], travel: Travel, toleranceMm: number, side: Side): Polygon {
  const points: Vec[] = [];
  for (const { edge, leads, previous, endsPocket } of runs) {
    if (leads !== previous.leads) {
      const track = travel.track(edge.a, travel.reach);
      // the track of a pocket's end runs through metal: beside it nothing can be added that is not covered anyway
      appendEdge(points, leads ? track : reversedEdge(track), toleranceMm, endsPocket ? 'outside' : side);
    }
    appendEdge(points, leads ? travel.carried(edge) : edge, toleranceMm, side);
  }
  return points;
}
