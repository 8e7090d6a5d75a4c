import { type Box, boxAround } from '../../geometry/plane/edge-box.ts';
import type { Loop, Region } from '../../geometry/plane/loop.ts';
import { boxOfRegion } from '../../geometry/plane/region-box.ts';
import { distance } from '../../geometry/plane/vec.ts';
import type { DepthRange } from '../../job/casting.ts';
import { lengthText } from '../../job/length-text.ts';
import type { Units } from '../../job/lengths.ts';
import type { Part } from '../../job/part.ts';
import { shortName } from '../../words/names.ts';
import { heightOf, middleOf, widthOf } from '../scene/frame.ts';
import { briefDepth } from './depth-words.ts';
import { bandsOf, type DrawInput, foulsOf } from './draw-input.ts';

/** A place where metal comes off or, without a plan, is in the way. */
export interface WorkPlace {
  readonly box: Box;
  readonly works: readonly Work[];
}

/** What there is at a place in one section over one range of depth. */
export interface Work {
  readonly part: Part;
  /** The name of the part, where both are cut. */
  readonly partName: string | null;
  readonly section: string;
  readonly depth: DepthRange | null;
  readonly loops: Region;
  /** What comes off at most, in words. */
  readonly words: string;
}

/** Loops nearer than this to the middle of a place belong to it, mm, or half its size where that is more. */
const togetherMm = 9;

/** The places of a plan's cuts or, where it has none, of the fouls; the largest first. */
export function workPlaces(input: DrawInput): readonly WorkPlace[] {
  const { plan, joint } = input;
  const { units } = joint.fit;
  const isBoth = (plan?.cuts.length ?? 0) > 1;
  const cuts = bandsOf(plan).map((band) => ({
    ...band,
    partName: isBoth ? shortName(joint[band.part]) : null,
    words: takeOffText(band.takeOffMm, units),
  }));
  const fouls = foulsOf(input).map((foul) => ({
    ...foul,
    part: 'fixed' as const,
    partName: null,
    words: 'in the way',
  }));
  const works: Work[] = cuts.length > 0 ? cuts : fouls;
  const places: { box: Box; works: Work[] }[] = [];
  for (const work of works) for (const loop of work.loops) addLoop(places, work, loop);
  return places
    .sort((a, b) => sizeOf(b.box) - sizeOf(a.box))
    .map(({ box, works }) => ({ box, works: works.reduce(joinBands, []) }));
}

const takeOffText = (mm: number | null, units: Units): string =>
  mm === null ? 'nothing is left' : `take off to the line, ${lengthText(mm, units)} at most`;

export const sizeOf = (box: Box): number => Math.hypot(widthOf(box), heightOf(box));

function addLoop(places: { box: Box; works: Work[] }[], work: Work, loop: Loop): void {
  const box = boxOfRegion([loop]);
  const place = places.find(
    (other) => distance(middleOf(other.box), middleOf(box)) < Math.max(togetherMm, sizeOf(other.box) / 2),
  );
  const here = { ...work, loops: [loop] };
  if (place === undefined) places.push({ box, works: [here] });
  else {
    place.box = boxAround([place.box, box]);
    place.works.push(here);
  }
}

/** Bands that only the depth tells apart are told as one. */
function joinBands(works: Work[], work: Work): Work[] {
  const alike = works.findIndex(
    (other) =>
      other.part === work.part &&
      other.section === work.section &&
      other.words === work.words &&
      adjoin(other.depth, work.depth),
  );
  if (alike < 0) return [...works, work];
  return works.map((other, i) =>
    i === alike
      ? { ...other, depth: bothDepths(other.depth, work.depth), loops: [...other.loops, ...work.loops] }
      : other,
  );
}

function adjoin(a: DepthRange | null, b: DepthRange | null): boolean {
  if (a === null || b === null) return a === b;
  return a.fromMm <= b.toMm && b.fromMm <= a.toMm;
}

const bothDepths = (a: DepthRange | null, b: DepthRange | null): DepthRange | null =>
  a === null || b === null ? null : { fromMm: Math.min(a.fromMm, b.fromMm), toMm: Math.max(a.toMm, b.toMm) };

/** `ribs`, after the name of its part where both are cut. */
export const workName = ({ partName, section }: Pick<Work, 'partName' | 'section'>): string =>
  partName === null ? section : `${partName}, ${section}`;

/** A work in a line: `ribs, 14–32 mm from face: take off up to 6.1 mm`. */
export const workText = ({ depth, words, ...work }: Work, units: Units): string =>
  `${workName(work)}, ${briefDepth(depth, units)}: ${words}`;
