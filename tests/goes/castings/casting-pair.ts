import type { FitFile } from '../../../src/files/fit-file.ts';
import type { PartFile } from '../../../src/files/part-file.ts';
import { type Rigid, rigid } from '../../../src/geometry/plane/rigid.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { Random } from '../../support/random.ts';
import { besideBoss } from './beside-boss.ts';
import { keepWallMm, type Layer } from './design.ts';
import { carried, loopFilesOf } from './outlines.ts';
import { pastRibs } from './past-ribs.ts';
import { swungLips } from './swung-lips.ts';
import { type Wander, type Waves, wander } from './wander.ts';

/** Two castings as they truly are, and the fit that is tried of them. Nobody in the model sees these outlines. */
export interface CastingPair {
  readonly family: Family;
  readonly fixed: PartFile;
  readonly moving: PartFile;
  readonly fit: FitFile;
  /** Where the moving part truly comes to sit on its dowels, by their play. */
  readonly seating: Rigid;
}

const families = { ribs: pastRibs, boss: besideBoss, lips: swungLips };
export type Family = keyof typeof families;
export const familyNames = Object.keys(families) as Family[];

/** Clearances asked, mm. */
const clearance = { home: 2, wayIn: 1 };

/** What sand leaves of a drawn outline. */
const castSigmaMm = 0.12;
const castWaves: Waves = { shortestMm: 8, longestMm: 40 };

const dowelMm = 14;
const dowelsAtMm = 120;

/** A pair of one family; the same seed gives the same castings. */
export function castingPair(family: Family, seed: number): CastingPair {
  const random = new Random(seed);
  const { fixed, hollows, moving, offerUp } = families[family](random);
  const playMm = random.between(0.02, 0.06);
  const slack = (): number => random.between(-0.5, 0.5) * playMm;
  const shared = { format: 'fettle-part/1', units: 'mm', traceError: 0, depthError: 0 } as const;
  const dowels = (id: string, diameter: number, proud: number): NonNullable<PartFile['holes']> =>
    [-dowelsAtMm, dowelsAtMm].map((x, i) => ({ id: `${id}${i + 1}`, kind: 'dowel', at: [x, 0], diameter, proud }));
  return {
    family,
    fixed: {
      ...shared,
      name: 'Block',
      viewedFrom: 'face',
      holes: dowels('D', dowelMm, 9),
      sections: fixed.map((layer) => ({ ...cast(layer, random), mayCut: true })),
      hollows: hollows.map((layer) => ({ ...cast(layer, random), keepWall: keepWallMm, traceError: 0 })),
    },
    moving: {
      ...shared,
      name: 'Housing',
      viewedFrom: 'back',
      holes: dowels('P', dowelMm + playMm, 0),
      sections: moving.map((layer) => cast(layer, random)),
    },
    fit: {
      format: 'fettle-fit/1',
      units: 'mm',
      fixed: 'block.part.json',
      moving: 'housing.part.json',
      axis: [0, 0],
      dowels: [
        ['D1', 'P1'],
        ['D2', 'P2'],
      ],
      offerUp,
      clearance,
    },
    seating: rigid(slack() / dowelsAtMm, vec(slack(), slack())),
  };
}

function cast({ id, depth, outlines }: Layer, random: Random): PartFile['sections'][number] {
  const skin: Wander = wander(random, castSigmaMm, castWaves);
  return { id, depth: [...depth], loops: loopFilesOf(carried(outlines, skin)) };
}
