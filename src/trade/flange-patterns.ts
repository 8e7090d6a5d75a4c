import type { Source } from './sourced.ts';

/** A flywheel-housing flange; lengths in mm. */
export interface HousingFlange {
  readonly number: '00' | '0' | '1/2' | '1' | '2' | '3' | '4' | '5' | '6';
  readonly pilotBoreMm: number;
  readonly boltCircleMm: number;
  readonly holes: number;
  readonly thread: string;
  readonly outsideMm: number;
  /** Full indicator movement allowed on pilot bore and face. */
  readonly runOutMm: number;
  readonly source: Source;
}

const j617: Source = { basis: 'looked up', from: 'SAE J617 in catalogue extracts; run-out SAE J1033' };

/**
 * In catalogue order: pilot bore and bolt circle in inches (their mm, × 25.4, are computed), holes, thread, outside
 * diameter and run-out in mm.
 */
const catalogue = [
  ['00', 31, 33.5, 16, '1/2-13', 882.65, 0.48],
  ['0', 25.5, 26.75, 16, '1/2-13', 711.2, 0.41],
  ['1/2', 23, 24.375, 12, '1/2-13', 647.7, 0.36],
  ['1', 20.125, 20.875, 12, '7/16-14', 552.45, 0.3],
  ['2', 17.625, 18.375, 12, '3/8-16', 488.95, 0.28],
  ['3', 16.125, 16.875, 12, '3/8-16', 450.85, 0.25],
  ['4', 14.25, 15, 12, '3/8-16', 403.225, 0.23],
  ['5', 12.375, 13.125, 8, '3/8-16', 355.6, 0.2],
  ['6', 10.5, 11.25, 8, '3/8-16', 307.975, 0.18],
] as const;

export const housingFlanges: readonly HousingFlange[] = catalogue.map(
  ([number, pilotBoreIn, boltCircleIn, holes, thread, outsideMm, runOutMm]) => ({
    number,
    pilotBoreMm: pilotBoreIn * 25.4,
    boltCircleMm: boltCircleIn * 25.4,
    holes,
    thread,
    outsideMm,
    runOutMm,
    source: j617,
  }),
);

/**
 * Hole centres (mm, about the pilot's centre, y up) of equally spaced holes, clockwise from the first one right of
 * the vertical. Holes stand equally each side of the axes, so the first is half a spacing off: computed, after ISO 7648.
 */
export function holeCentres({
  boltCircleMm,
  holes,
}: Pick<HousingFlange, 'boltCircleMm' | 'holes'>): { readonly x: number; readonly y: number }[] {
  const spacingRad = (2 * Math.PI) / holes;
  return Array.from({ length: holes }, (_, i) => {
    const fromVerticalRad = (i + 0.5) * spacingRad;
    return { x: (boltCircleMm / 2) * Math.sin(fromVerticalRad), y: (boltCircleMm / 2) * Math.cos(fromVerticalRad) };
  });
}
