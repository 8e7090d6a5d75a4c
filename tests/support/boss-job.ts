import type { Hole, Hollow } from '../../src/job/casting.ts';
import { box, type CastingSpec, castingOf, disc, dowel, type JobSpec } from './jobs.ts';

type Sections = NonNullable<CastingSpec['sections']>;

interface Beside {
  readonly sections?: Sections;
  readonly holes?: readonly Hole[];
  readonly hollows?: readonly (Pick<Hollow, 'id' | 'loops'> & { readonly depth?: readonly [number, number] })[];
  /** The flange that the boss stands on. */
  readonly flange?: Sections[number]['loops'];
  /** What the other part has over the boss begins so far from its face. */
  readonly overMm?: number;
}

/** How far the Ø24 boss at 0, 0 stands proud of a flange 200 by 120. */
export const bossMm = 15;
export const bossRadiusMm = 12;

/** A boss on the face under the web of the other part, which is hollow round it: it has to be ground down. */
export const bossJob = ({ sections = [], holes = [], hollows = [], flange, overMm = 10 }: Beside = {}): JobSpec => ({
  title: 'A boss under a web',
  fixed: castingOf({
    name: 'Housing',
    castingNumber: '52-B',
    sections: [
      { id: 'flange', depth: [0, 20], loops: flange ?? [box(-100, -60, 100, 60)] },
      { id: 'boss', depth: [-bossMm, 0], mayCut: true, loops: [disc(0, 0, bossRadiusMm)] },
      ...sections,
    ],
    holes: [dowel('D1', [-85, 0], 8, 10), dowel('D2', [85, -45], 8, 10), ...holes],
    hollows,
  }),
  moving: castingOf({
    name: 'Cover',
    sections: [
      { id: 'rim', depth: [0, overMm], loops: [box(-100, -60, 100, 60), box(-70, -50, 70, 50)] },
      { id: 'web', depth: [overMm, overMm + 20], loops: [box(-70, -50, 70, 50)] },
    ],
    holes: [dowel('P1', [-85, 0], 0, 10), dowel('P2', [85, -45], 0, 10)],
  }),
  dowels: [
    ['D1', 'P1'],
    ['D2', 'P2'],
  ],
  clearance: 2,
});
