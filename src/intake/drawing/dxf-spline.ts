import { lerp, type Vec } from '../../geometry/plane/vec.ts';
import { curved, type Stroke } from '../outlines/stroke.ts';
import { type Entity, numberOf, numbersOf } from './dxf-tags.ts';

/** A rational B-spline curve: control points, their weights, and knots that never fall. */
interface Spline {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly points: readonly Vec[];
  readonly weights: readonly number[];
}

const highestDegree = 25;

/** A SPLINE as one smooth curve per span between two knots, or in a few words why it is none. */
export function splineStrokes(entity: Entity): Stroke[] | string {
  const spline = readSpline(entity);
  if (spline.points.length === 0) return 'SPLINE given by fit points alone';
  if (!isSound(spline)) return 'SPLINE with unsound knots or weights';
  const { degree, knots, points } = spline;
  const strokes: Stroke[] = [];
  for (let span = degree; span < points.length; span++) {
    const [from, to] = [knots[span] as number, knots[span + 1] as number];
    if (to > from) strokes.push(curved((t) => pointOf(spline, span, from + (to - from) * t)));
  }
  return strokes;
}

function readSpline(entity: Entity): Spline {
  const ys = numbersOf(entity, 20);
  const points = numbersOf(entity, 10).map((x, i) => ({ x, y: ys[i] ?? 0 }));
  const weights = numbersOf(entity, 41);
  return {
    degree: numberOf(entity, 71),
    knots: numbersOf(entity, 40),
    points,
    weights: weights.length === 0 ? points.map(() => 1) : weights,
  };
}

function isSound({ degree, knots, points, weights }: Spline): boolean {
  const whole = Number.isInteger(degree) && degree >= 1 && degree <= highestDegree && points.length > degree;
  const counts = knots.length === points.length + degree + 1 && weights.length === points.length;
  const rising = knots.every((knot, i) => i === 0 || knot >= (knots[i - 1] as number));
  return whole && counts && rising && weights.every((weight) => weight > 0);
}

/** De Boor's algorithm on the points and weights of one span, weights carried along as shares (Piegl and Tiller, from memory). */
function pointOf({ degree, knots, points, weights }: Spline, span: number, u: number): Vec {
  const own = points.slice(span - degree, span + 1);
  const weight = weights.slice(span - degree, span + 1);
  for (let level = 1; level <= degree; level++) {
    for (let i = degree; i >= level; i--) {
      const start = knots[span - degree + i] as number;
      const share = (u - start) / ((knots[span + 1 + i - level] as number) - start);
      const before = (weight[i - 1] as number) * (1 - share);
      const after = (weight[i] as number) * share;
      weight[i] = before + after;
      own[i] = lerp(own[i - 1] as Vec, own[i] as Vec, after / (before + after));
    }
  }
  return own[degree] as Vec;
}
