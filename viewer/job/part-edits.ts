import type { JobFile, OpenRunFile, PartDraft } from '../../src/files/job-file.ts';
import type { HoleFile, LoopFile, SectionFile } from '../../src/files/part-file.ts';
import type { XY } from './arc.ts';
import { withPlaceNamed, withTouchedHoleNamed } from './picture-names.ts';
import { tidied } from './tidied.ts';

/** The lists of a part that hold outlines; where the tracing is complete is a list of one at most. */
export const loopLists = ['sections', 'hollows', 'doNotCut', 'traced'] as const;
export type LoopList = (typeof loopLists)[number];

/** One entry of such a list. */
export interface Place {
  readonly list: LoopList;
  readonly index: number;
}

/** What the entries of all those lists have in common. */
export interface LoopHolder {
  readonly id: string;
  readonly depth?: [number, number] | undefined;
  readonly loops: LoopFile[];
}

export type WallReading = NonNullable<PartDraft['wallReadings']>[number];

/** A part with nothing in it yet; from where it was seen is for its tracer to say. */
export const emptyPart = (name: string, units: 'mm' | 'in'): PartDraft => ({
  format: 'fettle-part/1',
  name,
  units,
  sections: [],
});

/** The job with one of its parts changed; as it is where it has no such part. */
export function withPart(job: JobFile, file: string, change: (part: PartDraft) => PartDraft): JobFile {
  const part = job.parts[file];
  if (part === undefined) return job;
  const next = change(part);
  return next === part ? job : { ...job, parts: { ...job.parts, [file]: next } };
}

/** An object with some of its values changed; a key whose new value is undefined is left out. */
export function amended<T extends object>(old: T, changes: Partial<T>): T {
  const entries = Object.entries({ ...old, ...changes }).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries) as T;
}

/** `base`, or the first of `base 2`, `base 3` … that is not taken. */
export function freshName(base: string, taken: readonly string[]): string {
  if (!taken.includes(base)) return base;
  for (let n = 2; ; n++) if (!taken.includes(`${base} ${n}`)) return `${base} ${n}`;
}

export function holdersOf(part: PartDraft, list: LoopList): readonly LoopHolder[] {
  if (list !== 'traced') return part[list] ?? [];
  return part.traced === undefined ? [] : [{ id: list, ...part.traced }];
}

/** A part with other entries in a list; of where the tracing is complete only the outlines and the depth are written. */
function withHolders(part: PartDraft, list: LoopList, holders: readonly LoopHolder[]): PartDraft {
  if (list !== 'traced') return { ...part, [list]: holders };
  const [traced] = holders.map(({ id: _, ...rest }) => rest);
  return amended(part, { traced });
}

export const holderAt = (part: PartDraft, { list, index }: Place): LoopHolder | undefined =>
  holdersOf(part, list)[index];

const idsOf = (part: PartDraft, list: LoopList): string[] => holdersOf(part, list).map(({ id }) => id);

function withHolder(
  part: PartDraft,
  { list, index }: Place,
  change: (old: LoopHolder) => LoopHolder | null,
): PartDraft {
  const holders = holdersOf(part, list).flatMap((old, i) => (i === index ? (change(old) ?? []) : [old]));
  return withHolders(part, list, holders);
}

export const withSection = (part: PartDraft, base: string): PartDraft => ({
  ...part,
  sections: [...part.sections, { id: freshName(base, idsOf(part, 'sections')), loops: [] }],
});

type Details = Partial<Pick<SectionFile, 'depth' | 'mayCut' | 'gotBy' | 'traceError' | 'depthError' | 'note'>> & {
  readonly keepWall?: number | undefined;
};

/** Changes what is said of a section, a hollow or a place not to cut; undefined takes a value away. */
export const withDetails = (part: PartDraft, place: Place, changes: Details): PartDraft =>
  withHolder(part, place, (old) => amended(old, changes));

/** Renames an entry and the open runs that go with it; as it is where the name is blank or taken. */
export function renamed(job: JobFile, file: string, place: Place, id: string): JobFile {
  const part = job.parts[file];
  const old = part && holderAt(part, place)?.id;
  if (part === undefined || old === undefined || id.trim() === '' || idsOf(part, place.list).includes(id)) return job;
  const next = withPart(job, file, (draft) => withHolder(draft, place, (holder) => ({ ...holder, id })));
  const isOpen = (run: OpenRunFile): boolean => place.list === 'sections' && run.part === file && run.section === old;
  return amended(next, {
    openRuns: next.openRuns?.map((run) => (isOpen(run) ? { ...run, section: id } : run)),
    pictures: next.pictures?.map((picture) =>
      picture.part === file ? withPlaceNamed(picture, place.list, old, id) : picture,
    ),
  });
}

/** Takes an entry away, and the open runs that go with it. */
export function withoutPlace(job: JobFile, file: string, place: Place): JobFile {
  const part = job.parts[file];
  const old = part && holderAt(part, place)?.id;
  const next = withPart(job, file, (draft) => withHolder(draft, place, () => null));
  if (place.list !== 'sections') return next;
  return amended(next, { openRuns: next.openRuns?.filter((run) => run.part !== file || run.section !== old) });
}

export const withLoop = (part: PartDraft, place: Place, loop: LoopFile): PartDraft =>
  withHolder(part, place, (old) => ({ ...old, loops: [...old.loops, tidied(loop)] }));

/** Changes one outline; null takes it away, and with its last outline a hollow or a place not to cut goes too. */
export const withLoopChanged = (part: PartDraft, place: Place, index: number, loop: LoopFile | null): PartDraft =>
  withHolder(part, place, (old) => {
    const loops = old.loops.flatMap((each, i) => (i === index ? (loop === null ? [] : [tidied(loop)]) : [each]));
    return loops.length === 0 && place.list !== 'sections' ? null : { ...old, loops };
  });

