import type { PartFile } from '../../src/files/part-file.ts';
import { type HousingFlange, holeCentres } from '../../src/trade/flange-patterns.ts';

const thousandth = (mm: number): number => Math.round(mm * 1000) / 1000 + 0;

/** How much of a flange the table tells of: its face, and nothing of what is behind. */
const faceDepth: [number, number] = [0, 1];

/** The name of a flange's part file in `profiles/flanges`. */
export const flangePartName = ({ number }: HousingFlange): string => `sae-j617-${number.replace('/', '-')}.part.json`;

/** A housing flange of the table as a part file: the ring of its face, pilot bore and tapped holes, about the crank. */
export function flangePart(flange: HousingFlange): PartFile {
  const { number, pilotBoreMm, outsideMm, thread } = flange;
  const ring = { circle: [0, 0] as [number, number], radius: thousandth(outsideMm / 2) };
  return {
    $schema: '../schemas/part.schema.json',
    format: 'fettle-part/1',
    name: `Flywheel housing flange, SAE J617 No. ${number}`,
    units: 'mm',
    viewedFrom: 'face',
    sections: [
      {
        id: 'face',
        depth: faceDepth,
        note: `Nominal sizes of ${flange.source.from} (${flange.source.basis}); places of the holes computed, each side of the axes alike after ISO 7648. How thick the flange is, and all behind its face, is not told: trace your own.`,
        loops: [ring, { circle: [0, 0], radius: thousandth(pilotBoreMm / 2) }],
      },
    ],
    holes: [
      { id: 'AXIS', kind: 'bore', at: [0, 0], diameter: thousandth(pilotBoreMm) },
      ...holeCentres(flange).map(({ x, y }, i) => ({
        id: `T${i + 1}`,
        kind: 'tapped' as const,
        at: [thousandth(x), thousandth(y)] as [number, number],
        thread,
      })),
    ],
    traced: { depth: faceDepth, loops: [ring] },
  };
}
