import type { Box } from '../../geometry/plane/edge-box.ts';
import { add, distance, polar, scale, type Vec, vec } from '../../geometry/plane/vec.ts';
import type { Bench, BenchBand, BenchPlace } from '../../markout/marking-out-bench.ts';
import { scaleFor } from '../fit/detail-view.ts';
import { holeRadius } from '../fit/hole-symbols.ts';
import { hatch, hatchRad } from '../fit/plane-layers.ts';
import { boxOfPoints, heightOf, middleOf, overlap, widthOf } from '../scene/frame.ts';
import { boxOfLayers, boxOfText, circle, cross, gathered, layer, line, outline, text } from '../scene/marks.ts';
import type { Layer, Scene, TextMark, View } from '../scene/scene.ts';
import { ringView } from './ring-view.ts';
import { asRun } from './template-marks.ts';
import { gapMm, highMm, inSheets, roomUnderMm, sheetSizes, templateSheet, wordsMm } from './template-sheet.ts';
import { bandWords, templateWords } from './template-words.ts';

const { textMm, hatchMm } = sheetSizes;

/** The size a hole is drawn with that has none, and its lettering. */
const holeSizes = { textMm };

/** The arms of the cross on the crank axis, mm. */
const crankMm = 8;

/** Numbers closer than this on paper crowd one another, mm. */
const crowdedMm = 4;
/** The radius of a detail on paper, mm: two stand side by side. */
const ringMm = 38;
/** What stands under a detail, and the gap above it, mm on paper. */
const captionMm = 16;
/** How far round its places a detail reaches, mm of the casting. */
const roundMm = 5;

/** Places that stand too close to be numbered on the whole casting, and the letter of their detail. */
interface Cluster {
  readonly letter: string;
  readonly band: BenchBand;
  readonly places: readonly BenchPlace[];
  readonly centre: Vec;
  readonly radiusMm: number;
}

/**
 * The casting with the numbers of its marking-out table on it, to find places by: reduced to the sheet, and enlarged where
 * they crowd. As many sheets as it takes.
 */
export function pictureScenes(bench: Bench, withBars: boolean): Scene[] {
  const words = templateWords(bench, 'Where the numbers are', [
    'Find each number of the table here, then measure its place by the table. Nothing is measured off this picture: the whole casting is drawn smaller than it is, and a detail larger, as many times as stands beside its letter.',
    'Hatched is what comes off, down to the wide line.',
  ]);
  const roomMm = roomUnderMm(words);
  const alone = numberedPicture(bench, wordsMm, roomMm);
  // two details fit under the whole casting drawn a little smaller
  const { whole, details } =
    alone.details.length === 0 ? alone : numberedPicture(bench, wordsMm, roomMm - 2 * ringMm - captionMm);
  return pagesOf(whole, details, roomMm).map((views) => templateSheet(words, views, withBars));
}

/** The whole casting within a room on paper, and what is to be seen larger. */
export function numberedPicture(
  bench: Bench,
  widthMm: number,
  heightMm: number,
): { readonly whole: View; readonly details: readonly View[] } {
  const plane = planeOf(bench);
  const around = boxOfLayers(plane.filter(({ role }) => role !== 'relief-hatch'));
  // room for words at the rim
  const [roomX, roomY] = [widthMm - 4 * textMm, heightMm - 4 * textMm];
  const reduced = Math.min(1, roomX / Math.max(1, widthOf(around)), roomY / Math.max(1, heightOf(around)));
  const clusters = clustersOf(bench, reduced);
  const crowded = new Set(clusters.flatMap(({ places }) => places));
  const free = bench.bands.flatMap(({ places }) => places).filter((place) => !crowded.has(place));
  const names = holeNames(bench, reduced);
  const numbers = numbersOf(free, reduced, names);
  const rings = ringsOf(clusters, reduced, [...names, ...textsOf(numbers)]);
  return {
    whole: viewAt('casting', reduced, [...plane, layer('text', names), ...numbers, ...rings]),
    details: clusters.map((cluster) => detailOf(cluster, bench, plane)),
  };
}

const textsOf = (layers: readonly Layer[]): TextMark[] =>
  layers.flatMap(({ marks }) => marks.filter((mark): mark is TextMark => mark.kind === 'text'));

function viewAt(id: string, scale: number, layers: readonly Layer[]): View {
  const all = gathered(layers);
  return { id, at: vec(0, 0), scale, frame: boxOfLayers(all, scale), clip: null, layers: all };
}

/** The casting as it is with what comes off, whatever the scale. */
function planeOf({ present, bands }: Bench): Layer[] {
  const { sections, hollows, doNotCut, holes } = present;
  const outlines = sections.map(({ loops }) => outline(loops));
  return [
    layer('fixed-metal', outlines),
    layer('as-it-is', outlines),
    layer(
      'hollow',
      hollows.map(({ loops }) => outline(loops)),
    ),
    layer(
      'do-not-cut',
      doNotCut.map(({ loops }) => outline(loops)),
    ),
    layer(
      'relief-hatch',
      bands.map(({ relief }) => hatch(relief, hatchRad, hatchMm)),
    ),
    layer(
      'fixed',
      bands.flatMap(({ edges }) => edges.cuts.map(({ points }) => asRun(points))),
    ),
    layer('hole', [...holes.map((hole) => circle(hole.at, holeRadius(hole, holeSizes))), ...cross(vec(0, 0), crankMm)]),
  ];
}

