import type { ArcEdge, Edge } from '../plane/edge.ts';
import { type Box, boxAround, boxOfEdge } from '../plane/edge-box.ts';
import { add, angleOf, cross, distance, dot, lerp, scale, sub, type Vec, vec } from '../plane/vec.ts';
import type { Outline } from './metal-on-left.ts';

/**
 * A closed outline with every notch that a ball of radius `ballMm`, rolled along its right side, cannot enter filled up
 * to the ball. It grows by that radius to the very same solid, but the notches of a rough outline are gone from it.
 *
 * As in Graham's scan, a corner is dropped when the ball that rests on its two neighbours does not reach what lies
 * between them; all that is dropped lies in a box too small for another ball, so no ball gets in from anywhere.
 */
export function closedByBall(outline: Outline, ballMm: number): Outline {
  const spans: Span[] = [];
  for (const edge of outline) {
    let span: Span = { edge, box: boxOfEdge(edge), bridged: false };
    for (let before = spans.at(-1); before; before = spans.at(-1)) {
      const bridge = bridgeOver(before, span, ballMm);
      if (bridge === null) break;
      spans.pop();
      span = bridge;
    }
    spans.push(span);
  }
  return spans.map(({ edge }) => edge);
}

/** An edge of the outline, or the arc of a ball over a notch, and a box round all that stands for. */
interface Span {
  readonly edge: Edge;
  readonly box: Box;
  readonly bridged: boolean;
}

function bridgeOver(before: Span, after: Span, ballMm: number): Span | null {
  if (isOwnArc(before) || isOwnArc(after)) return null;
  const [a, corner, b] = [before.edge.a, after.edge.a, after.edge.b];
  const chord = sub(b, a);
  const chordMm = Math.hypot(chord.x, chord.y);
  if (chordMm === 0 || chordMm >= 2 * ballMm || cross(chord, sub(corner, a)) <= 0) return null;
  const box = boxAround([before.box, after.box]);
  if (Math.hypot(box.maxX - box.minX, box.maxY - box.minY) >= 2 * ballMm) return null;
  const height = Math.sqrt(ballMm * ballMm - (chordMm * chordMm) / 4);
  const centre = add(lerp(a, b, 0.5), scale(vec(chord.y, -chord.x), height / chordMm));
  const staysOut =
    distance(corner, centre) >= ballMm &&
    dot(headingAtStart(before.edge), sub(centre, a)) <= 0 &&
    dot(headingAtEnd(after.edge), sub(centre, b)) >= 0;
  return staysOut ? { edge: ballArc(a, b, centre, ballMm), box, bridged: true } : null;
}

const isOwnArc = ({ edge, bridged }: Span): boolean => edge.kind === 'arc' && !bridged;

/** The shorter way round the ball, clockwise. */
function ballArc(a: Vec, b: Vec, centre: Vec, radius: number): ArcEdge {
  const sweepRad = -2 * Math.asin(Math.min(1, distance(a, b) / (2 * radius)));
  return { kind: 'arc', a, b, centre, radius, startRad: angleOf(sub(a, centre)), sweepRad };
}

const headingAtStart = (edge: Edge): Vec =>
  edge.kind === 'line' ? sub(edge.b, edge.a) : clockwise(sub(edge.a, edge.centre));

const headingAtEnd = (edge: Edge): Vec =>
  edge.kind === 'line' ? sub(edge.b, edge.a) : clockwise(sub(edge.b, edge.centre));

const clockwise = (arm: Vec): Vec => vec(arm.y, -arm.x);
