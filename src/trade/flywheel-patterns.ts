import type { Source } from './sourced.ts';

/** How an overcentre clutch or coupling bolts to a flywheel; mm. */
export interface FlywheelPattern {
  /** The nominal clutch size in inches, by which it is called. */
  readonly number: '6-1/2' | '7-1/2' | '8' | '10' | '11-1/2' | '14' | '16' | '18' | '21' | '24';
  readonly pilotBoreMm: number;
  readonly boltCircleMm: number;
  readonly holes: number;
  readonly thread: string;
  /** How far the flywheel's face lies within the face of its housing. */
  readonly faceDepthMm: number;
  readonly source: Source;
}

const j620: Source = { basis: 'from memory', from: 'SAE J620' };

/** Pilot bore and bolt circle in inches (their mm, × 25.4, are computed), holes, thread, depth of the face in mm. */
const table = [
  ['6-1/2', 8.5, 7.875, 6, '5/16-18', 30.2],
  ['7-1/2', 9.5, 8.75, 8, '5/16-18', 30.2],
  ['8', 10.375, 9.625, 6, '3/8-16', 62],
  ['10', 12.375, 11.625, 8, '3/8-16', 53.8],
  ['11-1/2', 13.875, 13.125, 8, '3/8-16', 39.6],
  ['14', 18.375, 17.25, 8, '1/2-13', 25.4],
  ['16', 20.375, 19.25, 8, '1/2-13', 15.7],
  ['18', 22.5, 21.375, 6, '5/8-11', 15.7],
  ['21', 26.5, 25.25, 12, '5/8-11', 0],
  ['24', 28.875, 27.25, 12, '3/4-10', 0],
] as const;

/** Flywheels of SAE J620, smallest first; all from memory. */
export const flywheelPatterns: readonly FlywheelPattern[] = table.map(
  ([number, pilotBoreIn, boltCircleIn, holes, thread, faceDepthMm]) => ({
    number,
    pilotBoreMm: pilotBoreIn * 25.4,
    boltCircleMm: boltCircleIn * 25.4,
    holes,
    thread,
    faceDepthMm,
    source: j620,
  }),
);
