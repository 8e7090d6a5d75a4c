import type { DoNotCutFile, HoleFile, HollowFile, LoopFile, SectionFile, WallReadingFile } from '../files/part-file.ts';
import type { Loop, Vertex } from '../geometry/plane/loop.ts';
import { round6 } from '../geometry/plane/rounding.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import type { HoleKind } from '../job/casting.ts';
import type { Units } from '../job/lengths.ts';
import type { NamedDoNotCut, NamedHole, NamedHollow, NamedWallReading } from './drawing.ts';
import type { RoundHole } from './holes.ts';
import type { ImportOptions } from './import-options.ts';
import { lengthText } from './outlines/gap-text.ts';
import type { Outlines } from './outlines/outlines.ts';
import { curveToleranceMm } from './outlines/tolerances.ts';
import type { SectionShapes } from './sorted-shapes.ts';

/** How long a unit of the drawing and one of the part are. */
export interface Scale {
  readonly drawingMm: number;
  readonly partMm: number;
  /** Those of the part. */
  readonly units: Units;
}

/** A length of the drawing as one of the part. */
const partLength =
  ({ drawingMm, partMm }: Scale) =>
  (length: number): number =>
    round6((length * drawingMm) / partMm);

/** A section as a part file has it; `loops` in mm. */
export function sectionFile(
  { id, depth, facts }: SectionShapes,
  outlines: Outlines,
  loops: readonly Loop[],
  options: ImportOptions,
  scale: Scale,
): SectionFile {
  const toPart = partLength(scale);
  const own = facts?.depth ? ([toPart(facts.depth[0]), toPart(facts.depth[1])] as const) : depth;
  const gotBy = facts?.gotBy ?? options.gotBy;
  const mayCut = facts?.mayCut ?? options.mayCut.includes(id);
  const note = [facts?.note, ...notesOn(outlines, scale)].filter((text) => text).join('; ');
  return {
    id,
    ...(own ? { depth: [own[0], own[1]] as [number, number] } : {}),
    ...(mayCut ? { mayCut } : {}),
    ...(gotBy ? { gotBy } : {}),
    ...(facts?.traceError != null ? { traceError: toPart(facts.traceError) } : {}),
    ...(note ? { note } : {}),
    loops: loops.map((loop) => loopFile(loop, scale.partMm)),
  };
}

/** What was done to the outlines that the file's reader should know. */
function notesOn({ joined, hasCurves }: Outlines, { units }: Scale): string[] {
  const widest = lengthText(Math.max(0, ...joined.map(({ sizeMm }) => sizeMm)), units);
  return [
    ...(joined.length > 0 ? [`gaps joined: ${joined.length}, the widest ${widest}`] : []),
    ...(hasCurves ? [`curves followed by arcs within ${lengthText(curveToleranceMm, units)}`] : []),
  ];
}

function loopFile(loop: Loop, partMm: number): LoopFile {
  if (loop.kind === 'circle') return { circle: pointFile(loop.centre, partMm), radius: round6(loop.radius / partMm) };
  return loop.vertices.map((vertex) => vertexFile(vertex, partMm));
}

function vertexFile(vertex: Vertex, partMm: number): [number, number] | [number, number, number] {
  const [x, y] = pointFile(vertex, partMm);
  // a bulge is no length: nine places keep the arc within 1e-6 of a chord 1000 long
  const bulge = Math.round(vertex.bulge * 1e9) / 1e9;
  return bulge === 0 ? [x, y] : [x, y, bulge];
}

const pointFile = ({ x, y }: Vec, partMm: number): [number, number] => [round6(x / partMm), round6(y / partMm)];

export const roundHoleFile = ({ id, kind, circle }: RoundHole, { partMm }: Scale): HoleFile => ({
  id,
  kind,
  at: pointFile(circle.centre, partMm),
  diameter: round6((2 * circle.radius) / partMm),
});

export function namedHoleFile(hole: NamedHole, kind: HoleKind, scale: Scale): HoleFile {
  const { id, at, diameter, proud, thread, depth, keepWall, mayBreak } = hole;
  const toPart = partLength(scale);
  return {
    id,
    kind,
    at: [toPart(at.x), toPart(at.y)],
    ...(diameter === null ? {} : { diameter: toPart(diameter) }),
    ...(proud === null ? {} : { proud: toPart(proud) }),
    ...(thread === null ? {} : { thread }),
    ...(depth === null ? {} : { depth: [toPart(depth[0]), toPart(depth[1])] }),
    ...(keepWall === null ? {} : { keepWall: toPart(keepWall) }),
    ...(mayBreak === null ? {} : { mayBreak }),
  };
}

/** A region not to be cut as a part file has it; `loops` in mm. */
export function doNotCutFile({ id, depth }: NamedDoNotCut, loops: readonly Loop[], scale: Scale): DoNotCutFile {
  const toPart = partLength(scale);
  return {
    id,
    ...(depth === null ? {} : { depth: [toPart(depth[0]), toPart(depth[1])] }),
    loops: loops.map((loop) => loopFile(loop, scale.partMm)),
  };
}

export function wallReadingFile({ at, depth, wall, error }: NamedWallReading, scale: Scale): WallReadingFile {
  const toPart = partLength(scale);
  return {
    at: [toPart(at.x), toPart(at.y)],
    depth: toPart(depth),
    wall: toPart(wall),
    ...(error === null ? {} : { error: toPart(error) }),
  };
}

/** A hollow as a part file has it; `loops` in mm. */
export function hollowFile(hollow: NamedHollow, loops: readonly Loop[], scale: Scale): HollowFile {
  const toPart = partLength(scale);
  const { keepWall, traceError } = hollow;
  return {
    ...doNotCutFile(hollow, loops, scale),
    ...(keepWall === null ? {} : { keepWall: toPart(keepWall) }),
    ...(traceError === null ? {} : { traceError: toPart(traceError) }),
  };
}
