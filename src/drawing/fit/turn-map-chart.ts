import type { Box } from '../../geometry/plane/edge-box.ts';
import { polygonLoop, type Region } from '../../geometry/plane/loop.ts';
import { vec } from '../../geometry/plane/vec.ts';
import type { Units } from '../../job/lengths.ts';
import type { Joint } from '../../joint/joint.ts';
import { chosenWay } from '../../ways/chosen-way.ts';
import type { WaysResult } from '../../ways/find-ways.ts';
import { type Block, blocksOf, engagedMm, mapTopMm } from '../../ways/map-blocks.ts';
import type { MapStrip } from '../../ways/turn-map.ts';
import type { TurnRange } from '../../ways/turns.ts';
import type { WayPoint } from '../../ways/way-along.ts';
import { mapKey, mapWords } from '../../words/turn-map-text.ts';
import { rectangle } from '../scene/frame.ts';
import { box, circle, layer, line, outline, text, viewOf } from '../scene/marks.ts';
import type { Layer, Mark, Scene, TextMark } from '../scene/scene.ts';
import { svgOf } from '../svg/svg.ts';
import { standOffTicks, turnTicks } from './map-ticks.ts';
import { hatch, hatchRad } from './plane-layers.ts';

const plot: Box = { minX: 0, maxX: 150, minY: 0, maxY: 110 };
const textMm = 3.2;
const penMm = 0.4;
const marginMm = 2;

/** How turns and stand-offs come onto the plot. */
interface Axes {
  readonly x: (turnRad: number) => number;
  readonly y: (standOffMm: number) => number;
  readonly topMm: number;
}

export const turnMapSvg = (joint: Joint, ways: WaysResult): string => svgOf(turnMapChart(joint, ways));

/**
 * The map of turns and stand-offs: turns across, stand-off upwards, home at the foot. What fouls is filled and hatched one
 * way, what is too near the other way, what nobody has traced dotted round; the way that would be gone runs through it.
 */
export function turnMapChart({ fit: { title, units } }: Pick<Joint, 'fit'>, ways: WaysResult): Scene {
  const axes = axesOf(ways);
  const regions = (of: (strip: MapStrip) => readonly TurnRange[]): Region[] =>
    blocksOf(ways.strips, of).flatMap((block) => boxOf(block, axes));
  const way = chosenWay(ways);
  const layers: Layer[] = [
    layer('error-band', regions(({ unknown }) => unknown).map(outline)),
    layer(
      'room',
      regions(({ near }) => near).flatMap((region) => [outline(region), hatch(region, -hatchRad, 2.4)]),
    ),
    layer(
      'foul-stretch',
      regions(({ foul }) => foul).flatMap((region) => [outline(region), hatch(region, hatchRad, 1.6)]),
    ),
    layer('leader', [...tickLines(ways, axes, units), line(vec(axes.x(0), plot.minY), vec(axes.x(0), plot.maxY))]),
    ...dowelLayers(ways, axes),
    layer('frame', [box(plot)]),
    ...(way === null ? [] : wayLayers(way, axes)),
    layer('text', labels(ways, axes, units)),
    ...keyLayers(ways),
  ];
  const view = viewOf('turn-map', layers);
  const { minX, minY, maxX, maxY } = view.frame;
  return {
    ...mapWords(title, ways),
    widthMm: Math.ceil(maxX - minX + 2 * marginMm),
    heightMm: Math.ceil(maxY - minY + 2 * marginMm),
    penMm,
    views: [{ ...view, at: vec(marginMm - minX, marginMm - minY) }],
  };
}

function axesOf({ strips, asked }: WaysResult): Axes {
  const topMm = mapTopMm(strips);
  return {
    x: (turnRad) => plot.minX + ((turnRad - asked.fromRad) / (asked.toRad - asked.fromRad)) * (plot.maxX - plot.minX),
    y: (standOffMm) => plot.minY + (Math.min(standOffMm, topMm) / topMm) * (plot.maxY - plot.minY),
    topMm,
  };
}

