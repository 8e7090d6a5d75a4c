import { round6 } from '../geometry/plane/rounding.ts';
import type { DrilledThread } from '../holes/drilled-thread.ts';
import type { EnlargingResult, OldThread } from '../holes/enlarging.ts';
import type { HoleResult } from '../holes/hole-result.ts';
import type { BlindDepth, EngagementResult } from '../holes/tapped-depth.ts';
import type { ThreadData } from '../holes/thread-data.ts';
import type { Stray } from '../holes/wall.ts';
import type { HoleAnswer } from './hole-answer.ts';
import { roundDegrees, roundOrNull } from './rounded.ts';

/** A tapped hole as JSON, the answer of `fettle hole --json`: mm, mm² and degrees, each figure rounded to 1e-6. */
export const holeAnswer = (hole: HoleResult): HoleAnswer => ({
  format: 'fettle-hole/1',
  thread: threadAnswer(hole.thread),
  material: hole.material,
  ...drilledAnswer(hole.drilled),
  clearance: hole.clearance && {
    fineMm: hole.clearance.fineMm,
    mediumMm: hole.clearance.mediumMm,
    coarseMm: hole.clearance.coarseMm,
    source: hole.clearance.source,
  },
  atHand: hole.atHand && { ...drilledAnswer(hole.atHand), verdict: hole.atHand.verdict },
  engagement: hole.engagement && engagementAnswer(hole.engagement),
  depthMm: roundOrNull(hole.depthMm),
  engagementWithinMm: roundOrNull(hole.engagementWithinMm),
  wall: hole.wall && {
    beforeMm: roundOrNull(hole.wall.beforeMm),
    afterMm: round6(hole.wall.afterMm),
    keepMm: round6(hole.wall.keepMm),
    keepStated: hole.wall.keepStated,
  },
  stray: hole.stray && {
    depthMm: roundOrNull(hole.stray.depthMm),
    untilKeep: strayAnswer(hole.stray.untilKeep),
    untilGone: strayAnswer(hole.stray.untilGone),
  },
  enlarging: hole.enlarging && enlargingAnswer(hole.enlarging),
  against: [...hole.against],
});

const threadAnswer = (thread: ThreadData): HoleAnswer['thread'] => ({
  name: thread.name,
  system: thread.system,
  majorMm: round6(thread.majorMm),
  pitchMm: round6(thread.pitchMm),
  pitchDiameterMm: round6(thread.pitchDiameterMm),
  minorMm: round6(thread.minorMm),
  largestMinorMm: roundOrNull(thread.largestMinorMm),
  limitsOf: thread.limitsOf,
  stressAreaMm2: roundOrNull(thread.stressAreaMm2),
  sources: { geometry: thread.geometrySource, limits: thread.limitsSource, drill: thread.drill.source },
});

const drilledAnswer = ({ drill, basicShare, handbookShare, limits }: DrilledThread) => ({
  drill: { name: drill.name, diameterMm: round6(drill.diameterMm) },
  basicShare: roundOrNull(basicShare),
  handbookShare: roundOrNull(handbookShare),
  limits,
});

const engagementAnswer = (engagement: EngagementResult): HoleAnswer['engagement'] => ({
  wantedMm: round6(engagement.wantedMm),
  advisedMm: roundOrNull(engagement.advisedMm),
  advisedTimesMajor: engagement.advisedTimesMajor,
  advisedSource: engagement.advisedSource,
  fullThreadMm: round6(engagement.fullThreadMm),
  secondTap: blindAnswer(engagement.secondTap),
  bottomingTap: blindAnswer(engagement.bottomingTap),
});

const blindAnswer = ({ shoulderMm, tipMm }: BlindDepth) => ({ shoulderMm: round6(shoulderMm), tipMm: round6(tipMm) });

const strayAnswer = ({ offMm, leanRad }: Stray) => ({
  offMm: round6(offMm),
  leanDeg: leanRad === null ? null : roundDegrees(leanRad),
});

const oldAnswer = ({ grooveMm, goneShare, ofNewShare, samePitch }: OldThread) => ({
  grooveMm: round6(grooveMm),
  goneShare: round6(goneShare),
  ofNewShare: round6(ofNewShare),
  samePitch,
});

const enlargingAnswer = ({ was, old, sizes, insert }: EnlargingResult): HoleAnswer['enlarging'] => ({
  was: was.name,
  ...oldAnswer(old),
  sizes:
    sizes === null
      ? null
      : sizes.map((size) => ({
          thread: size.thread,
          wallMm: round6(size.wallMm),
          drillMm: round6(size.drillMm),
          ...oldAnswer(size.old),
        })),
  insert: insert && {
    carries: insert.carries,
    majorMm: round6(insert.hole.majorMm),
    drillMm: round6(insert.hole.drillMm),
    source: insert.hole.source,
    wallMm: roundOrNull(insert.wallMm),
    leavesWall: insert.leavesWall,
    betterFor: [...insert.betterFor],
  },
});
