import initGeos from 'geos-wasm';
import { pointOnEdge } from '../../../src/geometry/edge.ts';
import { edgesOf, type Region } from '../../../src/geometry/loop.ts';
import type { Vec } from '../../../src/geometry/vec.ts';

/** A region held by GEOS. */
export type Shape = number & { readonly shape: unique symbol };

type Geos = Awaited<ReturnType<typeof initGeos>>;
type Overlay = 'GEOSUnion' | 'GEOSIntersection' | 'GEOSDifference' | 'GEOSSymDifference';

/**
 * Regions of the plane by GEOS (geos-wasm), which shares nothing with the polygon engine under test. It knows straight
 * edges only: arcs are handed to it as chords. Everything made is kept until `free`.
 */
export class GeosPlane {
  readonly #geos: Geos;
  readonly #result: number;
  readonly #made: number[] = [];

  static async start(): Promise<GeosPlane> {
    return new GeosPlane(await initGeos());
  }

  private constructor(geos: Geos) {
    this.#geos = geos;
    this.#result = geos.Module._malloc(8);
  }

  /** Rings by even-odd nesting, whichever way they run. */
  shape(rings: readonly (readonly Vec[])[]): Shape {
    return rings.reduce((sum, ring) => this.#overlay('GEOSSymDifference', sum, this.#polygon(ring)), this.#empty());
  }

  /** A region of lines and arcs, arcs as chords no higher than `chordMm`. */
  region(region: Region, chordMm: number): Shape {
    return this.shape(ringsOf(region, chordMm));
  }

  union(...shapes: readonly Shape[]): Shape {
    const multiPolygon = 6;
    const { Module } = this.#geos;
    const clones = shapes.flatMap((shape) => this.#polygonsOf(shape));
    const list = Module._malloc(4 * Math.max(1, clones.length));
    Module.HEAPU32.set(clones, list / 4);
    const all = this.#keep(this.#geos.GEOSGeom_createCollection(multiPolygon, list, clones.length));
    Module._free(list);
    return this.#keep(this.#geos.GEOSUnaryUnion(all));
  }

  intersection(a: Shape, b: Shape): Shape {
    return this.#overlay('GEOSIntersection', a, b);
  }

  difference(a: Shape, b: Shape): Shape {
    return this.#overlay('GEOSDifference', a, b);
  }

  /** Grown, or shrunk where negative; round corners of `quarter` chords to a quarter turn, inside the true arc. */
  buffer(shape: Shape, byMm: number, quarter: number): Shape {
    return this.#keep(this.#geos.GEOSBuffer(shape, byMm, quarter));
  }

  areaMm2(shape: Shape): number {
    this.#geos.GEOSArea(shape, this.#result);
    return this.#read();
  }

  lengthMm(shape: Shape): number {
    this.#geos.GEOSLength(shape, this.#result);
    return this.#read();
  }

  distanceMm(a: Shape, b: Shape): number {
    this.#geos.GEOSDistanceIndexed(a, b, this.#result);
    return this.#read();
  }

  isValid(shape: Shape): boolean {
    return this.#geos.GEOSisValid(shape) === 1;
  }

  free(): void {
    for (const made of this.#made.splice(0)) this.#geos.GEOSGeom_destroy(made);
  }

  #overlay(how: Overlay, a: Shape, b: Shape): Shape {
    return this.#keep(this.#geos[how](a, b));
  }

  #empty(): Shape {
    return this.#keep(this.#geos.GEOSGeom_createEmptyPolygon());
  }

  #polygon(ring: readonly Vec[]): Shape {
    const geos = this.#geos;
    const closed = [...ring, ring[0] as Vec];
    const buffer = geos.Module._malloc(16 * closed.length);
    geos.Module.HEAPF64.set(
      closed.flatMap(({ x, y }) => [x, y]),
      buffer / 8,
    );
    const points = geos.GEOSCoordSeq_copyFromBuffer(buffer, closed.length, 0, 0);
    geos.Module._free(buffer);
    return this.#keep(geos.GEOSGeom_createPolygon(geos.GEOSGeom_createLinearRing(points), 0, 0));
  }

  #polygonsOf(shape: Shape): number[] {
    const geos = this.#geos;
    const count = geos.GEOSGetNumGeometries(shape);
    return Array.from({ length: count }, (_, i) => geos.GEOSGeom_clone(geos.GEOSGetGeometryN(shape, i)));
  }

  #keep(made: number): Shape {
    if (made === 0) throw new Error('GEOS gave no result');
    this.#made.push(made);
    return made as Shape;
  }

  #read(): number {
    return this.#geos.Module.HEAPF64[this.#result / 8] as number;
  }
}

/** The loops of a region as rings of points on them, chords no higher than `chordMm`. */
export const ringsOf = (region: Region, chordMm: number): Vec[][] =>
  region.map((loop) =>
    edgesOf(loop).flatMap((edge) => {
      if (edge.kind === 'line') return [edge.a];
      const chords = Math.max(1, Math.ceil(Math.abs(edge.sweepRad) / Math.sqrt((8 * chordMm) / edge.radius)));
      return Array.from({ length: chords }, (_, i) => pointOnEdge(edge, i / chords));
    }),
  );
