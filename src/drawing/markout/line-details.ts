import { lengthText } from '../../job/length-text.ts';
import type { Bench, BenchBand, BenchPlace } from '../../markout/marking-out-bench.ts';
import type { Run } from '../../markout/marking-out-edges.ts';
import { scales } from '../fit/detail-view.ts';
import { hatch, hatchRad } from '../fit/plane-layers.ts';
import { layer, outline } from '../scene/marks.ts';
import type { View } from '../scene/scene.ts';
import { ringView } from './ring-view.ts';
import { asRun, wideRuns } from './template-marks.ts';
import { sheetSizes } from './template-sheet.ts';
import { bandWords } from './template-words.ts';

/** Lines closer than this on paper run together, mm. */
const apartMm = 1.2;
const ringMm = 30;

/** How far the planned line lies from the nearer of the other two at a place; where one meets it there is nothing to tell. */
function gapMm({ row: { firstMm, plannedMm, lastMm } }: BenchPlace): number {
  const gaps = [plannedMm - firstMm, lastMm - plannedMm].filter((mm) => mm > 1e-3);
  return gaps.length === 0 ? Number.POSITIVE_INFINITY : Math.min(...gaps);
}

const closest = ({ places }: BenchBand): BenchPlace | null =>
  places.reduce<BenchPlace | null>((best, place) => (best === null || gapMm(place) < gapMm(best) ? place : best), null);

/** Whether the three lines of a band would run together at true scale. */
export function linesRunTogether(band: BenchBand): boolean {
  const place = closest(band);
  return place !== null && gapMm(place) < apartMm;
}

/** Where the lines of each band lie closest, so much larger that they are told apart, with what is between them. */
export const lineDetails = (bench: Bench, bands: readonly BenchBand[]): View[] =>
  bands.flatMap((band, i) => {
    const place = closest(band);
    return place === null ? [] : [lineDetail(bench, band, place, i + 1)];
  });

function lineDetail(bench: Bench, band: BenchBand, place: BenchPlace, count: number): View {
  const { units } = bench.joint.fit;
  const scale = scales.find((scale) => gapMm(place) * scale >= apartMm) ?? (scales.at(-1) as number);
  const runs = (all: readonly Run[]) => all.map(({ points }) => asRun(points));
  const { firstMm, plannedMm, lastMm } = place.row;
  const words = `${bandWords(band, bench)}, at no. ${place.row.place}: the first line lies ${lengthText(plannedMm - firstMm, units)} before the planned one, the last ${lengthText(lastMm - plannedMm, units)} past it.`;
  return ringView({ id: `lines-${count}`, centre: place.at, ringMm, scale, title: `Lines ${count}`, words }, [
    layer('fixed-metal', [outline(band.section.loops)]),
    layer('relief-hatch', [hatch(band.relief, hatchRad, sheetSizes.hatchMm)]),
    layer('first-line', runs(band.firstEdges.cuts)),
    layer('last-line', runs(band.lastEdges.cuts)),
    wideRuns(band.edges.cuts),
  ]);
}
