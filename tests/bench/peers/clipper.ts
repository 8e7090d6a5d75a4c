import startClipper, { type Clipper2, type PathsD } from 'clipper2-wasm';
import type { Rigid } from '../../../src/geometry/plane/rigid.ts';
import type { Ring } from './rings.ts';

const decimals = 6;

/** Clipper2, in WebAssembly. Paths live in its own memory: each operation frees what it is given. */
export class Clipper {
  readonly #clipper: Clipper2;

  static async start(): Promise<Clipper> {
    return new Clipper(await startClipper());
  }

  private constructor(clipper: Clipper2) {
    this.#clipper = clipper;
  }

  paths(rings: readonly Ring[], { cos, sin, shift }: Rigid): PathsD {
    const paths = new this.#clipper.PathsD();
    for (const ring of rings) {
      // x, y and a label of each point
      const points = new Float64Array((ring.length / 2) * 3);
      for (let i = 0, j = 0; i < ring.length; i += 2, j += 3) {
        const x = ring[i] as number;
        const y = ring[i + 1] as number;
        points[j] = cos * x - sin * y + shift.x;
        points[j + 1] = sin * x + cos * y + shift.y;
      }
      const path = new this.#clipper.PathD();
      path.assign(points);
      paths.push_back(path);
      path.delete();
    }
    return paths;
  }

  /** Copies in all those places united: two by two, and those two by two again, far quicker than all at once. */
  unionOfCopies(rings: readonly Ring[], placements: readonly Rigid[]): PathsD {
    let level = placements.map((placement) => this.paths(rings, placement));
    while (level.length > 1) {
      const next: PathsD[] = [];
      for (let i = 0; i < level.length; i += 2) {
        const [a, b] = level.slice(i, i + 2);
        next.push(b ? this.#both(a as PathsD, b, this.#clipper.UnionD) : (a as PathsD));
      }
      level = next;
    }
    return level[0] ?? new this.#clipper.PathsD();
  }

  inflate(paths: PathsD, byMm: number, chordMm: number): PathsD {
    const { JoinType, EndType } = this.#clipper;
    const grown = this.#clipper.InflatePathsD(paths, byMm, JoinType.Round, EndType.Polygon, 2, decimals, chordMm);
    paths.delete();
    return grown;
  }

  intersection(a: PathsD, b: PathsD): PathsD {
    return this.#both(a, b, this.#clipper.IntersectD);
  }

  areaMm2(paths: PathsD): number {
    const area = this.#clipper.AreaPathsD(paths);
    paths.delete();
    return area;
  }

  #both(a: PathsD, b: PathsD, operation: Clipper2['UnionD']): PathsD {
    const result = operation(a, b, this.#clipper.FillRule.EvenOdd, decimals);
    a.delete();
    b.delete();
    return result;
  }
}
