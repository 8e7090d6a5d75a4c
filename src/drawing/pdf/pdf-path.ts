import { type ArcEdge, type Edge, pointOnEdge } from '../../geometry/plane/edge.ts';
import { add, scale, type Vec, vec } from '../../geometry/plane/vec.ts';
import { number } from '../svg/svg-paint.ts';

/** Where a point of a view comes to lie on the sheet. */
export type PointMap = (p: Vec) => Vec;

/** An arc is drawn within this, mm on the sheet. */
const arcErrorMm = 1e-3;

export const pair = ({ x, y }: Vec): string => `${number(x)} ${number(y)}`;

export const linePath = (points: readonly Vec[], place: PointMap): string =>
  points.map((p, i) => `${pair(place(p))} ${i === 0 ? 'm' : 'l'}`).join('\n');

/** Edges that follow one another as PDF path operators; `scale` is the view's. */
export function edgesPath(edges: readonly Edge[], place: PointMap, viewScale: number): string {
  const [first] = edges;
  if (first === undefined) return '';
  const steps = edges.map((edge) =>
    edge.kind === 'line' ? `${pair(place(edge.b))} l` : arcPath(edge, place, viewScale),
  );
  return [`${pair(place(first.a))} m`, ...steps].join('\n');
}

/**
 * An arc as cubic curves. With the usual handles of 4/3·tan(θ/4) radii a piece of angle θ leaves its circle by no more
 * than r·(2/27)·sin⁶(θ/4)/cos²(θ/4) (from memory, and held by a test).
 */
function arcPath(arc: ArcEdge, place: PointMap, viewScale: number): string {
  const pieces = piecesFor(arc.radius * viewScale, Math.abs(arc.sweepRad));
  const stepRad = arc.sweepRad / pieces;
  const handle = (4 / 3) * Math.tan(stepRad / 4);
  return Array.from({ length: pieces }, (_, i) => {
    const [from, to] = [i * stepRad, (i + 1) * stepRad].map((rad) => arc.startRad + rad) as [number, number];
    const a = i === 0 ? arc.a : pointOnEdge(arc, i / pieces);
    const b = i + 1 === pieces ? arc.b : pointOnEdge(arc, (i + 1) / pieces);
    const onward = add(a, scale(vec(-Math.sin(from), Math.cos(from)), handle * arc.radius));
    const back = add(b, scale(vec(-Math.sin(to), Math.cos(to)), -handle * arc.radius));
    return `${pair(place(onward))} ${pair(place(back))} ${pair(place(b))} c`;
  }).join('\n');
}

function piecesFor(radiusMm: number, sweepRad: number): number {
  let pieces = Math.max(1, Math.ceil(sweepRad / (Math.PI / 2)));
  while (bulgeMm(radiusMm, sweepRad / pieces) > arcErrorMm) pieces++;
  return pieces;
}

const bulgeMm = (radiusMm: number, rad: number): number =>
  (radiusMm * 2 * Math.sin(rad / 4) ** 6) / (27 * Math.cos(rad / 4) ** 2);