function boxOf({ fromMm, toMm, turns: { fromRad, toRad } }: Block, { x, y, topMm }: Axes): Region[] {
  if (fromMm >= topMm) return [];
  return [[polygonLoop(rectangle({ minX: x(fromRad), maxX: x(toRad), minY: y(fromMm), maxY: y(toMm) }))]];
}

function dowelLayers({ strips }: WaysResult, { y, topMm }: Axes): Layer[] {
  const engageMm = engagedMm(strips);
  if (engageMm === 0 || engageMm > topMm) return [];
  return [
    layer('asked', [line(vec(plot.minX, y(engageMm)), vec(plot.maxX, y(engageMm)))]),
    layer('text', [text(vec(plot.maxX + 1.5, y(engageMm) - 0.35 * textMm), mapKey.dowels, textMm)]),
  ];
}

function wayLayers(way: readonly WayPoint[], { x, y, topMm }: Axes): Layer[] {
  const points = way.map(({ turnRad, standOffMm }) => vec(x(turnRad), y(standOffMm)));
  const held = points.filter((_, i) => (way[i] as WayPoint).standOffMm <= topMm);
  return [
    layer('clearance-curve', [line(...points)]),
    layer(
      'witness',
      held.map((point) => circle(point, 1.1)),
    ),
  ];
}

const degree = Math.PI / 180;

const tickLines = ({ asked }: WaysResult, { x, y, topMm }: Axes, units: Units): Mark[] => [
  ...turnTicks(asked).map(({ at }) => line(vec(x(at * degree), plot.minY - 1.2), vec(x(at * degree), plot.minY))),
  ...standOffTicks(topMm, units).map(({ at }) => line(vec(plot.minX - 1.2, y(at)), vec(plot.minX, y(at)))),
];

const labels = ({ asked }: WaysResult, { x, y, topMm }: Axes, units: Units): TextMark[] => [
  ...turnTicks(asked).map(({ at, text: words }) =>
    text(vec(x(at * degree), plot.minY - 1.5 * textMm), words, textMm, { anchor: 'middle' }),
  ),
  ...standOffTicks(topMm, units).map(({ at, text: words }) =>
    text(vec(plot.minX - 2, y(at) - 0.35 * textMm), words, textMm, { anchor: 'end' }),
  ),
  text(vec(plot.minX - 8, plot.maxY + textMm), `stand-off, ${units}`, textMm, { bold: true }),
  text(vec(plot.maxX, plot.minY - 3.2 * textMm), 'turn', textMm, { anchor: 'end', bold: true }),
];

/** Under the plot, in one row; what does not occur is not explained. */
function keyLayers(ways: WaysResult): Layer[] {
  const y = plot.minY - 5.6 * textMm;
  const swatch = (minX: number): Region => [polygonLoop(rectangle({ minX, maxX: minX + 6, minY: y, maxY: y + 3 }))];
  const has = (of: (strip: MapStrip) => readonly TurnRange[]): boolean =>
    ways.strips.some((strip) => of(strip).length > 0);
  const samples: [boolean, string, (x: number) => Layer][] = [
    [
      has(({ foul }) => foul),
      mapKey.foul,
      (x) => layer('foul-stretch', [outline(swatch(x)), hatch(swatch(x), hatchRad, 1.6)]),
    ],
    [
      has(({ near }) => near),
      mapKey.near,
      (x) => layer('room', [outline(swatch(x)), hatch(swatch(x), -hatchRad, 2.4)]),
    ],
    [has(({ unknown }) => unknown), mapKey.unknown, (x) => layer('error-band', [outline(swatch(x))])],
    [
      chosenWay(ways) !== null,
      ways.exists === true ? mapKey.way : mapKey.cutWay,
      (x) => layer('clearance-curve', [line(vec(x, y + 1.5), vec(x + 6, y + 1.5))]),
    ],
  ];
  return samples
    .filter(([isThere]) => isThere)
    .flatMap(([, words, sample], i) => [
      sample(plot.minX + 36 * i),
      layer('text', [text(vec(plot.minX + 36 * i + 7, y + 0.4), words, textMm)]),
    ]);
}
