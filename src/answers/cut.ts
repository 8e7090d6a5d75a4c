import type { LoopFile } from '../files/part-file.ts';
import type { Loop, Region } from '../geometry/plane/loop.ts';
import { round6, roundPoint6, roundUp6 } from '../geometry/plane/rounding.ts';
import type { CutterResult } from '../plan/cutter/cutter-result.ts';
import type { StraightResult } from '../plan/cutter/straight-result.ts';
import type { CutBand, PartCut } from '../plan/part-cut.ts';
import type { BandAnswer, CutAnswer } from './grind-answer.ts';
import { roundDepth, roundOrNull } from './rounded.ts';

/** The cut of one part as the answer gives it. */
export const cutAnswer = (cut: PartCut): CutAnswer => ({
  boundMm: roundUp6(cut.boundMm),
  volumeMm3: roundOrNull(cut.volumeMm3),
  massG: roundOrNull(cut.massG),
  sections: cut.sections.map(({ id, nothingLeft, bands }) => ({ id, nothingLeft, bands: bands.map(bandAnswer) })),
  ...wallsAnswer(cut),
  cutter: cut.cutter && cutterAnswer(cut.cutter),
  straight: cut.straight && straightAnswer(cut.straight),
  severed: cut.severed.map(({ section, areaMm2, at }) => ({
    section,
    areaMm2: round6(areaMm2),
    at: roundPoint6(at),
  })),
});

const bandAnswer = (band: CutBand): BandAnswer => ({
  depth: roundDepth(band.depth),
  lastDepth: roundDepth(band.lastDepth),
  areaMm2: round6(band.areaMm2),
  takeOffMm: band.takeOff && round6(band.takeOff.mm),
  loops: loopFiles(band.lines.planned),
  firstLoops: loopFiles(band.lines.first),
  lastLoops: loopFiles(band.lines.last),
  neededAreaMm2: round6(band.neededAreaMm2),
  extraAreaMm2: round6(band.extraAreaMm2),
  cutterWay: band.cutterWay,
  straightExtraAreaMm2: roundOrNull(band.straightExtraAreaMm2),
});

const loopFiles = (loops: Region): BandAnswer['loops'] => loops.map(loopFile);

/** Bulges have the nine places they were made with: rounded like lengths they would move a long arc. */
const loopFile = (loop: Loop): LoopFile =>
  loop.kind === 'circle'
    ? { circle: roundPoint6(loop.centre), radius: round6(loop.radius) }
    : loop.vertices.map((vertex) => {
        const [x, y] = roundPoint6(vertex);
        return vertex.bulge === 0 ? [x, y] : [x, y, vertex.bulge];
      });

type Walls = Pick<CutAnswer, 'walls' | 'thin' | 'readings' | 'unmeasured'>;

const wallsAnswer = ({ walls, thin, readings, unmeasured }: PartCut): Walls => ({
  walls: walls.map(({ hollow, kind, wallMm, nominalMm, keepMm, keepBy, isDepthAssumed, at, holds }) => ({
    hollow,
    kind,
    wallMm: round6(wallMm),
    nominalMm: round6(nominalMm),
    keepMm: roundOrNull(keepMm),
    keepBy,
    depthAssumed: isDepthAssumed,
    at: roundPoint6(at),
    holds,
  })),
  thin: thin.map(({ section, depth, wallMm, nominalMm, keepMm, along, at, across, holds }) => ({
    section,
    depth: roundDepth(depth),
    wallMm: round6(wallMm),
    nominalMm: round6(nominalMm),
    keepMm: round6(keepMm),
    along,
    at: roundPoint6(at),
    across: roundPoint6(across),
    holds,
  })),
  readings: readings.map((wall) => ({
    section: wall.section,
    depth: roundDepth(wall.depth),
    at: roundPoint6(wall.at),
    readAtDepthMm: round6(wall.readAtDepthMm),
    readMm: round6(wall.readMm),
    takeOffMm: round6(wall.takeOffMm),
    wallMm: round6(wall.wallMm),
    mostTakeOffMm: round6(wall.mostTakeOffMm),
    mostAt: roundPoint6(wall.mostAt),
    leastWallMm: round6(wall.leastWallMm),
    keepMm: roundOrNull(wall.keepMm),
    holds: wall.holds,
  })),
  unmeasured: unmeasured.map(({ section, depth, at, atDepthMm }) => ({
    section,
    depth: roundDepth(depth),
    at: roundPoint6(at),
    atDepthMm: roundOrNull(atDepthMm),
  })),
});

const cutterAnswer = (cutter: CutterResult): CutAnswer['cutter'] => ({
  radiusMm: round6(cutter.radiusMm),
  nose: cutter.nose,
  scallopMm: roundOrNull(cutter.scallopMm),
  neededVolumeMm3: roundOrNull(cutter.neededVolumeMm3),
  extraVolumeMm3: roundOrNull(cutter.extraVolumeMm3),
  extraMassG: roundOrNull(cutter.extraMassG),
  ends: cutter.ends.map(({ section, atMm, towards, at, what, mm, reachMm, against }) => ({
    section,
    atMm: round6(atMm),
    towards,
    at: roundPoint6(at),
    what,
    mm: round6(mm),
    reachMm: round6(reachMm),
    against,
  })),
  narrow: cutter.narrow.map(({ section, at, gapMm }) => ({ section, at: roundPoint6(at), gapMm: round6(gapMm) })),
  covered: cutter.covered.map(({ section, by, areaMm2, at }) => ({
    section,
    by,
    areaMm2: round6(areaMm2),
    at: roundPoint6(at),
  })),
});

const straightAnswer = (straight: StraightResult): CutAnswer['straight'] => ({
  leastFlatMm: straight.leastFlatMm,
  leastArcRadiusMm: round6(straight.leastArcRadiusMm),
  extraVolumeMm3: roundOrNull(straight.extraVolumeMm3),
  extraMassG: roundOrNull(straight.extraMassG),
  asItWas: straight.asItWas.map(({ section, depth, at, why }) => ({
    section,
    depth: roundDepth(depth),
    at: roundPoint6(at),
    why,
  })),
});
