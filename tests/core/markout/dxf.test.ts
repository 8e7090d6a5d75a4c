import { parseString, toPolylines } from 'dxf';
import DxfParser, { type ICircleEntity, type ILineEntity, type IPolylineEntity } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { type DxfLayer, dxfOf } from '../../../src/drawing/dxf/dxf.ts';
import { pointOnEdge } from '../../../src/geometry/plane/edge.ts';
import { edgesOf, type Loop } from '../../../src/geometry/plane/loop.ts';
import type { Vec } from '../../../src/geometry/plane/vec.ts';
import { readDxf } from '../../../src/intake/drawing/dxf.ts';
import { box, disc, outline, ringPiece } from '../../support/jobs.ts';
import { lugJob, plannedDemo, plannedJob } from '../../support/markout-jobs.ts';
import { answerOf, markoutFor } from '../../support/plan-answer.ts';

/** Group codes and values, two lines each. */
function tagsOf(text: string): [number, string][] {
  const lines = text.split('\n');
  return Array.from({ length: Math.floor(lines.length / 2) }, (_, i) => [
    Number(lines[2 * i]),
    (lines[2 * i + 1] ?? '').trim(),
  ]);
}

const shapes: readonly Loop[] = [
  box(0, 0, 100, 40),
  disc(12.345678, -7.5, 17),
  ringPiece(177.5, 201, -8, 33),
  outline([0, 0], [300, 0, 0.000123], [300, 200, -0.7], [10, 190.123456]),
];
const layers: readonly DxfLayer[] = [
  { name: 'PART', colour: 7, shapes: shapes.map((loop) => ({ kind: 'loop', loop })) },
  { name: 'CHECK-BAR', colour: 4, shapes: [{ kind: 'line', a: { x: 0, y: -20 }, b: { x: 150, y: -20 } }] },
  {
    name: 'NOTES',
    colour: 7,
    shapes: [{ kind: 'text', at: { x: 0, y: -30 }, text: 'Ø14 ± 0.5°, 100 % of it – é', heightMm: 5 }],
  },
];
const text = dxfOf(layers);

describe('the DXF writer keeps to release 12', () => {
  const { joint, plan } = plannedDemo('transfer-case');
  const written = markoutFor({ joint, plan }).sheets.flatMap(({ dxf }) => dxf ?? []);

  it.each([text, ...written].map((text, i) => [i, text] as const))(
    'file %d: no entity, tag or letter of a later one',
    (_, text) => {
      const tags = tagsOf(text);
      expect(tags).toContainEqual([1, 'AC1009']);
      // 100 subclass markers, 5 handles, 210 extrusions and above are not needed or not known
      expect(tags.filter(([code]) => code === 100 || code === 5 || (code >= 210 && code !== 999))).toEqual([]);
      const entities = new Set(tags.filter(([code]) => code === 0).map(([, kind]) => kind));
      const known = [
        'SECTION',
        'ENDSEC',
        'TABLE',
        'ENDTAB',
        'LTYPE',
        'LAYER',
        'EOF',
        'LINE',
        'CIRCLE',
        'TEXT',
        'POLYLINE',
        'VERTEX',
        'SEQEND',
      ];
      expect([...entities].filter((kind) => !known.includes(kind))).toEqual([]);
      expect(text).toMatch(/^[\n\x20-\x7e]*$/);
    },
  );

  it.each([text, ...written].map((text, i) => [i, text] as const))(
    'file %d: every layer in use is in the table, named as it allows',
    (_, text) => {
      const tags = tagsOf(text);
      const used = new Set(tags.filter(([code]) => code === 8).map(([, name]) => name));
      const table = tags.filter(([code], i) => code === 2 && tags[i - 1]?.[1] === 'LAYER' && tags[i - 1]?.[0] === 0);
      expect(new Set(table.map(([, name]) => name))).toEqual(used);
      for (const name of used) expect(name).toMatch(/^[A-Z0-9$_-]{1,31}$/);
    },
  );

  it('says the unit where release 12 lets it, and holds a bar of known length both ways', () => {
    for (const text of written) {
      expect(text.split('\n')[1]).toContain('millimetres');
      expect(text).toContain('Units: mm');
      const bars = (new DxfParser().parseSync(text)?.entities ?? []).filter(
        ({ layer }) => layer === 'CHECK-BAR',
      ) as ILineEntity[];
      const spans = bars.map(({ vertices: [a, b] }) => [(b?.x ?? 0) - (a?.x ?? 0), (b?.y ?? 0) - (a?.y ?? 0)]);
      expect(spans).toEqual([
        [150, 0],
        [0, 150],
      ]);
    }
  });

  it('has the layers a machinist looks for', () => {
    const { joint, plan } = plannedJob(lugJob);
    const { sheets } = markoutFor({ joint, plan });
    const used = new Set(
      tagsOf(sheets[0]?.dxf ?? '')
        .filter(([code]) => code === 8)
        .map(([, name]) => name),
    );
    for (const name of ['PART', 'RELIEF', 'FIRST', 'LAST', 'DO-NOT-CUT', 'DOWELS', 'CHECK-BAR'])
      expect(used).toContain(name);
  });
});

