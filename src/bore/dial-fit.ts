import { Matrix, pseudoInverse } from 'ml-matrix';
import { angleOf, length, type Vec, vec } from '../geometry/plane/vec.ts';
import { mostError } from './most-error.ts';

/** A reading of a dial that the crank carries round, mm: more where the surface stands nearer to it. */
export interface DialReading {
  /** Anticlockwise from 3 o'clock. */
  readonly angleRad: number;
  readonly readMm: number;
}

/** What goes twice round: two places across from one another read the same. */
export interface TwiceRound {
  /** Half of the highest less the lowest, mm. */
  readonly sizeMm: number;
  readonly boundMm: number;
  /** Where it reads least, in [0, π). */
  readonly lowestRad: number;
  /** False where four places a quarter apart tell of their own two diameters alone. */
  readonly inFull: boolean;
}

/** Readings as what goes once round, what goes twice round, and what is left; mm and radians. */
export interface DialFit {
  /** Highest less lowest. */
  readonly tirMm: number;
  /** What goes once round: as long as half its swing, toward where it reads most. */
  readonly once: Vec;
  /** How far `once` may be out where every reading errs by `errorMm`, all at their worst. */
  readonly onceBoundMm: number;
  readonly twice: TwiceRound | null;
  /** How far a reading may err: as stated, or twice the spread of what is left, whichever is more. */
  readonly errorMm: number;
  /** Twice the spread of what is left; null where as much was fitted as was read. */
  readonly noiseMm: number | null;
  /** Of each reading what the fit leaves unexplained. */
  readonly leftMm: readonly number[];
}

/**
 * Least squares of c + a·cos θ + b·sin θ, from five places on with the second harmonic beside it, so that neither is
 * mistaken for the other wherever the places are. Four places a quarter apart part the two as well, but tell of the
 * second only what lies along them; of other four the second harmonic stays in what is left.
 */
export function fitDial(readings: readonly DialReading[], statedErrorMm: number): DialFit {
  const columns = columnsFor(readings.map(({ angleRad }) => angleRad));
  const rows = new Matrix(readings.map(({ angleRad }) => columns.map((column) => column(angleRad))));
  const weights = pseudoInverse(rows);
  const read = Matrix.columnVector(readings.map(({ readMm }) => readMm));
  const found = weights.mmul(read);
  const leftMm = Matrix.sub(read, rows.mmul(found)).to1DArray();
  const spare = readings.length - columns.length;
  const noiseMm = spare > 0 ? 2 * Math.sqrt(leftMm.reduce((sum, mm) => sum + mm * mm, 0) / spare) : null;
  const errorMm = Math.max(statedErrorMm, noiseMm ?? 0);
  const value = (row: number): number => (row < columns.length ? found.get(row, 0) : 0);
  const boundOf = (first: number, second: number): number =>
    errorMm *
    mostError(readings.map((_, i) => vec(weights.get(first, i), second < columns.length ? weights.get(second, i) : 0)));
  const mm = readings.map(({ readMm }) => readMm);
  return {
    tirMm: Math.max(...mm) - Math.min(...mm),
    once: vec(value(1), value(2)),
    onceBoundMm: boundOf(1, 2),
    twice: columns.length > 3 ? twiceRound(vec(value(3), value(4)), boundOf(3, 4), readings, columns.length > 4) : null,
    errorMm,
    noiseMm,
    leftMm,
  };
}

type Column = (angleRad: number) => number;

const onceRound: readonly Column[] = [() => 1, Math.cos, Math.sin];

function columnsFor(angles: readonly number[]): readonly Column[] {
  const [first = 0] = angles;
  if (angles.length > 4) return [...onceRound, (angle) => Math.cos(2 * angle), (angle) => Math.sin(2 * angle)];
  return areQuarters(angles) ? [...onceRound, (angle) => Math.cos(2 * (angle - first))] : onceRound;
}

const hairRad = 1e-6;

/** Whether four places lie a quarter of a turn from one another. */
export const areQuarters = (angles: readonly number[]): boolean =>
  angles.length === 4 && angles.every((angle) => Math.abs(Math.sin(2 * (angle - (angles[0] ?? 0)))) < hairRad);

function twiceRound(part: Vec, boundMm: number, [first]: readonly DialReading[], inFull: boolean): TwiceRound {
  const highestRad = angleOf(part) / 2 + (inFull ? 0 : (first?.angleRad ?? 0));
  const halfTurn = Math.PI;
  const lowestRad = (((highestRad + halfTurn / 2) % halfTurn) + halfTurn) % halfTurn;
  return { sizeMm: length(part), boundMm, lowestRad, inFull };
}
