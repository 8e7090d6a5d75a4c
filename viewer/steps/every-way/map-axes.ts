import type { WayPoint } from '../../../src/ways/way-along.ts';
import type { TurnMap } from '../../heavy/questions.ts';

/** How turns and stand-offs come onto the screen, pixels of the map. */
export interface MapAxes {
  readonly width: number;
  readonly height: number;
  readonly plot: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  readonly x: (turnRad: number) => number;
  readonly y: (standOffMm: number) => number;
  /** The place under a point, within what the map shows. */
  readonly place: (x: number, y: number) => WayPoint;
}

const margin = { left: 36, right: 12, top: 26, bottom: 40 };
/** Low enough to be seen whole below the drawing on a phone. */
const heightOfWidth = 0.8;
const tallest = 380;

export function mapAxesOf({ asked: { fromRad, toRad }, topMm }: TurnMap, width: number): MapAxes {
  const height = Math.min(tallest, Math.round(heightOfWidth * width));
  const plot = { left: margin.left, right: width - margin.right, top: margin.top, bottom: height - margin.bottom };
  const [perRad, perMm] = [(plot.right - plot.left) / (toRad - fromRad), (plot.bottom - plot.top) / topMm];
  const within = (value: number, from: number, to: number): number => Math.max(from, Math.min(to, value));
  return {
    width,
    height,
    plot,
    x: (turnRad) => plot.left + (turnRad - fromRad) * perRad,
    y: (standOffMm) => plot.bottom - standOffMm * perMm,
    place: (x, y) => ({
      turnRad: within(fromRad + (x - plot.left) / perRad, fromRad, toRad),
      standOffMm: within((plot.bottom - y) / perMm, 0, topMm),
    }),
  };
}
