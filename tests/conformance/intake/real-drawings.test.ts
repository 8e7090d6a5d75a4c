import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Reading } from '../../../src/files/finding.ts';
import { edgesOf } from '../../../src/geometry/plane/loop.ts';
import { regionAreaMm2 } from '../../../src/geometry/polygons/region-measures.ts';
import { type DrawingImport, importDrawing } from '../../../src/intake/import-drawing.ts';
import { nothingSaid } from '../../../src/intake/import-options.ts';
import { outlinesOf } from '../../../src/intake/outlines/outlines.ts';
import { readDrawing } from '../../../src/intake/sources.ts';
import { circle, dxf, entity, line, polyline, type Tags } from '../../core/intake/drawn.ts';
import { Random } from '../../support/random.ts';
import { evenOddArea, type Segment } from './even-odd-area.ts';
import { segmentsByDxf, segmentsByDxfParser } from './peers.ts';

const samples = process.env.FETTLE_SAMPLES;
const inSamples = describe.skipIf(samples === undefined);
const why = samples === undefined ? ' (skipped: FETTLE_SAMPLES not set)' : '';

const bytesOf = (...path: readonly string[]): Uint8Array => new Uint8Array(readFileSync(join(samples ?? '', ...path)));

/** Our outlines of a drawing in its own units, gaps left as they are. */
function outlines(name: string, bytes: Uint8Array) {
  const drawing = readDrawing(name, bytes);
  if (!drawing.ok) throw new Error(JSON.stringify(drawing.findings));
  return outlinesOf(drawing.value.shapes, 1, 0);
}

function imported(name: string, units: string | null, join_: number | null = null): Reading<DrawingImport> {
  const drawing = readDrawing(name, bytesOf('dxf', name));
  if (!drawing.ok) return drawing;
  return importDrawing(name, drawing.value, { ...nothingSaid, name, viewedFrom: 'face', units, join: join_ });
}

describe(`real drawings by trimesh's authors (MIT)${why}`, () => {
  inSamples('one drawing in eight versions of DXF', () => {
    const files = samples === undefined ? [] : readdirSync(join(samples, 'dxf-versions'));

    it('is there in all eight', () => {
      expect(files).toHaveLength(8);
    });

    it.each(files)('%s gives the same outline, a square of one inch', (file) => {
      const { loops, gaps } = outlines(file, bytesOf('dxf-versions', file));
      const corners = loops.map((loop) => edgesOf(loop).map(({ a }) => [a.x, a.y]));
      expect({ corners, gaps }).toEqual({
        corners: [
          [
            [0, 0],
            [1, 0],
            [1, expect.closeTo(1, 12)],
            [0, expect.closeTo(1, 12)],
          ],
        ],
        gaps: [],
      });
    });
  });

  inSamples('drawings that do not close', () => {
    it('loose: the line is listed with both its ends, the circle is read', () => {
      const reading = imported('loose.dxf', null);
      expect(reading).toMatchObject({
        ok: true,
        value: {
          part: { units: 'mm', sections: [{ id: '0', loops: [{ circle: [400.75, 179.25], radius: 86.620581 }] }] },
          gaps: [
            {
              from: { x: 401.5, y: 278.5 },
              to: { x: 380.75, y: 230.75 },
              sizeMm: expect.closeTo(Math.hypot(20.75, 47.75), 9),
            },
          ],
        },
      });
    });

    it('broken_loop: units are asked for; above the join its gap is listed, within it said', () => {
      expect(imported('broken_loop.dxf', null)).toMatchObject({ ok: false, findings: [{ at: 'units' }] });
      expect(imported('broken_loop.dxf', 'in')).toMatchObject({
        ok: false,
        findings: [{ found: 'no closed outline' }, { found: 'a gap of 0.1 in from (1, 0) to (1.1, 0), layer 0' }],
      });
      expect(imported('broken_loop.dxf', 'mm', 0.05)).toMatchObject({ ok: false });
      expect(imported('broken_loop.dxf', 'mm')).toMatchObject({
        ok: true,
        value: { joined: [{ from: { x: 1, y: 0 }, to: { x: 1.1, y: 0 }, sizeMm: expect.closeTo(0.1, 9) }] },
      });
    });
  });

  inSamples('areas by another reader', () => {
    // the peer's arcs are chords: they lack up to 1.3e-5 of a disc
    const cases: readonly [file: string, outlines: number, segments: (text: string) => Segment[]][] = [
      ['1002_tray_bottom.DXF', 24, segmentsByDxfParser],
      ['apu-mount.DXF', 19, segmentsByDxfParser],
      ['single_arc.dxf', 1, segmentsByDxfParser],
      ['sliding-base.dxf', 9, segmentsByDxfParser],
      ['wrench.dxf', 2, segmentsByDxfParser],
      ['insert.dxf', 2, segmentsByDxf],
    ];
    it.each(cases)('%s', (file, count, segments) => {
      const bytes = bytesOf('dxf', file);
      const { loops, gaps, branches } = outlines(file, bytes);
      const area = evenOddArea(segments(new TextDecoder('latin1').decode(bytes)));
      expect({ count: loops.length, gaps, branches }).toEqual({ count, gaps: [], branches: [] });
      expect(regionAreaMm2(loops) / area).toBeCloseTo(1, 4);
    });
  });
});

describe('drawings made up at random, by dxf-parser 1.1.2', () => {
  it.each(Array.from({ length: 12 }, (_, i) => i + 1))('seed %i', (seed) => {
    const random = new Random(seed);
    const entities = Array.from({ length: 6 }, (_, i) => madeUp(random, 100 * i)).flat();
    const text = dxf({ entities: shuffled(entities, random) });
    const { loops, gaps } = outlines('random.dxf', new TextEncoder().encode(text));
    expect({ count: loops.length, gaps }).toEqual({ count: 6, gaps: [] });
    expect(regionAreaMm2(loops) / evenOddArea(segmentsByDxfParser(text))).toBeCloseTo(1, 4);
  });
});

/** A circle, a polyline with bulges, or lines and an arc, somewhere within 40 of (x, 0). */
function madeUp(random: Random, x: number): Tags[] {
  const r = random.between(5, 40);
  if (random.chance(0.2)) return [circle(x, 0, r)];
  const count = random.whole(3, 12);
  const points = Array.from({ length: count }, (_, i): [number, number, number] => {
    const [angle, out] = [(2 * Math.PI * i) / count, random.between(0.6, 1) * r];
    return [x + out * Math.cos(angle), out * Math.sin(angle), random.chance(0.4) ? random.between(-0.1, 0.3) : 0];
  });
  if (random.chance(0.5)) return [polyline(points)];
  // a half turn over the left side of a rectangle
  const arc = entity('ARC', 10, x, 20, 0, 40, r, 50, 90, 51, 270);
  return [arc, line(x + r, r, x, r), line(x + r, -r, x + r, r), line(x, -r, x + r, -r)];
}

function shuffled<T>(things: readonly T[], random: Random): T[] {
  return things
    .map((thing) => ({ thing, key: random.next() }))
    .sort((a, b) => a.key - b.key)
    .map(({ thing }) => thing);
}
