import type {
  HoleFile,
  HollowFile,
  LoopFile,
  MaterialFile,
  PartFile,
  SectionFile,
  WallReadingFile,
} from '../files/part-file.ts';
import { mirrorPoint, mirrorRegion, type Region } from '../geometry/plane/loop.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import { materialNamed } from '../trade/materials.ts';
import { depthErrorAsCastMm, depthErrorMmOf, traceErrorMmOf, traceErrorNotStatedMm } from '../trade/tracing.ts';
import type { Casting, DepthRange, Hole, Hollow, Material, Section, WallReading } from './casting.ts';
import { depthOf, loopOf, mmPer, pointOf } from './lengths.ts';
import type { Part } from './part.ts';

/** What a part is in its job; a rotating part is drawn and seen as the fixed one. */
export type Role = Part | 'rotating';

/** Whether a part was drawn from the other side than the joint is looked at. */
export const isMirrored = (viewedFrom: 'face' | 'back', role: Role): boolean =>
  viewedFrom === (role === 'moving' ? 'face' : 'back');

/** How the numbers of a part file are to be read. */
interface Frame {
  readonly mm: number;
  readonly mirrored: boolean;
}

/** Common practice, no source: what a caliper or an ultrasonic gauge tells through a cast skin. */
const wallReadingErrorMm = 0.5;

/** A part of sound geometry as its job uses it: in mm, mirrored where it was drawn from the other side. */
export function castingOf(file: string, part: PartFile, role: Role): Casting {
  const frame: Frame = { mm: mmPer(part.units), mirrored: isMirrored(part.viewedFrom, role) };
  return {
    file,
    name: part.name,
    viewedFrom: part.viewedFrom,
    mirrored: frame.mirrored,
    units: part.units,
    material: part.material === undefined ? null : materialOf(part.material),
    castingNumber: part.castingNumber ?? null,
    sections: part.sections.map((section) => sectionOf(section, part, frame)),
    holes: (part.holes ?? []).map((hole) => holeOf(hole, frame)),
    hollows: (part.hollows ?? []).map((hollow) => hollowOf(hollow, part, frame)),
    doNotCut: (part.doNotCut ?? []).map((region) => ({ id: region.id, ...regionInDepth(region, frame) })),
    wallReadings: (part.wallReadings ?? []).map((reading) => wallReadingOf(reading, frame)),
    traced: part.traced === undefined ? null : regionInDepth(part.traced, frame),
  };
}

function materialOf(material: MaterialFile): Material | null {
  if (typeof material !== 'string') return { name: 'as stated', densityGPerCm3: material.density };
  const known = materialNamed(material);
  return known === null ? null : { name: known.name, densityGPerCm3: known.densityGPerCm3 };
}

function sectionOf(section: SectionFile, part: PartFile, frame: Frame): Section {
  const { gotBy = null } = section;
  const stated = section.traceError ?? part.traceError;
  const ofMethod = gotBy === null ? null : traceErrorMmOf(gotBy);
  return {
    id: section.id,
    ...regionInDepth(section, frame),
    mayCut: section.mayCut ?? false,
    traceErrorMm: stated === undefined ? (ofMethod ?? traceErrorNotStatedMm) : stated * frame.mm,
    depthErrorMm: depthErrorMm(section, part, frame),
    gotBy,
    traceErrorStated: stated !== undefined || ofMethod !== null,
    note: section.note ?? null,
  };
}

function depthErrorMm(section: SectionFile, part: PartFile, { mm }: Frame): number {
  const stated = section.depthError ?? part.depthError;
  if (stated !== undefined) return stated * mm;
  return (section.gotBy === undefined ? null : depthErrorMmOf(section.gotBy)) ?? depthErrorAsCastMm;
}

const holeOf = (hole: HoleFile, frame: Frame): Hole => ({
  id: hole.id,
  kind: hole.kind,
  at: pointInFrame(hole.at, frame),
  diameterMm: hole.diameter === undefined ? null : hole.diameter * frame.mm,
  proudMm: (hole.proud ?? 0) * frame.mm,
  proudStated: hole.proud !== undefined,
  thread: hole.thread ?? null,
  depth: depthOf(hole.depth, frame.mm),
  keepWallMm: hole.keepWall === undefined ? null : hole.keepWall * frame.mm,
  mayBreak: hole.mayBreak ?? false,
});

const hollowOf = (hollow: HollowFile, part: PartFile, frame: Frame): Hollow => ({
  id: hollow.id,
  ...regionInDepth(hollow, frame),
  keepWallMm: hollow.keepWall === undefined ? null : hollow.keepWall * frame.mm,
  traceErrorMm: lengthMm(hollow.traceError ?? part.traceError, frame, traceErrorNotStatedMm),
});

const wallReadingOf = (reading: WallReadingFile, frame: Frame): WallReading => ({
  at: pointInFrame(reading.at, frame),
  depthMm: reading.depth * frame.mm,
  wallMm: reading.wall * frame.mm,
  errorMm: lengthMm(reading.error, frame, wallReadingErrorMm),
});

/** A length of the file in mm, or its default, which is in mm whatever the units. */
const lengthMm = (length: number | undefined, { mm }: Frame, defaultMm: number): number =>
  length === undefined ? defaultMm : length * mm;

function pointInFrame(at: readonly [number, number], { mm, mirrored }: Frame): Vec {
  const point = pointOf(at, mm);
  return mirrored ? mirrorPoint(point) : point;
}

interface LoopHolderFile {
  readonly depth?: readonly [number, number] | undefined;
  readonly loops: readonly LoopFile[];
}

function regionInDepth(holder: LoopHolderFile, { mm, mirrored }: Frame): { depth: DepthRange | null; loops: Region } {
  const loops = holder.loops.map((loop) => loopOf(loop, mm));
  return { depth: depthOf(holder.depth, mm), loops: mirrored ? mirrorRegion(loops) : loops };
}