/** The farthest that places along one closed outline lie from another, mm. */
function farthest(from: Loop, to: readonly Vec[]): number {
  const places = edgesOf(from).flatMap((edge) => [0, 0.25, 0.5, 0.75].map((t) => pointOnEdge(edge, t)));
  return Math.max(...places.map((p) => Math.min(...to.map((q) => Math.hypot(p.x - q.x, p.y - q.y)))));
}

const placesOn = (loop: Loop): Vec[] =>
  edgesOf(loop).flatMap((edge) => [0, 0.25, 0.5, 0.75].map((t) => pointOnEdge(edge, t)));

describe('what is written is read back to a thousandth of a millimetre', () => {
  it('by dxf-parser', () => {
    const entities = (new DxfParser().parseSync(text)?.entities ?? []).filter(({ layer }) => layer === 'PART');
    const loops = entities.map((entity): Loop => {
      if (entity.type === 'CIRCLE') {
        const { center, radius } = entity as ICircleEntity;
        return disc(center.x, center.y, radius);
      }
      const { vertices, shape } = entity as IPolylineEntity;
      expect(shape).toBe(true);
      return outline(...vertices.map(({ x, y, bulge }) => [x, y, bulge ?? 0] as const));
    });
    expect(loops.length).toBe(shapes.length);
    for (const [i, loop] of loops.entries()) expect(farthest(loop, placesOn(shapes[i] as Loop))).toBeLessThan(1e-3);
  });

  it('by dxf, which makes coarse chords of arcs: every corner', () => {
    const { polylines } = toPolylines(parseString(text));
    const read = polylines.flatMap(({ vertices }) => vertices);
    for (const corner of shapes.flatMap((loop) => (loop.kind === 'path' ? loop.vertices : []))) {
      expect(Math.min(...read.map(([x, y]) => Math.hypot(x - corner.x, y - corner.y)))).toBeLessThan(1e-3);
    }
  });

  it('by our own reader, arcs as arcs', () => {
    const reading = readDxf('written.dxf', new TextEncoder().encode(text));
    if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
    const drawn = reading.value.shapes.filter(({ layer }) => layer === 'PART');
    expect(drawn.length).toBe(shapes.length);
    for (const [i, { shape }] of drawn.entries()) {
      const wanted = shapes[i] as Loop;
      if (shape.kind === 'circle') {
        expect(wanted).toEqual(disc(shape.centre.x, shape.centre.y, shape.radius));
        continue;
      }
      expect(shape.closed).toBe(true);
      const vertices = shape.strokes.flatMap((stroke) =>
        stroke.kind === 'edge' ? [{ ...stroke.a, bulge: stroke.bulge }] : [],
      );
      expect(farthest({ kind: 'path', vertices }, placesOn(wanted))).toBeLessThan(1e-3);
    }
  });

  it('by our own reader, from a plan: part, relief, first and last line where the plan has them', () => {
    const { joint, plan } = plannedDemo('transfer-case');
    const [band] = answerOf({ joint, plan }).sections[0]?.bands ?? [];
    if (band === undefined) throw new Error('no band');
    const reading = readDxf('plan.dxf', new TextEncoder().encode(markoutFor({ joint, plan }).sheets[0]?.dxf ?? ''));
    if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
    const on = (name: string) => reading.value.shapes.filter(({ layer }) => layer === name).map(({ shape }) => shape);
    for (const [name, loops] of [
      ['RELIEF', band.loops],
      ['FIRST', band.firstLoops],
      ['LAST', band.lastLoops],
      ['PART', joint.fixed.sections.find(({ id }) => id === 'ribs')?.loops ?? []],
    ] as const) {
      const shapes = on(name);
      expect(shapes.length).toBe(loops.length);
      const read = shapes.flatMap((shape) =>
        shape.kind === 'circle' ? [] : shape.strokes.flatMap((s) => (s.kind === 'edge' ? [s.a] : [])),
      );
      const wanted = loops.flatMap((loop): readonly Vec[] => {
        if (Array.isArray(loop)) return loop.map(([x, y]) => ({ x, y }));
        return 'vertices' in loop ? loop.vertices : [];
      });
      expect(read.length).toBe(wanted.length);
      for (const p of wanted) expect(Math.min(...read.map((q) => Math.hypot(p.x - q.x, p.y - q.y)))).toBeLessThan(1e-3);
    }
  });
});
