import type { SectionFile } from '../files/part-file.ts';
import { outlineSize } from '../geometry/plane/outline-size.ts';
import { round6, roundPoint6 } from '../geometry/plane/rounding.ts';
import { loopOf } from '../job/lengths.ts';
import type { DrawingImport } from './import-drawing.ts';
import { branchText, gapText, joinedText, lengthText } from './outlines/gap-text.ts';
import type { Gap } from './outlines/gaps.ts';

/** How many gaps, or places where lines branch, are listed one by one. */
const mostListed = 20;
/** A gap wider than this (mm) is no untidy drawing. */
const widestUntidyMm = 5;

/** What became of a file, for a builder to read: what was made of it, what was done to it, what is left to do. */
export const importText = (imported: DrawingImport, file: string, partFile: string): string =>
  [importedText(imported, file, partFile), ...paragraph('Next', nextTexts(imported, partFile), (text) => text)].join(
    '\n',
  );

/** The same but for what is left to do, where that is asked otherwise than on the command line. */
export function importedText(imported: DrawingImport, file: string, partFile: string): string {
  const { units } = imported.part;
  return [
    headline(imported, file, partFile),
    ...imported.part.sections.map((section) => `  ${sectionText(section, imported)}`),
    ...holesText(imported),
    ...hollowsText(imported),
    ...paragraph(`Gaps joined, up to ${lengthText(imported.joinMm, units)}`, imported.joined, (gap) =>
      joinedText(gap, units),
    ),
    ...paragraph('Gaps left open: these lines are in no outline', imported.gaps, (gap) => gapText(gap, units)),
    ...paragraph('Lines that branch: these are in no outline', imported.branches, (branch) =>
      branchText(branch, units),
    ),
    ...paragraph('Said of the file', imported.notes, ({ text }) => text),
  ].join('\n');
}

const isWhole = ({ gaps, branches }: DrawingImport): boolean => gaps.length + branches.length === 0;

function headline(imported: DrawingImport, file: string, partFile: string): string {
  const { unit, part } = imported;
  const lengths = unit.name === part.units ? part.units : `${part.units} (the file: ${unit.name})`;
  return `${isWhole(imported) ? 'IMPORTED' : 'GAPS LEFT'} ${file} into ${partFile}, lengths in ${lengths}`;
}

function sectionText({ id, depth, loops }: SectionFile, { part }: DrawingImport): string {
  const reach = depth ? `depth ${depth[0]} to ${depth[1]} ${part.units}` : 'no depth, so through every depth';
  const { width, height, round } = outlineSize(loops.map((loop) => loopOf(loop, 1)));
  const size = `${sizeText(width)} × ${sizeText(height)} ${part.units}, ${sizeText(round)} ${part.units} round`;
  return `section ${id}: ${loops.length} outline${loops.length === 1 ? '' : 's'}, ${size}, ${reach}`;
}

function hollowsText({ part: { hollows = [], doNotCut = [], wallReadings = [] } }: DrawingImport): string[] {
  const named = (what: string, ids: readonly string[]): string[] =>
    ids.length === 0 ? [] : [`  ${what}: ${listedIds(ids)}`];
  return [
    ...named(
      'hollow',
      hollows.map(({ id }) => id),
    ),
    ...named(
      'do not cut',
      doNotCut.map(({ id }) => id),
    ),
    ...(wallReadings.length === 0 ? [] : [`  readings of walls: ${wallReadings.length}`]),
  ];
}

const listedIds = (ids: readonly string[]): string =>
  `${ids.slice(0, mostListed).join(' ')}${ids.length > mostListed ? ' …' : ''}`;

function holesText({ part: { holes = [] }, proposed }: DrawingImport): string[] {
  const kinds = [...new Set(holes.map(({ kind }) => kind))];
  const listed = kinds.map((kind) => {
    const ids = holes.filter((hole) => hole.kind === kind).map(({ id }) => id);
    return `  ${kind}: ${listedIds(ids)}`;
  });
  return proposed.length === 0 ? listed : [...listed, `  told by size and place alone: ${listedIds(proposed)}`];
}

/** To four figures or the last whole one: enough to hold a rule against. */
const sizeText = (length: number): string =>
  String(length >= 1000 ? Math.round(length) : Number(length.toPrecision(4)));

/** What only the builder can know or do. */
function nextTexts(imported: DrawingImport, partFile: string): string[] {
  const { sections, holes = [], units } = imported.part;
  const narrow = imported.gaps.filter(({ sizeMm }) => sizeMm <= widestUntidyMm).map(({ sizeMm }) => sizeMm);
  const widest = lengthText(Math.max(...narrow.slice(0, mostListed)), units);
  return [
    ...(isWhole(imported) ? [] : ['close the gaps in the drawing and import it again']),
    ...(narrow.length > 0 ? [`or, if they are only untidy drawing, say --join; the widest of them is ${widest}`] : []),
    ...(holes.length > 0 ? [] : ['name the dowels and bolts: --dowels LAYER, --bolts LAYER or --hole D1=dowel@x,y']),
    ...(sections.some(({ depth }) => depth === undefined)
      ? [`give each section its depth: --depth or in ${partFile}`]
      : []),
  ];
}

function paragraph<T>(heading: string, items: readonly T[], text: (item: T) => string): string[] {
  if (items.length === 0) return [];
  const more = items.length - mostListed;
  const listed = items.slice(0, mostListed).map((item) => `  - ${text(item)}`);
  return ['', `${heading}:`, ...listed, ...(more > 0 ? [`  and ${more} more`] : [])];
}

/** The same for a program to read: lengths and places in mm, as traced. */
export function importAnswer(imported: DrawingImport, partFile: string): unknown {
  const { part, unit, joined, gaps, branches, notes } = imported;
  const gap = ({ from, to, sizeMm, layer }: Gap) => ({
    from: roundPoint6(from),
    to: roundPoint6(to),
    sizeMm: round6(sizeMm),
    layer,
  });
  return {
    format: 'fettle-import/1',
    part: partFile,
    units: part.units,
    fileUnits: unit.name,
    sections: part.sections.map(({ id, loops }) => ({ id, outlines: loops.length })),
    holes: (part.holes ?? []).map(({ id, kind }) => ({ id, kind })),
    hollows: (part.hollows ?? []).map(({ id, loops }) => ({ id, outlines: loops.length })),
    doNotCut: (part.doNotCut ?? []).map(({ id, loops }) => ({ id, outlines: loops.length })),
    wallReadings: part.wallReadings?.length ?? 0,
    joined: joined.map(gap),
    gaps: gaps.map(gap),
    branches: branches.map(({ at, lines }) => ({ at: roundPoint6(at), lines })),
    notes,
  };
}