/** Makes an outline one of another list, over the same depth, under a name of its own. */
export function withLoopAs(part: PartDraft, place: Place, index: number, list: LoopList, base: string): PartDraft {
  const holder = holderAt(part, place);
  const loop = holder?.loops[index];
  if (holder === undefined || loop === undefined || list === place.list) return part;
  const rest = withLoopChanged(part, place, index, null);
  const made = amended<LoopHolder>({ id: freshName(base, idsOf(part, list)), depth: holder.depth, loops: [loop] }, {});
  const there = holdersOf(rest, list);
  const more = list === 'traced' ? there.map((old) => ({ ...old, loops: [...old.loops, loop] })) : [];
  return withHolders(rest, list, more.length > 0 ? more : [...there, made]);
}

/** Letters that holes of a kind are numbered with; what nobody has said the kind of yet counts as a bolt's. */
const letters = { dowel: 'D', bolt: 'H', tapped: 'T', stud: 'S', bore: 'BORE', planned: 'P' } as const;

export function withHole(part: PartDraft, kind: HoleFile['kind'], [x, y]: XY, diameter?: number): PartDraft {
  const holes = part.holes ?? [];
  const taken = new Set(holes.map(({ id }) => id));
  let n = 1;
  while (taken.has(`${letters[kind]}${n}`)) n++;
  const hole: HoleFile = { id: `${letters[kind]}${n}`, kind, at: [x, y] };
  return { ...part, holes: [...holes, amended(hole, { diameter })] };
}

export const dowelsOf = ({ holes = [] }: Pick<PartDraft, 'holes'>): HoleFile[] =>
  holes.filter(({ kind }) => kind === 'dowel');

/** Says that a hole is a dowel, or that it is none after all. */
export const withDowel = (part: PartDraft, index: number): PartDraft =>
  withHoleChanged(part, index, { kind: part.holes?.[index]?.kind === 'dowel' ? 'bolt' : 'dowel' });

/** Changes what is said of a hole; its name is for `holeRenamed`. */
export const withHoleChanged = (part: PartDraft, index: number, changes: Partial<Omit<HoleFile, 'id'>>): PartDraft => ({
  ...part,
  holes: (part.holes ?? []).map((hole, i) => (i === index ? amended<HoleFile>(hole, changes) : hole)),
});

/** Renames a hole, and the fit's mentions of it; as it is where the name is blank or taken. */
export function holeRenamed(job: JobFile, file: string, index: number, id: string): JobFile {
  const holes = job.parts[file]?.holes ?? [];
  const old = holes[index]?.id;
  if (old === undefined || id.trim() === '' || holes.some((hole) => hole.id === id)) return job;
  const named = withPart(job, file, (part) => ({
    ...part,
    holes: holes.map((hole, i) => (i === index ? { ...hole, id } : hole)),
  }));
  const touched = withTouchedHoleNamed(named, file, old, id);
  return withMentions(touched, file, (name) => (name === old ? id : name));
}

/** Takes a hole away, and the pairs of the fit that name it. */
export function withoutHole(job: JobFile, file: string, index: number): JobFile {
  const old = job.parts[file]?.holes?.[index]?.id;
  const rest = withPart(job, file, (part) => ({ ...part, holes: (part.holes ?? []).filter((_, i) => i !== index) }));
  return withMentions(rest, file, (name) => (name === old ? null : name));
}

/** Makes a hole of known diameter the hollow of the same circle, over the same depth; the fit no longer names it, and an axis stays in its place. */
export function holeAsHollow(job: JobFile, file: string, index: number): JobFile {
  const hole = job.parts[file]?.holes?.[index];
  if (hole?.diameter === undefined) return job;
  const { at, diameter, depth, keepWall } = hole;
  const loops: LoopFile[] = [{ circle: at, radius: diameter / 2 }];
  const rest = withoutHole(job, file, index);
  const isAxis = job.fit.fixed === file && job.fit.axis === hole.id;
  return withPart(isAxis ? { ...rest, fit: { ...rest.fit, axis: at } } : rest, file, (part) => {
    const id = freshName(hole.id, idsOf(part, 'hollows'));
    return { ...part, hollows: [...(part.hollows ?? []), amended({ id, depth, loops, keepWall }, {})] };
  });
}

/** The fit with every name of a hole of one part put as `named` says; a pair of which one goes, goes. */
function withMentions(job: JobFile, file: string, named: (id: string) => string | null): JobFile {
  const { fit } = job;
  const side = fit.fixed === file ? 0 : fit.moving === file ? 1 : null;
  if (side === null) return job;
  const pairsOf = (pairs: JobFile['fit']['dowels']): JobFile['fit']['dowels'] =>
    pairs?.flatMap(([fixed, moving]): [string, string][] => {
      const id = named(side === 0 ? fixed : moving);
      return id === null ? [] : [side === 0 ? [id, moving] : [fixed, id]];
    });
  const axis = side === 0 && typeof fit.axis === 'string' ? (named(fit.axis) ?? fit.axis) : fit.axis;
  return { ...job, fit: amended(fit, { dowels: pairsOf(fit.dowels), bolts: pairsOf(fit.bolts), axis }) };
}

export const withWallReading = (part: PartDraft, reading: WallReading): PartDraft => ({
  ...part,
  wallReadings: [...(part.wallReadings ?? []), reading],
});

export const withoutWallReading = (part: PartDraft, index: number): PartDraft => ({
  ...part,
  wallReadings: (part.wallReadings ?? []).filter((_, i) => i !== index),
});
