import type { Joint } from '../../src/joint/joint.ts';
import type { BandCut } from '../../src/plan/bands/cut-band.ts';
import { cutLines } from '../../src/plan/bands/cut-lines.ts';
import { cutSections } from '../../src/plan/cut-sections.ts';
import { hindrancesOf } from '../../src/plan/hindrances.ts';
import type { CutBand, PartCut } from '../../src/plan/part-cut.ts';
import type { PlanResult } from '../../src/plan/plan-result.ts';
import { homeOf } from './answers.ts';

/** Results as a plan would give them: one that holds, unless a test says otherwise; mm. */
export const bandOf = (said: Partial<CutBand> = {}): CutBand => ({
  depth: { fromMm: 14, toMm: 32 },
  lastDepth: { fromMm: 13, toMm: 33 },
  areaMm2: 117.2,
  firstAreaMm2: 0,
  lastAreaMm2: 0,
  takeOff: { mm: 6.12, at: { x: 0, y: 0 } },
  pieces: [],
  neededAreaMm2: 117.2,
  extraAreaMm2: 0,
  straightExtraAreaMm2: null,
  cutterWay: null,
  planned: [],
  first: [],
  last: [],
  lines: cutLines({ planned: [], first: [], last: [], ...said }),
  ...said,
});

/** A band with the figures of its lines. */
export function bandOfLines(lines: Pick<BandCut, 'planned' | 'first' | 'last'>, joint: Joint): CutBand {
  const [section] = joint.fixed.sections;
  const { depth, lastDepth, takeOff } = bandOf();
  const rest = {
    left: [],
    refused: [],
    boundMm: 0,
    pieces: [],
    neededMm3: null,
    way: null,
    narrow: [],
    straight: null,
  };
  const band = { depth, lastDepth, takeOff, neededMm2: 0, ...rest, ...lines, lines: cutLines(lines) };
  return cutSections(section === undefined ? [] : [{ section, bands: [band] }])[0]?.bands[0] as CutBand;
}

export const cutOf = (joint: Joint, said: Partial<PartCut> = {}): PartCut => ({
  part: 'fixed',
  boundMm: 0.01,
  volumeMm3: 2912,
  massG: 20.9,
  sections: [{ id: 'ribs', nothingLeft: false, bands: [bandOf()] }],
  walls: [],
  thin: [],
  readings: [],
  unmeasured: [],
  cutter: null,
  straight: null,
  severed: [],
  after: joint[said.part ?? 'fixed'],
  ...said,
});

/** A plan of one part, with what then stands against it. */
export function planOf(joint: Joint, cut: Partial<PartCut> = {}, said: Partial<PlanResult> = {}): PlanResult {
  const plan: PlanResult = {
    reason: null,
    holds: true,
    cuts: [cutOf(joint, cut)],
    uncured: [],
    afterCut: { home: homeOf(), wayIn: null, wander: null },
    hindrances: [],
    notices: [],
    judged: joint,
    alone: null,
    ...said,
  };
  return plan.holds ? plan : { ...plan, hindrances: hindrancesOf(plan, joint.fit.clearance) };
}
