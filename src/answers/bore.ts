import type { BoreRead, BoreResult } from '../bore/bore-result.ts';
import { round6, roundPoint6 } from '../geometry/plane/rounding.ts';
import { angleOf, length, scale, type Vec } from '../geometry/plane/vec.ts';
import type { BoreAnswer } from './bore-answer.ts';
import { roundDegrees, roundOrNull } from './rounded.ts';

/** A bore against the crank as JSON, the answer of `fettle bore --json`: mm and degrees, each figure rounded to 1e-6. */
export const boreAnswer = (result: BoreResult): BoreAnswer => ({
  format: 'fettle-bore/1',
  verdict: result.verdict,
  against: [...result.against],
  doubts: [...result.doubts],
  limit: {
    of: result.request.limit.of,
    flange: result.request.limit.flange,
    tirMm: round6(result.request.limit.tirMm),
    offsetMm: round6(result.limitMm),
    source: result.request.limit.source,
  },
  sagMm: round6(result.request.sagMm),
  bore: {
    ...roundAnswer(result.bore),
    offsetMm: roundPoint6(result.offset),
    offMm: round6(result.offMm),
    boundMm: round6(result.bore.onceBoundMm),
    centre: result.centre,
    towardDeg: towardDeg(result.offset, result.bore.onceBoundMm),
    outOfRound: outOfRoundAnswer(result),
    sumsDifferMm: roundOrNull(result.sumsDifferMm),
  },
  dowels: {
    towardDeg: towardDeg(scale(result.offset, -1), result.bore.onceBoundMm),
    sizes: result.dowels.sizes.map(({ inch, mm, leftMm, within }) => ({
      inch,
      mm: round6(mm),
      leftMm: round6(leftMm),
      within,
    })),
    bestInch: result.dowels.best?.inch ?? null,
    source: result.dowels.source,
  },
  face: result.face && {
    ...roundAnswer(result.face),
    radiusMm: round6(result.face.radiusMm),
    tiltMmPer100: round6(100 * result.face.slope),
    boundMmPer100: round6(100 * result.face.slopeBound),
    standsOutDeg: towardDeg(result.face.once, result.face.onceBoundMm),
  },
});

/** A direction that the readings can tell, in degrees. */
const towardDeg = (way: Vec, boundMm: number): number | null =>
  length(way) > boundMm ? roundDegrees(angleOf(way)) : null;

const roundAnswer = ({ readings, leftMm, tirMm, errorMm, noiseMm, closureMm, closes }: BoreRead) => ({
  readings: readings.map(({ angleRad, readMm, trueMm }, i) => ({
    angleDeg: roundDegrees(angleRad),
    readMm: round6(readMm),
    trueMm: round6(trueMm),
    leftMm: round6(leftMm[i] ?? 0),
  })),
  tirMm: round6(tirMm),
  errorMm: round6(errorMm),
  noiseMm: roundOrNull(noiseMm),
  closureMm: roundOrNull(closureMm),
  closes,
});

const outOfRoundAnswer = ({ outOfRound, bore: { twice } }: BoreResult): BoreAnswer['bore']['outOfRound'] =>
  outOfRound &&
  twice && {
    mm: round6(outOfRound.mm),
    boundMm: round6(outOfRound.boundMm),
    widestDeg: roundDegrees(twice.lowestRad),
    inFull: twice.inFull,
  };
