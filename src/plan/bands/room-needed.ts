import type { Pass } from '../../clearance/passes.ts';
import { isMotionless, motionAt } from '../../geometry/motion/motion.ts';
import type { Side } from '../../geometry/plane/arc-points.ts';
import { type Box, boxGrown } from '../../geometry/plane/edge-box.ts';
import { compose, type Rigid } from '../../geometry/plane/rigid.ts';
import { distance } from '../../geometry/plane/vec.ts';
import { offset } from '../../geometry/polygons/offset.ts';
import { engineErrorMm } from '../../geometry/polygons/polygon-engine.ts';
import { outlinesOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import { solidNear } from '../../geometry/polygons/solid-near.ts';
import { stepsOfUnion, unionOfMany } from '../../geometry/polygons/union-of-many.ts';
import type { Joint } from '../../joint/joint.ts';
import type { Sweeps } from './sweeps.ts';

/** What must be free of metal for a set of passes, and how far that may go beyond the truth. */
export interface Room {
  readonly polygons: Polygons;
  readonly boundMm: number;
}

/** What is asked of one pass, mm, and as much as one may come nearer who strays. */
export const clearanceOf = ({ fit }: Joint, { leg, strayMm }: Pass): number =>
  (leg === null ? fit.clearance.homeMm : fit.clearance.wayInMm) + strayMm;

/** What moves the line as marked out from the dowels, mm: the passing outline and its place, not the cut part's own. */
export const errorOf = (joint: Joint, { section }: Pass): number =>
  section.traceErrorMm + joint.dowelPlayMm + joint.fitRmsMm;

/** By which passes metal must make room, looked at in a box; beyond that the room told may be anything. */
export interface RoomQuery {
  readonly joint: Joint;
  readonly passes: readonly Pass[];
  readonly box: Box;
  readonly sweeps: Sweeps;
  readonly toleranceMm: number;
}

/** The room that gives the asked clearance as traced; never too little. */
export const plannedRoom = (query: RoomQuery): Room =>
  room(query, { side: 'outside', shrink: () => 0, grow: (pass) => clearanceOf(query.joint, pass) });

/** The planned room where every pass is given at least `leastMm`: a disc of that radius gets at all of it. */
export const roomForDisc = (query: RoomQuery, leastMm: number): Room =>
  room(query, { side: 'outside', shrink: () => 0, grow: (pass) => Math.max(leastMm, clearanceOf(query.joint, pass)) });

/** The room that is needed even if every error is in the builder's favour; never too much. */
export const leastRoom = (query: RoomQuery): Room =>
  room(
    { ...query, passes: query.passes.filter(({ isSure }) => isSure) },
    {
      side: 'inside',
      shrink: (pass) => errorOf(query.joint, pass),
      grow: (pass) => clearanceOf(query.joint, pass),
    },
  );

/** The room that is enough even if every error is against the builder; never too little. */
export const mostRoom = (query: RoomQuery): Room =>
  room(query, {
    side: 'outside',
    shrink: () => 0,
    grow: (pass) => clearanceOf(query.joint, pass) + errorOf(query.joint, pass),
  });

/** More than the engine can shift an outline on its way through sweep, union, offset and cut. */
const snapMm = 4 * engineErrorMm;

/** Beyond a box by so much, mm, nothing that the engine or an arc's tolerance moves gets into it. */
const marginMm = 1;

interface Growth {
  readonly side: Side;
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

/**
 * Passes that grow by the same are united first: they overlap, and what is united is offset once. Of what is swept no
 * more is taken than can come within the box: a disc that grows from beyond twice its radius does not get there.
 */
function room({ passes, box, sweeps, toleranceMm }: RoomQuery, { side, shrink, grow }: Growth): Room {
  const amounts = [...new Set(passes.map(grow))];
  const grown = amounts.map((byMm) => {
    const swept = withoutStops(passes.filter((pass) => grow(pass) === byMm)).map((pass) =>
      sweeps(pass, side, shrink(pass)),
    );
    const biasMm = snapMm + (stepsOfUnion(swept.length) - 1) * engineErrorMm;
    const bias = side === 'outside' ? biasMm : -biasMm;
    const around = boxGrown(box, 2 * byMm + marginMm);
    const ground = outlinesOf(unionOfMany(swept.map((s) => solidNear(s.polygons, around))));
    const { polygons, boundMm } = offset(ground, byMm + bias, toleranceMm, side);
    return {
      polygons,
      boundMm: biasMm + boundMm + engineErrorMm + Math.max(0, ...swept.map((s) => s.boundMm)),
    };
  });
  return {
    polygons: unionOfMany(grown.map((g) => g.polygons)),
    boundMm: engineErrorMm + Math.max(0, ...grown.map((g) => g.boundMm)),
  };
}
