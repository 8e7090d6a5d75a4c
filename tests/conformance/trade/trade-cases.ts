import { readFileSync } from 'node:fs';
import type { HousingFlange } from '../../../src/trade/flange-patterns.ts';

/** Printed and computed tables, for any implementation to be held against; mm. */
interface Table<Row> {
  readonly tolerance: number;
  readonly why: string;
  readonly expected: readonly Row[];
}

interface Holes {
  readonly majorMm: number;
  readonly fineMm: number;
  readonly mediumMm: number;
  readonly coarseMm: number;
}

interface TradeCases {
  readonly threads: Table<{
    readonly majorMm: number;
    readonly pitchMm: number;
    readonly pitchDiameterMm: number;
    readonly minorDiameterMm: number;
    readonly largestMinor6HMm: number;
    readonly stressAreaMm2: number;
  }>;
  readonly stressAreas: Table<{ readonly majorMm: number; readonly pitchMm: number; readonly stressAreaMm2: number }>;
  readonly unifiedMinors: Table<{
    readonly size: string;
    readonly perInch: number;
    readonly leastIn: number;
    readonly mostIn: number;
  }>;
  readonly pipeMinors: Table<{ readonly size: string; readonly minorMm: number }>;
  readonly insertHoles: Table<{
    readonly title: string;
    readonly majorMm: number;
    readonly pitchMm: number;
    readonly outsideMm: number;
  }>;
  readonly drillPoints: Table<{ readonly diameterMm: number; readonly pointMm: number }>;
  readonly clearanceHoles: Table<Holes>;
  readonly floats: Table<Holes>;
  readonly flanges: Table<{
    readonly number: HousingFlange['number'];
    readonly pilotBoreMm: number;
    readonly boltCircleMm: number;
  }>;
  readonly firstHoles: Table<{
    readonly number: HousingFlange['number'];
    readonly degFromVertical: number;
    readonly source: string;
  }>;
  readonly dowelsIn: Table<{
    readonly title: string;
    readonly size: 'small' | 'large';
    readonly mostUm: number;
    readonly leastUm: number;
  }>;
  readonly sizesNotListed: Table<{ readonly majorMm: number }>;
  readonly positionZones: Table<{
    readonly title: string;
    readonly offMm: readonly [number, number];
    readonly zoneMm: number;
  }>;
  readonly holeCentres: Table<{
    readonly title: string;
    readonly number: HousingFlange['number'];
    readonly centres: readonly (readonly [number, number])[];
  }>;
  readonly holePitches: Table<{
    readonly title: string;
    readonly number: HousingFlange['number'];
    readonly pitchMm: number;
  }>;
  readonly pinsThatAlwaysGoIn: Table<{
    readonly title: string;
    readonly pin: 'h6' | 'g6';
    readonly hole: 'H7';
    readonly size: 'small' | 'large';
    readonly leastUmAtLeast: number;
  }>;
}

export const tradeCases = JSON.parse(readFileSync(new URL('cases.json', import.meta.url), 'utf8')) as TradeCases;
