import initGeos from 'geos-wasm';
import type { Rigid } from '../../../src/geometry/plane/rigid.ts';
import { type Ring, writePlaced } from './rings.ts';

/** GEOS, in WebAssembly. Geometries live in its own memory: what is made must be freed. */
export class Geos {
  readonly #geos: Awaited<ReturnType<typeof initGeos>>;
  readonly #result: number;

  static async start(): Promise<Geos> {
    return new Geos(await initGeos());
  }

  private constructor(geos: Awaited<ReturnType<typeof initGeos>>) {
    this.#geos = geos;
    this.#result = geos.Module._malloc(8);
  }

  /** A polygon: its outline followed by its holes. */
  polygon(rings: readonly Ring[], placement: Rigid): number {
    const geos = this.#geos;
    const [outline = 0, ...holes] = rings.map((ring) => this.#ring(ring, placement));
    return this.#withList(holes, (list) => geos.GEOSGeom_createPolygon(outline, list, holes.length));
  }

  #ring(ring: Ring, placement: Rigid): number {
    const geos = this.#geos;
    const buffer = geos.Module._malloc(8 * (ring.length + 2));
    writePlaced(ring, placement, geos.Module.HEAPF64, buffer / 8);
    const points = geos.GEOSCoordSeq_copyFromBuffer(buffer, ring.length / 2 + 1, 0, 0);
    geos.Module._free(buffer);
    return geos.GEOSGeom_createLinearRing(points);
  }

  /** Every edge against every other. */
  distance(a: number, b: number): number {
    this.#geos.GEOSDistance(a, b, this.#result);
    return this.#read();
  }

  indexedDistance(a: number, b: number): number {
    this.#geos.GEOSDistanceIndexed(a, b, this.#result);
    return this.#read();
  }

  prepare(polygon: number): number {
    return this.#geos.GEOSPrepare(polygon);
  }

  preparedDistance(prepared: number, other: number): number {
    this.#geos.GEOSPreparedDistance(prepared, other, this.#result);
    return this.#read();
  }

  /** The union of polygons, which it takes over and frees. */
  union(polygons: readonly number[]): number {
    const geos = this.#geos;
    const multiPolygon = 6;
    const all = this.#withList(polygons, (list) => geos.GEOSGeom_createCollection(multiPolygon, list, polygons.length));
    const union = geos.GEOSUnaryUnion(all);
    this.free(all);
    return union;
  }

  areaMm2(polygon: number): number {
    this.#geos.GEOSArea(polygon, this.#result);
    return this.#read();
  }

  free(...polygons: readonly number[]): void {
    for (const polygon of polygons) this.#geos.GEOSGeom_destroy(polygon);
  }

  freePrepared(prepared: number): void {
    this.#geos.GEOSPreparedGeom_destroy(prepared);
  }

  #read(): number {
    return this.#geos.Module.HEAPF64[this.#result / 8] as number;
  }

  #withList<T>(items: readonly number[], use: (list: number) => T): T {
    const { Module } = this.#geos;
    const list = Module._malloc(4 * Math.max(1, items.length));
    Module.HEAPU32.set(items, list / 4);
    const result = use(list);
    Module._free(list);
    return result;
  }
}
