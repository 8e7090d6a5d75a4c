import { type Edge, pointOnEdge } from '../../geometry/plane/edge.ts';
import { edgesOf, type Region } from '../../geometry/plane/loop.ts';
import type { Vec } from '../../geometry/plane/vec.ts';
import { lengthOf } from './verify-edge.ts';
import { EdgeGrid } from './verify-grid.ts';

/** A solid of the plane as the self-check looks at it; mm. */
export interface Shape {
  /** Places along each of its outlines, as lengths run along all of them, one after another. */
  readonly stations: readonly (readonly number[])[];
  /** About how far apart the stations are. */
  readonly spacingMm: number;
  /** The point of its outlines at a length; null where there is no metal. Lengths go round each outline for ever. */
  pointAt(run: number, outline: number): Vec | null;
  /**
   * Distance from a point to the outline, negative inside; beyond `limitMm` either way it is only known to be beyond.
   */
  gapMm(p: Vec, limitMm: number): number;
}

/** Stations along an outline besides its corners. */
const stationsWanted = 1500;

interface Course {
  readonly edges: readonly Edge[];
  /** The length at which each edge begins, and at the end of the last. */
  readonly runs: readonly number[];
}

/** A region by its loops, solid by even-odd nesting; `inverted`, all the plane but the region. */
export class OutlineShape implements Shape {
  readonly stations: readonly (readonly number[])[];
  readonly spacingMm: number;
  readonly #courses: readonly Course[];
  readonly #grid: EdgeGrid;
  readonly #inverted: boolean;

  constructor(region: Region, inverted = false) {
    this.#courses = region.map((loop) => courseOf(edgesOf(loop)));
    this.#grid = new EdgeGrid(this.#courses.flatMap(({ edges }) => edges));
    this.#inverted = inverted;
    this.spacingMm = this.#courses.reduce((sum, { runs }) => sum + (runs.at(-1) as number), 0) / stationsWanted;
    this.stations = this.#courses.map((course) => stationsOf(course, this.spacingMm));
  }

  pointAt(run: number, outline: number): Vec {
    const { edges, runs } = this.#courses[outline] as Course;
    const whole = runs.at(-1) as number;
    const along = run - whole * Math.floor(run / whole);
    const edge = Math.min(lastAtOrBelow(runs, along), edges.length - 1);
    const start = runs[edge] as number;
    const length = (runs[edge + 1] as number) - start;
    return pointOnEdge(edges[edge] as Edge, length > 0 ? (along - start) / length : 0);
  }

  lengthMm(outline: number): number {
    return this.#courses[outline]?.runs.at(-1) as number;
  }

  gapMm(p: Vec, limitMm: number): number {
    const distanceMm = this.#grid.distance(p, limitMm);
    const inside = (this.#grid.crossings(p) % 2 === 1) !== this.#inverted;
    return inside ? -distanceMm : distanceMm;
  }
}

function courseOf(edges: readonly Edge[]): Course {
  const runs = [0];
  for (const edge of edges) runs.push((runs.at(-1) as number) + lengthOf(edge));
  return { edges, runs };
}

function stationsOf({ edges, runs }: Course, spacingMm: number): number[] {
  return edges.flatMap((edge, i) => {
    const length = lengthOf(edge);
    const turn = edge.kind === 'arc' ? Math.abs(edge.sweepRad) : 0;
    const count = Math.max(1, Math.ceil(length / spacingMm), Math.ceil(4 * turn));
    return Array.from({ length: count }, (_, k) => (runs[i] as number) + (k / count) * length);
  });
}

/** Index of the last number not above `x` in an ascending list that starts at or below it. */
export function lastAtOrBelow(ascending: readonly number[], x: number): number {
  let low = 0;
  let high = ascending.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((ascending[middle] as number) <= x) low = middle;
    else high = middle - 1;
  }
  return low;
}