/** The names of dowels and of the holes that are measured from, and of the crank. */
function holeNames({ present, holes }: Bench, scale: number): TextMark[] {
  const named = present.holes.filter(({ id, kind }) => kind === 'dowel' || holes?.some((hole) => hole.id === id));
  return named.map((hole) => {
    const up = holeRadius(hole, holeSizes) + (0.5 * textMm) / scale;
    return text(vec(hole.at.x, hole.at.y + up), hole.id, textMm, { anchor: 'middle', bold: true });
  });
}

/** Places that crowd on paper at a scale, band by band, in runs that a detail shows whole. */
function clustersOf({ bands }: Bench, scale: number): Cluster[] {
  const all = bands.flatMap(({ places }) => places);
  const isCrowded = (place: BenchPlace): boolean =>
    all.some((other) => other !== place && distance(other.at, place.at) * scale < crowdedMm);
  const runs = bands.flatMap((band) => {
    const own: BenchPlace[][] = [];
    for (const place of band.places.filter(isCrowded)) {
      const run = own.at(-1);
      if (run !== undefined && radiusOf([...run, place]) + roundMm <= ringMm) run.push(place);
      else own.push([place]);
    }
    return own.map((places) => ({ band, places }));
  });
  return runs.map(({ band, places }, i) => ({
    letter: letterOf(i),
    band,
    places,
    centre: centreOf(places),
    radiusMm: radiusOf(places) + roundMm,
  }));
}

/** A, B, … Z, A1, B1, … */
const letterOf = (i: number): string => `${String.fromCharCode(65 + (i % 26))}${i < 26 ? '' : Math.floor(i / 26)}`;

const centreOf = (places: readonly BenchPlace[]): Vec => middleOf(boxOfPoints(places.map(({ at }) => at)));

const radiusOf = (places: readonly BenchPlace[]): number => {
  const centre = centreOf(places);
  return Math.max(...places.map(({ at }) => distance(at, centre)));
};

/** Steps into the metal at which a number is tried, mm on paper. */
const numberSteps = [4, 7.5, 11, 14.5, 18];
const leaderMm = 1.9;

/** Each number in the metal beside its place, farther in where another stands there already. */
function numbersOf(places: readonly BenchPlace[], scaling: number, others: readonly TextMark[]): Layer[] {
  const taken: Box[] = others.map((mark) => boxOfText(mark, scaling));
  const into = ({ at, inward }: BenchPlace, mm: number): Vec => add(at, scale(inward, mm / scaling));
  const placed = places.map((place) => {
    const tries = numberSteps.map((mm) => {
      const { x, y } = into(place, mm);
      const words = text(vec(x, y - textMm / 3 / scaling), String(place.row.place), textMm, {
        anchor: 'middle',
        bold: true,
      });
      return { words, box: boxOfText(words, scaling), end: into(place, mm - leaderMm) };
    });
    const free = tries.find(({ box }) => !taken.some((other) => overlap(other, box)));
    const { words, box, end } = free ?? (tries.at(-1) as (typeof tries)[0]);
    taken.push(box);
    return { words, leader: line(place.at, end), dot: circle(place.at, 0.35 / scaling) };
  });
  return [
    layer(
      'leader',
      placed.flatMap(({ leader, dot }) => [leader, dot]),
    ),
    layer(
      'text',
      placed.map(({ words }) => words),
    ),
  ];
}

/** Rings round what is to be seen larger, each with its letter where no other words stand. */
function ringsOf(clusters: readonly Cluster[], scaling: number, others: readonly TextMark[]): Layer[] {
  const taken: Box[] = others.map((mark) => boxOfText(mark, scaling));
  const letters = clusters.map(({ letter, centre, radiusMm }) => {
    const tries = Array.from({ length: 12 }, (_, i) => {
      const at = polar(centre, radiusMm + (1.1 * textMm) / scaling, Math.PI / 4 + (i * Math.PI) / 6);
      return text(vec(at.x, at.y - textMm / 3 / scaling), letter, textMm, { anchor: 'middle', bold: true });
    });
    const free = tries.find((mark) => !taken.some((other) => overlap(other, boxOfText(mark, scaling))));
    const words = free ?? (tries[0] as TextMark);
    taken.push(boxOfText(words, scaling));
    return words;
  });
  return [
    layer(
      'detail-ring',
      clusters.map(({ centre, radiusMm }) => circle(centre, radiusMm)),
    ),
    layer('text', letters),
  ];
}

function detailOf({ letter, band, places, centre, radiusMm }: Cluster, bench: Bench, plane: readonly Layer[]): View {
  const scaling = scaleFor(radiusMm, ringMm);
  const words = `${bandWords(band, bench)}: ${numbersText(places)}`;
  const ring = { id: `detail-${letter.toLowerCase()}`, centre, ringMm, scale: scaling, title: letter, words };
  return ringView(ring, plane, numbersOf(places, scaling, []));
}

/** `no. 3`, `no. 3 to 7`. */
function numbersText(places: readonly BenchPlace[]): string {
  const numbers = places.map(({ row }) => row.place);
  const [least, most] = [Math.min(...numbers), Math.max(...numbers)];
  return least === most ? `no. ${least}` : `no. ${least} to ${most}`;
}

/** The whole casting on its own row, details two and two, as many rows as a sheet has room for. */
function pagesOf(whole: View, details: readonly View[], roomMm: number): View[][] {
  const pairs = details.flatMap((_, i) => (i % 2 === 0 ? [details.slice(i, i + 2)] : []));
  const rowMm = (row: readonly View[]): number => Math.max(...row.map(highMm)) + gapMm;
  return inSheets([[whole], ...pairs], rowMm, roomMm).map((rows) => rows.flat());
}
