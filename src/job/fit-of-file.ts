import type { FitFile } from '../files/fit-file.ts';
import { mirrorPoint } from '../geometry/plane/loop.ts';
import type { Casting, Hole } from './casting.ts';
import type { Clearances, Cutter, Fit, HolePair } from './job.ts';
import { mmPer, pointOf } from './lengths.ts';
import { type Leg, legsThrough } from './path.ts';
import { positionOf } from './position-of.ts';
import type { Wander } from './wander.ts';

// Common practice, no source.
const rotatingClearanceMm = 4;
const handErrorMm = 0.5;

const evenShare = 0.5;

/** A fit whose findings are none, with the parts it names, in mm and radians and with its defaults filled in. */
export function fitOf(file: string, fit: FitFile, fixed: Casting, moving: Casting): Fit {
  const mm = mmPer(fit.units);
  const clearance = clearancesOf(fit, mm);
  return {
    file,
    title: fit.title ?? `${moving.name} to ${fixed.name}`,
    units: fit.units,
    axis: axisOf(fit, fixed),
    axisHole: typeof fit.axis === 'string' ? fit.axis : null,
    dowels: pairsOf(fit.dowels, fixed, moving),
    bolts: pairsOf(fit.bolts, fixed, moving),
    legs: legsOf(fit, mm),
    engagesAtMm: fit.inputShaft === undefined ? null : fit.inputShaft.engagesAt * mm,
    wander: wanderOf(fit, mm),
    clearance,
    depthMarginMm: fit.depthMargin === undefined ? clearance.homeMm : fit.depthMargin * mm,
    cut: fit.cut ?? 'fixed',
    share: fit.share ?? evenShare,
    cutter: cutterOf(fit, mm),
    cuttersMm: fit.cutters?.map((radius) => radius * mm) ?? null,
    straight: fit.straight ?? false,
    minWallMm: fit.minWall === undefined ? null : fit.minWall * mm,
    registrationMm: fit.registration === undefined ? null : fit.registration * mm,
    nothingShares: fit.nothingShares ?? false,
  };
}

/** The axis is written in the fixed part's drawing and units, so it is mirrored with it. */
function axisOf({ axis }: FitFile, fixed: Casting) {
  if (typeof axis === 'string') return holeNamed(fixed, axis).at;
  const point = pointOf(axis, mmPer(fixed.units));
  return fixed.mirrored ? mirrorPoint(point) : point;
}

const pairsOf = (pairs: FitFile['dowels'], fixed: Casting, moving: Casting): HolePair[] =>
  (pairs ?? []).map(([a, b]) => ({ fixed: holeNamed(fixed, a), moving: holeNamed(moving, b) }));

function holeNamed(casting: Casting, id: string): Hole {
  const hole = casting.holes.find((candidate) => candidate.id === id);
  if (hole === undefined) throw new Error(`hole ${id} was not checked for`);
  return hole;
}

function legsOf({ offerUp = [] }: FitFile, mm: number): Leg[] {
  // a fit with a leg that has no single motion has findings, and is no job
  return legsThrough(offerUp.map((position) => positionOf(position, mm))) ?? [];
}

/** None where nothing may be strayed in. */
function wanderOf({ wander = {} }: FitFile, mm: number): Wander | null {
  const { turn = 0, standOff = 0, shift = 0, tilt = 0 } = wander;
  if ([turn, standOff, shift, tilt].every((amount) => amount === 0)) return null;
  return { turnRad: radiansOf(turn), standOffMm: standOff * mm, shiftMm: shift * mm, tiltRad: radiansOf(tilt) };
}

const radiansOf = (degrees: number): number => (degrees * Math.PI) / 180;

function clearancesOf({ clearance }: FitFile, mm: number): Clearances {
  const asked = typeof clearance === 'number' ? { home: clearance } : clearance;
  const { home, wayIn = home, rotating } = asked;
  return {
    homeMm: home * mm,
    wayInMm: wayIn * mm,
    rotatingMm: rotating === undefined ? rotatingClearanceMm : rotating * mm,
  };
}

function cutterOf({ cutter }: FitFile, mm: number): Cutter | null {
  if (cutter === undefined) return null;
  return {
    radiusMm: cutter.radius * mm,
    nose: cutter.nose ?? 'ball',
    handErrorMm: cutter.handError === undefined ? handErrorMm : cutter.handError * mm,
    runOut: cutter.runOut ?? 'cut-past',
    stepoverMm: cutter.stepover === undefined ? null : cutter.stepover * mm,
  };
}
