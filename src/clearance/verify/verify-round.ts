import { arcSpans, type Edge } from '../../geometry/plane/edge.ts';
import { edgesOf, type Loop, type Region } from '../../geometry/plane/loop.ts';
import { apply, rigid } from '../../geometry/plane/rigid.ts';
import { angleOf, length, type Vec, vec } from '../../geometry/plane/vec.ts';
import { distanceToEdge } from './verify-edge.ts';
import { OutlineShape, type Shape } from './verify-shape.ts';

const axis = vec(0, 0);

/** How many turned copies of the outline are looked at, and the part of a turn between them (never the same twice). */
const copies = 4;
const turnBetween = (Math.sqrt(5) - 1) / 2;

interface Radii {
  readonly fromMm: number;
  readonly toMm: number;
}

/** A part that runs round the axis: its outline itself is turned as one goes along it, and metal is told by radius. */
export class RoundShape implements Shape {
  readonly stations: readonly (readonly number[])[];
  readonly spacingMm: number;
  /** Where there is metal at some turn, in order, apart from one another. */
  readonly radii: readonly Radii[];
  readonly #outline: OutlineShape;
  readonly #lengths: readonly number[];

  /** `inverted`: all the plane but the region runs round. */
  constructor(region: Region, inverted = false) {
    this.#outline = new OutlineShape(region, inverted);
    this.spacingMm = this.#outline.spacingMm;
    this.#lengths = region.map((_, i) => this.#outline.lengthMm(i));
    this.stations = this.#outline.stations.map((runs, i) =>
      Array.from({ length: copies }, (_, k) => runs.map((run) => run + k * (this.#lengths[i] as number))).flat(),
    );
    this.radii = radiiOf(region, this.#outline);
  }

  pointAt(run: number, outline: number): Vec {
    const turns = (turnBetween * run) / (this.#lengths[outline] as number);
    return apply(rigid(2 * Math.PI * turns, axis), this.#outline.pointAt(run, outline));
  }

  gapMm(p: Vec): number {
    const radius = length(p);
    const around = this.radii.find(({ fromMm, toMm }) => fromMm <= radius && radius <= toMm);
    if (around) return -Math.min(around.toMm - radius, around.fromMm === 0 ? Infinity : radius - around.fromMm);
    return Math.min(...this.radii.map(({ fromMm, toMm }) => Math.max(fromMm - radius, radius - toMm)));
  }
}

/** Radii at which the outlines run are metal at some turn; between them a circle is metal or none, all of it. */
function radiiOf(region: Region, outline: OutlineShape): Radii[] {
  const edges = joined(region.map(radiiOfLoop));
  const ends = [0, ...edges.flatMap(({ fromMm, toMm }) => [fromMm, toMm]), Infinity];
  const between = [...edges, null].map((_, i) => ({ fromMm: ends[2 * i] as number, toMm: ends[2 * i + 1] as number }));
  const isMetal = ({ fromMm, toMm }: Radii): boolean =>
    outline.gapMm(vec(toMm === Infinity ? fromMm + 1 : (fromMm + toMm) / 2, 0), 0) < 0;
  return joined([...edges, ...between.filter(isMetal)]);
}

function joined(ranges: readonly Radii[]): Radii[] {
  const result: Radii[] = [];
  for (const range of ranges.toSorted((a, b) => a.fromMm - b.fromMm)) {
    const last = result.at(-1);
    if (last === undefined || range.fromMm > last.toMm) result.push(range);
    else result[result.length - 1] = { fromMm: last.fromMm, toMm: Math.max(last.toMm, range.toMm) };
  }
  return result;
}

function radiiOfLoop(loop: Loop): Radii {
  const edges = edgesOf(loop);
  return {
    fromMm: Math.min(...edges.map((edge) => distanceToEdge(edge, axis))),
    toMm: Math.max(...edges.map(farthestMm)),
  };
}

function farthestMm(edge: Edge): number {
  const ends = Math.max(length(edge.a), length(edge.b));
  if (edge.kind === 'line' || !arcSpans(edge, angleOf(edge.centre))) return ends;
  return Math.max(ends, length(edge.centre) + edge.radius);
}
