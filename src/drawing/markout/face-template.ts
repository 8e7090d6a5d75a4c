import type { Region } from '../../geometry/plane/loop.ts';
import { boxOfRegion } from '../../geometry/plane/region-box.ts';
import { length, vec } from '../../geometry/plane/vec.ts';
import type { Bench, BenchBand } from '../../markout/marking-out-bench.ts';
import type { Run } from '../../markout/marking-out-edges.ts';
import { axisMark } from '../../words/names.ts';
import { target } from '../fit/closest-place.ts';
import { hatch, hatchRad, keepOffPitch } from '../fit/plane-layers.ts';
import { middleOf } from '../scene/frame.ts';
import { cross, layer, outline, text, viewOf } from '../scene/marks.ts';
import type { Layer, Scene, TextMark } from '../scene/scene.ts';
import { lineDetails, linesRunTogether } from './line-details.ts';
import { asRun, holeCross, placeNumbers, wideRuns } from './template-marks.ts';
import { sheetSizes, templateSheet } from './template-sheet.ts';
import { bandWords, firstTouchWords, templateWords } from './template-words.ts';

const targetMm = 4;

/** A band begins at the face when it begins no deeper and no prouder than this, mm. */
const atFaceMm = 0.05;

/** Whether paper on the face can mark a band: it begins there, or reaches through every depth. */
export const startsAtFace = ({ depth }: Pick<BenchBand, 'depth'>): boolean =>
  depth === null || (Math.abs(depth.fromMm) <= atFaceMm && depth.toMm > atFaceMm);

/** Paper to lay on the face: the outlines there, the lines of every band that begins there, holes to punch. */
export function faceTemplate(bench: Bench, withBars: boolean): Scene {
  const bands = bench.bands.filter(startsAtFace);
  const together = bands.filter(linesRunTogether);
  const words = templateWords(bench, `Face template: ${bands.map((band) => bandWords(band, bench)).join('; ')}`, [
    'Lay it on the face and punch the crosses. The dowels themselves, or drill shanks in the holes, hold it true; check a distance between two of them with a rule.',
    'Prick through the wide line: the outline to leave. Dashed: first line, it must go whatever the error. Long-dash-dot: last line, never past it.',
    ...(together.length === 0
      ? []
      : [
          'Where first and last line would run together with the planned one only that is drawn; beside it all three are shown larger.',
        ]),
    'Grind to the first line and offer up. Go on only where it marks.',
    'Numbers are places of the marking-out table. What is hatched wide and the other way is not to be cut.',
    ...(bench.touch === null
      ? []
      : [`The target is where it will first touch on the way in: ${firstTouchWords(bench.touch, bench)}.`]),
  ]);
  const views = [viewOf('face', faceLayers(bench, bands)), ...lineDetails(bench, together)];
  return templateSheet(words, views, withBars);
}

function faceLayers({ present, joint, touch }: Bench, bands: readonly BenchBand[]): Layer[] {
  const { sections, hollows, doNotCut, holes } = present;
  const keepOff = keepOffPitch * sheetSizes.hatchMm;
  const faces = sections.filter(startsAtFace).map(({ loops }) => outline(loops));
  const told = bands.filter((band) => !linesRunTogether(band));
  const narrow = (runs: readonly Run[]) => runs.map(({ points }) => asRun(points));
  return [
    layer('fixed-metal', faces),
    layer('frame', faces),
    layer(
      'hollow',
      hollows.map(({ loops }) => outline(loops)),
    ),
    layer(
      'do-not-cut',
      doNotCut.flatMap(({ loops }) => [outline(loops), hatch(loops, -hatchRad, keepOff)]),
    ),
    layer(
      'relief-hatch',
      bands.map(({ relief }) => hatch(relief, hatchRad, sheetSizes.hatchMm)),
    ),
    layer(
      'first-line',
      told.flatMap(({ firstEdges }) => narrow(firstEdges.cuts)),
    ),
    layer(
      'last-line',
      told.flatMap(({ lastEdges }) => narrow(lastEdges.cuts)),
    ),
    ...bands.map(({ edges }) => wideRuns(edges.cuts)),
    ...holes.flatMap((hole) => holeCross(hole, joint.fit.units)),
    ...bands.flatMap(({ places }) => placeNumbers(places)),
    layer('text', [
      ...doNotCut.map(({ id, loops }) => keepOffWords(id, loops)),
      ...(holes.some(({ at }) => length(at) < 1)
        ? []
        : [text(vec(0, 7), axisMark(joint), sheetSizes.textMm, { anchor: 'middle' })]),
    ]),
    layer('hole', cross(vec(0, 0), 6)),
    layer('first-touch', touch === null ? [] : target(touch.at, targetMm)),
  ];
}

function keepOffWords(id: string, loops: Region): TextMark {
  const { x, y } = middleOf(boxOfRegion(loops));
  return text(vec(x, y - sheetSizes.textMm / 3), `${id}: do not cut`, sheetSizes.textMm, { anchor: 'middle' });
}
