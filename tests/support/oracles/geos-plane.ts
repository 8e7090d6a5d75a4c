import initGeos from 'geos-wasm';
import { pointOnEdge } from '../../../src/geometry/plane/edge.ts';
import { edgesOf, type Region } from '../../../src/geometry/plane/loop.ts';
import { type Vec, vec } from '../../../src/geometry/plane/vec.ts';

/** A region held by GEOS. */
export type Shape = number & { readonly shape: unique symbol };

/** A region made ready to be asked many times how near others come. */
export type PreparedShape = number & { readonly prepared: unique symbol };

/** A rectangle along the axes. */
export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

type Geos = Awaited<ReturnType<typeof initGeos>>;
type Overlay = 'GEOSUnion' | 'GEOSIntersection' | 'GEOSDifference' | 'GEOSSymDifference';

/** What GEOS calls kinds of geometry. */
const polygon = 3;
const multiPolygon = 6;

/**
 * Regions of the plane by GEOS (geos-wasm), which shares nothing with the polygon engine under test. It knows straight
 * edges only: arcs are handed to it as chords. Everything made is kept until `free`.
 */
export class GeosPlane {
  readonly #geos: Geos;
  readonly #result: number;
  readonly #made: number[] = [];
  readonly #ready: number[] = [];

  static async start(): Promise<GeosPlane> {
    return new GeosPlane(await initGeos());
  }

  private constructor(geos: Geos) {
    this.#geos = geos;
    this.#result = geos.Module._malloc(8);
  }

  /** Rings by even-odd nesting, whichever way they run. */
  shape(rings: readonly (readonly Vec[])[]): Shape {
    const [first, ...others] = rings.map((ring) => this.#polygon(ring));
    return others.reduce((sum, ring) => this.#overlay('GEOSSymDifference', sum, ring), first ?? this.#empty());
  }

  /** A region of lines and arcs, arcs as chords no higher than `chordMm`. */
  region(region: Region, chordMm: number): Shape {
    return this.shape(ringsOf(region, chordMm));
  }

  union(...shapes: readonly Shape[]): Shape {
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

  /** The least distance of two shapes, 0 where they share ground: GEOS alone would tell that of their outlines. */
  distanceMm(a: Shape, b: Shape): number {
    if (this.#geos.GEOSIntersects(a, b) === 1) return 0;
    this.#geos.GEOSDistanceIndexed(a, b, this.#result);
    return this.#read();
  }

  isValid(shape: Shape): boolean {
    return this.#geos.GEOSisValid(shape) === 1;
  }

  isEmpty(shape: Shape): boolean {
    return this.#geos.GEOSisEmpty(shape) === 1;
  }

  box({ x0, y0, x1, y1 }: Box): Shape {
    return this.#polygon([vec(x0, y0), vec(x1, y0), vec(x1, y1), vec(x0, y1)]);
  }

  /** The least rectangle that holds a shape; null where there is none. */
  bounds(shape: Shape): Box | null {
    if (this.isEmpty(shape)) return null;
    const geos = this.#geos;
    const [x0, y0, x1, y1] = (['XMin', 'YMin', 'XMax', 'YMax'] as const).map((end) => {
      geos[`GEOSGeom_get${end}`](shape, this.#result);
      return this.#read();
    }) as [number, number, number, number];
    return { x0, y0, x1, y1 };
  }

  /** The rings of a shape, outer and inner alike. */
  rings(shape: Shape): Vec[][] {
    const geos = this.#geos;
    const count = this.isEmpty(shape) ? 0 : geos.GEOSGetNumGeometries(shape);
    return Array.from({ length: count }, (_, i) => geos.GEOSGetGeometryN(shape, i)).flatMap((part) => {
      const inner = Array.from({ length: geos.GEOSGetNumInteriorRings(part) }, (_, i) =>
        geos.GEOSGetInteriorRingN(part, i),
      );
      return [geos.GEOSGetExteriorRing(part), ...inner].map((ring) => this.#pointsOf(ring).slice(1));
    });
  }

  /** A point of each of two shapes, where they are nearest; a corner of what they share where they share ground. */
  nearestPoints(a: Shape, b: Shape): readonly [Vec, Vec] {
    const [shared] = this.rings(this.intersection(a, b)).flat();
    if (shared !== undefined) return [shared, shared];
    const geos = this.#geos;
    const points = geos.GEOSNearestPoints(a, b);
    if (points === 0) throw new Error('GEOS gave no result');
    const [p, q] = this.#pointsOfSeq(points);
    geos.GEOSCoordSeq_destroy(points);
    return [p as Vec, q as Vec];
  }

  prepare(shape: Shape): PreparedShape {
    const ready = this.#geos.GEOSPrepare(shape);
    this.#ready.push(ready);
    return ready as PreparedShape;
  }

  /** Whether a shape comes within a distance of a prepared one. */
  isWithin(prepared: PreparedShape, shape: Shape, mm: number): boolean {
    return this.#geos.GEOSPreparedDistanceWithin(prepared, shape, mm) === 1;
  }

  free(): void {
    for (const ready of this.#ready.splice(0)) this.#geos.GEOSPreparedGeom_destroy(ready);
    for (const made of this.#made.splice(0)) this.#geos.GEOSGeom_destroy(made);
  }

  #overlay(how: Overlay, a: Shape, b: Shape): Shape {
    const made = this.#keep(this.#geos[how](a, b));
    const kind = this.#geos.GEOSGeomTypeId(made);
    // what only touches comes back as lines and points, or among polygons
    return kind === polygon || kind === multiPolygon ? made : this.union(made);
  }

  #pointsOf(line: number): Vec[] {
    return this.#pointsOfSeq(this.#geos.GEOSGeom_getCoordSeq(line));
  }

  #pointsOfSeq(seq: number): Vec[] {
    const { Module } = this.#geos;
    this.#geos.GEOSCoordSeq_getSize(seq, this.#result);
    const count = Module.HEAPU32[this.#result / 4] as number;
    const buffer = Module._malloc(16 * count);
    this.#geos.GEOSCoordSeq_copyToBuffer(seq, buffer, 0, 0);
    const flat = Module.HEAPF64.slice(buffer / 8, buffer / 8 + 2 * count);
    Module._free(buffer);
    return Array.from({ length: count }, (_, i) => vec(flat[2 * i] as number, flat[2 * i + 1] as number));
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
    return Array.from({ length: count }, (_, i) => geos.GEOSGetGeometryN(shape, i))
      .filter((part) => geos.GEOSGeomTypeId(part) === polygon)
      .map((part) => geos.GEOSGeom_clone(part));
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
