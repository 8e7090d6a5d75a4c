import svgpath from 'svgpath';
import { add, angleOf, distance, dot, lerp, scale, sub, type Vec, vec } from '../../geometry/plane/vec.ts';
import { closedRun, ellipsePart, openRun, type Shape } from '../outlines/shape.ts';
import { curved, line, type Stroke } from '../outlines/stroke.ts';
import { chained, mapped, moved, scaled, turned } from './affine.ts';

/** What a path draws, one run for every start; or in a few words why its data cannot be read. */
export function pathShapes(data: string): readonly Shape[] | string {
  const path = svgpath(data);
  const error = (path as unknown as { readonly err: string }).err;
  if (error !== '') return error;
  const pen = new Pen();
  path
    .abs()
    .unshort()
    .iterate((segment) => pen.draw(segment as readonly [string, ...number[]]));
  return pen.lifted();
}

/** Draws absolute segments one after another. */
class Pen {
  readonly #shapes: Shape[] = [];
  #strokes: Stroke[] = [];
  #start: Vec = vec(0, 0);
  #at: Vec = vec(0, 0);

  draw([command, ...numbers]: readonly [string, ...number[]]): void {
    if (command === 'M') {
      this.#lift(openRun);
      this.#start = this.#at = vec(numbers[0] as number, numbers[1] as number);
    } else if (command === 'Z') {
      this.#strokes.push(line(this.#at, this.#start));
      this.#at = this.#start;
      this.#lift(closedRun);
    } else {
      const end = endOf(command, numbers, this.#at);
      this.#strokes.push(...strokesOf(command, numbers, this.#at, end));
      this.#at = end;
    }
  }

  lifted(): readonly Shape[] {
    this.#lift(openRun);
    return this.#shapes;
  }

  #lift(shape: (strokes: readonly Stroke[]) => Shape): void {
    if (this.#strokes.length > 0) this.#shapes.push(shape(this.#strokes));
    this.#strokes = [];
  }
}

function endOf(command: string, numbers: readonly number[], from: Vec): Vec {
  const [last, lastButOne] = [numbers.at(-1) as number, numbers.at(-2) as number];
  if (command === 'H') return vec(last, from.y);
  return command === 'V' ? vec(from.x, last) : vec(lastButOne, last);
}

function strokesOf(command: string, numbers: readonly number[], from: Vec, end: Vec): Stroke[] {
  switch (command) {
    case 'C':
    case 'Q':
      return [curved(bezier(from, ...pointsIn(numbers)))];
    case 'A':
      return ellipseStrokes(from, numbers, end);
    default:
      return [line(from, end)];
  }
}

function pointsIn(numbers: readonly number[]): Vec[] {
  const points: Vec[] = [];
  for (let i = 0; i + 1 < numbers.length; i += 2) points.push(vec(numbers[i] as number, numbers[i + 1] as number));
  return points;
}

/** De Casteljau's construction. */
function bezier(...points: readonly Vec[]): (t: number) => Vec {
  return (t) => {
    let level = points;
    while (level.length > 1) level = level.slice(1).map((p, i) => lerp(level[i] as Vec, p, t));
    return level[0] as Vec;
  };
}

/**
 * The strokes of an elliptical arc from its end points: the ellipse is made a unit circle, where the centre stands
 * off the chord's middle by Pythagoras; radii too short for the ends are stretched until they reach (as the SVG
 * standard's notes on arcs ask; from memory).
 */
function ellipseStrokes(from: Vec, numbers: readonly number[], to: Vec): Stroke[] {
  const [rx, ry, tiltDeg, large, sweep] = numbers as [number, number, number, number, number];
  if (rx === 0 || ry === 0 || (from.x === to.x && from.y === to.y)) return [line(from, to)];
  const tilt = (tiltDeg * Math.PI) / 180;
  const toUnit = chained(scaled(1 / Math.abs(rx), 1 / Math.abs(ry)), turned(-tilt));
  const reach = Math.max(1, distance(mapped(toUnit, from), mapped(toUnit, to)) / 2);
  const [p, q] = [from, to].map((end) => scale(mapped(toUnit, end), 1 / reach)) as [Vec, Vec];
  const half = scale(sub(q, p), 0.5);
  const off = Math.sqrt(Math.max(0, 1 - dot(half, half)) / dot(half, half)) * (large === sweep ? -1 : 1);
  const centre = add(add(p, half), scale(vec(-half.y, half.x), off));
  const start = angleOf(sub(p, centre));
  const turn = angleOf(sub(q, centre)) - start;
  const sweepRad = sweep ? (turn < 0 ? turn + 2 * Math.PI : turn) : turn > 0 ? turn - 2 * Math.PI : turn;
  const fromUnit = chained(turned(tilt), scaled(Math.abs(rx) * reach, Math.abs(ry) * reach), moved(centre));
  return ellipsePart(fromUnit, start, sweepRad);
}
