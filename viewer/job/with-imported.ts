import type { PartDraft } from '../../src/files/job-file.ts';
import type { HoleFile, LoopFile, WallReadingFile } from '../../src/files/part-file.ts';
import { mmIn } from '../../src/job/length-text.ts';
import { vertexAt } from './arc.ts';
import { amended, freshName } from './part-edits.ts';

/**
 * A part with what a file brought: all of the file's where nothing is in the part yet, else its outlines and holes added,
 * in the part's units and under names that are not taken. Null where the two were seen from opposite sides.
 */
export function withImported(part: PartDraft, file: PartDraft): PartDraft | null {
  const empty = part.sections.length === 0 && (part.holes ?? []).length === 0;
  if (empty) return { ...part, ...file };
  if (file.viewedFrom !== undefined && part.viewedFrom !== undefined && file.viewedFrom !== part.viewedFrom)
    return null;
  const scale = mmIn(file.units) / mmIn(part.units);
  return amended(part, {
    sections: added(part.sections, file.sections, scale),
    hollows: file.hollows && added(part.hollows ?? [], file.hollows, scale),
    doNotCut: file.doNotCut && added(part.doNotCut ?? [], file.doNotCut, scale),
    holes: file.holes && added(part.holes ?? [], file.holes, scale),
    wallReadings: file.wallReadings && [
      ...(part.wallReadings ?? []),
      ...file.wallReadings.map((reading) => scaledReading(reading, scale)),
    ],
  });
}

function added<T extends Lengths & { readonly id: string }>(old: readonly T[], more: readonly T[], scale: number): T[] {
  const all = [...old];
  for (const each of more) {
    const id = freshName(
      each.id,
      all.map((one) => one.id),
    );
    all.push(Object.assign(scaled(each, scale), { id }));
  }
  return all;
}

/** Everything that is a length in an entry of a part. */
interface Lengths {
  readonly depth?: [number, number] | undefined;
  readonly loops?: LoopFile[];
  readonly at?: HoleFile['at'];
  readonly traceError?: number | undefined;
  readonly depthError?: number | undefined;
  readonly keepWall?: number | undefined;
  readonly diameter?: number | undefined;
  readonly proud?: number | undefined;
}

function scaled<T extends Lengths>(entry: T, by: number): T {
  if (by === 1) return { ...entry };
  const length = (value: number | undefined) => (value === undefined ? undefined : value * by);
  const pair = (value: readonly [number, number] | undefined): [number, number] | undefined =>
    value && [value[0] * by, value[1] * by];
  const lengths: Lengths = amended<Lengths>(
    {},
    {
      depth: pair(entry.depth),
      ...(entry.at ? { at: [entry.at[0] * by, entry.at[1] * by] } : {}),
      ...(entry.loops ? { loops: entry.loops.map((loop) => scaledLoop(loop, by)) } : {}),
      traceError: length(entry.traceError),
      depthError: length(entry.depthError),
      keepWall: length(entry.keepWall),
      diameter: length(entry.diameter),
      proud: length(entry.proud),
    },
  );
  return { ...entry, ...lengths };
}

function scaledReading({ at, depth, wall, error }: WallReadingFile, by: number): WallReadingFile {
  const lengths = { at: [at[0] * by, at[1] * by] as [number, number], depth: depth * by, wall: wall * by };
  return error === undefined ? lengths : { ...lengths, error: error * by };
}

/** A bulge is no length. */
const scaledLoop = (loop: LoopFile, by: number): LoopFile =>
  'circle' in loop
    ? { circle: [loop.circle[0] * by, loop.circle[1] * by], radius: loop.radius * by }
    : loop.map(([x, y, bulge]) => vertexAt([x * by, y * by], bulge));
