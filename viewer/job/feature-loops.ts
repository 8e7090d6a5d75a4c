import type { LoopFile } from '../../src/files/part-file.ts';
import { apart, type Points, vertexAt, type XY } from './arc.ts';

/** A feature as it is measured with caliper and rule: lengths in the part's units, angle in degrees anticlockwise. */
export type Feature =
  | {
      readonly kind: 'rib';
      readonly from: XY;
      readonly to: XY;
      readonly width: number;
      /** At its end, where it is another there. */
      readonly tipWidth?: number;
      readonly endRadius: number;
    }
  | { readonly kind: 'boss'; readonly centre: XY; readonly diameter: number }
  | {
      readonly kind: 'pad';
      readonly centre: XY;
      readonly width: number;
      readonly height: number;
      readonly angleDeg: number;
    };

/** A quarter of a circle: tan(90°/4). */
const quarterBulge = Math.SQRT2 - 1;

/** The outline of a feature; null where its sizes make none. */
export function featureLoop(feature: Feature): LoopFile | null {
  switch (feature.kind) {
    case 'boss':
      return feature.diameter > 0 ? { circle: [...feature.centre], radius: feature.diameter / 2 } : null;
    case 'pad':
      return rectangle(feature.centre, feature.width, feature.height, (feature.angleDeg * Math.PI) / 180, 0);
    case 'rib': {
      const { from, to, width, tipWidth = width, endRadius } = feature;
      if (tipWidth !== width) return endRadius === 0 ? tapered(from, to, width, tipWidth) : null;
      const centre: XY = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
      return rectangle(centre, apart(from, to), width, Math.atan2(to[1] - from[1], to[0] - from[0]), endRadius);
    }
  }
}

/** Straight from the middle of one end to the middle of the other. */
function tapered(from: XY, to: XY, width: number, tipWidth: number): Points | null {
  const long = apart(from, to);
  if (!(long > 0 && width > 0 && tipWidth > 0)) return null;
  const aside = ([x, y]: XY, by: number) =>
    vertexAt([x - ((to[1] - from[1]) / long) * by, y + ((to[0] - from[0]) / long) * by], 0);
  return [aside(from, width / 2), aside(from, -width / 2), aside(to, -tipWidth / 2), aside(to, tipWidth / 2)];
}

/** A rectangle turned by an angle, its corners rounded; with a radius of half its height its ends are half circles. */
function rectangle(centre: XY, long: number, high: number, angleRad: number, radius: number): Points | null {
  const roomy = 2 * radius <= Math.min(long, high) * (1 + 1e-9);
  if (!(long > 0 && high > 0 && radius >= 0 && roomy)) return null;
  const [x, y, r] = [long / 2, high / 2, radius];
  const place = ([px, py]: XY, bulge = 0) =>
    vertexAt([centre[0] + turned(px, py, angleRad)[0], centre[1] + turned(px, py, angleRad)[1]], bulge);
  if (r === 0) return [place([-x, -y]), place([x, -y]), place([x, y]), place([-x, y])];
  const corners: [XY, XY][] = [
    [
      [x - r, -y],
      [x, r - y],
    ],
    [
      [x, y - r],
      [x - r, y],
    ],
    [
      [r - x, y],
      [-x, y - r],
    ],
    [
      [-x, r - y],
      [r - x, -y],
    ],
  ];
  const rounded = corners.flatMap(([start, end]) => [
    { at: start, bulge: quarterBulge },
    { at: end, bulge: 0 },
  ]);
  // where two corners meet there is one vertex, not two on one spot
  return rounded
    .filter(({ at }, i) => apart(at, (rounded[(i + 1) % rounded.length] as { at: XY }).at) > 1e-9 * long)
    .map(({ at, bulge }) => place(at, bulge));
}

const turned = (x: number, y: number, rad: number): XY => [
  x * Math.cos(rad) - y * Math.sin(rad),
  x * Math.sin(rad) + y * Math.cos(rad),
];
