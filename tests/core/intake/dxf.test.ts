import { describe, expect, it } from 'vitest';
import type { CircleLoop } from '../../../src/geometry/plane/loop.ts';
import { edgesOf } from '../../../src/geometry/plane/loop.ts';
import { distance } from '../../../src/geometry/plane/vec.ts';
import { readDxf } from '../../../src/intake/drawing/dxf.ts';
import {
  areaOf,
  areasOf,
  bytesOf,
  circle,
  type DxfParts,
  dxf,
  dxfDrawing,
  entity,
  findingsOf,
  line,
  loneLoop,
  loopsOf,
  polyline,
  type Tags,
} from './drawn.ts';

const mirrored: Tags = [210, 0, 220, 0, 230, -1];
const square = polyline([
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
]);
/** A quarter of a disc of radius 10 about (0, 0), from +x to +y: a shape with a hand. */
const quarterPoints = [
  [0, 0],
  [10, 0, Math.tan(Math.PI / 8)],
  [0, 10],
] as const;
const quarter = polyline(quarterPoints);

const classic = (points: readonly (readonly [number, number, number?])[], flags: number, ...more: Tags): Tags => [
  ...entity('POLYLINE', 66, 1, 70, flags, ...more),
  ...points.flatMap(([x, y, bulge = 0]) => entity('VERTEX', 10, x, 20, y, 42, bulge)),
  ...entity('SEQEND'),
];

const alone = (...entities: readonly Tags[]) => loneLoop(dxfDrawing({ entities }));
const inserted = (block: Tags, ...insert: Tags) =>
  loneLoop(dxfDrawing({ blocks: { it: [block] }, entities: [entity('INSERT', 2, 'IT', ...insert)] }));
const boundsOf = (loop: ReturnType<typeof alone>) => {
  const points = edgesOf(loop).map(({ a }) => a);
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)].map((x) => Math.round(x * 1e6) / 1e6 + 0);
};

describe('DXF entities become outlines of the area they enclose', () => {
  const ellipse = (from: number, to: number, ...more: Tags) =>
    entity('ELLIPSE', 10, 5, 20, 5, 11, 3, 21, 4, 40, 0.5, 41, from, 42, to, ...more);
  // a circle as four quarters of a rational quadratic, weights 1 and √½ (any textbook on NURBS)
  const round: readonly (readonly [number, number])[] = [
    [1, 0],
    [1, 1],
    [0, 1],
    [-1, 1],
    [-1, 0],
    [-1, -1],
    [0, -1],
    [1, -1],
    [1, 0],
  ];
  const nurbs = entity(
    'SPLINE',
    70,
    12,
    71,
    2,
    72,
    12,
    73,
    9,
    ...[0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4].flatMap((knot) => [40, knot]),
    ...round.flatMap((_, i) => [41, i % 2 === 0 ? 1 : Math.SQRT1_2]),
    ...round.flatMap(([x, y]) => [10, 20 * x, 20, 20 * y, 30, 0]),
  );
  const cases: readonly [what: string, entities: readonly Tags[], area: number, tolerance: number][] = [
    [
      'LINE and ARC',
      [line(0, 0, 0, 4), line(2, 4, 2, 0), line(2, 0, 0, 0), entity('ARC', 10, 1, 20, 4, 40, 1, 50, 0, 51, 180)],
      8 + Math.PI / 2,
      1e-9,
    ],
    [
      'ARC across the start of angles',
      [entity('ARC', 10, 0, 20, 0, 40, 5, 50, 270, 51, 90), line(0, 5, 0, -5)],
      (Math.PI * 25) / 2,
      1e-9,
    ],
    ['ARC of a whole turn', [entity('ARC', 10, 0, 20, 0, 40, 5, 50, 30, 51, 390)], Math.PI * 25, 1e-9],
    [
      'two ARCs',
      [entity('ARC', 10, 0, 20, 0, 40, 5, 50, 30, 51, 70), entity('ARC', 10, 0, 20, 0, 40, 5, 50, 70, 51, 30)],
      Math.PI * 25,
      1e-9,
    ],
    ['CIRCLE', [circle(3, 4, 5)], Math.PI * 25, 1e-9],
    ['LWPOLYLINE with a bulge', [quarter], Math.PI * 25, 1e-9],
    [
      'LWPOLYLINE of two half turns',
      [
        polyline([
          [0, 0, 1],
          [10, 0, 1],
        ]),
      ],
      Math.PI * 25,
      1e-9,
    ],
    [
      'LWPOLYLINE with a bulge beyond half a turn',
      [
        polyline([
          [0, 0, Math.tan((270 * Math.PI) / 720)],
          [10, 0],
        ]),
      ],
      (50 * (1.5 * Math.PI + 1)) / 2,
      1e-9,
    ],
    [
      'POLYLINE',
      [
        classic(
          [
            [0, 0],
            [10, 0, Math.tan(Math.PI / 8)],
            [0, 10],
          ],
          1,
        ),
      ],
      Math.PI * 25,
      1e-9,
    ],
    [
      'POLYLINE in 3D',
      [
        classic(
          [
            [0, 0],
            [10, 0],
            [0, 10],
          ],
          9,
        ),
      ],
      50,
      1e-9,
    ],
    // the outline strays by up to 0.005 along its whole length
    ['ELLIPSE', [ellipse(0, 2 * Math.PI)], Math.PI * 5 * 2.5, 0.1],
    ['ELLIPSE over half its turn', [ellipse(0, Math.PI), line(8, 9, 2, 1)], (Math.PI * 5 * 2.5) / 2, 0.06],
    [
      'ELLIPSE with equal axes',
      [entity('ELLIPSE', 10, 0, 20, 0, 11, 3, 21, 4, 40, 1, 41, 0, 42, 6.283185307179586)],
      Math.PI * 25,
      1e-9,
    ],
    ['SPLINE', [nurbs], Math.PI * 400, 0.63],
  ];

  it.each(cases)('%s', (_, entities, area, tolerance) => {
    expect(Math.abs(areaOf(alone(...entities)) - area)).toBeLessThan(tolerance);
  });

  it('curves stay within 0.005 mm of what was drawn', () => {
    for (const { a } of edgesOf(alone(nurbs))) expect(Math.abs(distance(a, { x: 0, y: 0 }) - 20)).toBeLessThan(0.005);
    const [cos, sin] = [0.6, 0.8];
    for (const edge of edgesOf(alone(ellipse(0, 2 * Math.PI)))) {
      const out = { x: edge.a.x - 5, y: edge.a.y - 5 };
      const [u, v] = [(cos * out.x + sin * out.y) / 5, (cos * out.y - sin * out.x) / 2.5];
      expect(Math.hypot(u, v)).toBeCloseTo(1, 9);
      expect(edge.kind).toBe('arc');
    }
  });
});

describe('an extrusion straight down', () => {
  // all of these lie from x = 0 to 10 in their own coordinates
  const own: readonly [string, Tags][] = [
    ['LWPOLYLINE', polyline(quarterPoints, ...mirrored)],
    [
      'POLYLINE',
      classic(
        [
          [0, 0],
          [10, 0, Math.tan(Math.PI / 8)],
          [0, 10],
        ],
        1,
        ...mirrored,
      ),
    ],
  ];
  it.each(own)('mirrors x of %s and keeps its arcs on their side', (_, mirroredQuarter) => {
    const loop = alone(mirroredQuarter);
    expect(areaOf(loop)).toBeCloseTo(Math.PI * 25, 9);
    expect(boundsOf(loop)).toEqual([-10, 0, 0, 10]);
  });

  it('mirrors x of CIRCLE and ARC', () => {
    expect(alone(circle(3, 4, 5, '0', ...mirrored))).toEqual({ kind: 'circle', centre: { x: -3, y: 4 }, radius: 5 });
    const arc = entity('ARC', 10, 0, 20, 0, 40, 10, 50, 0, 51, 90, ...mirrored);
    expect(areaOf(alone(arc, line(0, 10, 0, 0), line(0, 0, -10, 0)))).toBeCloseTo(Math.PI * 25, 9);
  });

  it('leaves the ends of LINE, which are in the coordinates of the drawing', () => {
    const sides = [
      [0, 0, 10, 0],
      [10, 0, 10, 10],
      [10, 10, 0, 0],
    ] as const;
    const loop = alone(...sides.map(([x1, y1, x2, y2]): Tags => [...line(x1, y1, x2, y2), ...mirrored]));
    expect(boundsOf(loop)).toEqual([0, 0, 10, 10]);
  });

  it('runs an ELLIPSE the other way round', () => {
    const half = entity('ELLIPSE', 10, 0, 20, 0, 11, 10, 21, 0, 40, 0.5, 41, 0, 42, Math.PI, ...mirrored);
    expect(boundsOf(alone(half, line(-10, 0, 10, 0))).map(Math.round)).toEqual([-10, -5, 10, 0]);
  });

  it('mirrors an INSERT', () => {
    expect(boundsOf(inserted(quarter, 10, 100, 20, 0, ...mirrored))).toEqual([-110, 0, -100, 10]);
  });

  it('is the only tilt that is read', () => {
    const tilted = circle(0, 0, 5, '0', 210, 0.6, 220, 0, 230, 0.8);
    const rising: Tags = [...line(0, 0, 1, 1), 30, 0, 31, 5];
    expect(dxfDrawing({ entities: [square, tilted, rising] }).notes).toEqual([
      { code: 'not-read', text: "not read: 1 CIRCLE out of the drawing's plane, 1 LINE out of the drawing's plane" },
    ]);
  });
});

describe('INSERT', () => {
  it('moves the base point of its block to its place, scaled and turned', () => {
    const drawing = dxfDrawing({
      blocks: { 'it@10,0': [square] },
      entities: [entity('INSERT', 2, 'it@10,0', 10, 100, 20, 50, 41, 2, 42, 2, 50, 90)],
    });
    expect(boundsOf(loneLoop(drawing))).toEqual([80, 30, 100, 50]);
  });

  it('mirrors by a negative scale, arcs and all', () => {
    const loop = inserted(quarter, 41, -1, 42, 1);
    expect(boundsOf(loop)).toEqual([-10, 0, 0, 10]);
    expect(areaOf(loop)).toBeCloseTo(Math.PI * 25, 9);
  });

  it('makes an ellipse of a circle where it scales one way more than the other', () => {
    expect(Math.abs(areaOf(inserted(circle(0, 0, 10), 41, 2, 42, 1)) - Math.PI * 200)).toBeLessThan(0.5);
    expect(Math.abs(areaOf(inserted(quarter, 41, 3, 42, 1, 50, 30)) - Math.PI * 75)).toBeLessThan(0.25);
  });

  it('repeats in rows and columns, which turn with it but do not scale', () => {
    const drawing = dxfDrawing({
      blocks: { it: [circle(0, 0, 1)] },
      entities: [entity('INSERT', 2, 'it', 41, 2, 42, 2, 50, 90, 70, 3, 71, 2, 44, 10, 45, 20)],
    });
    const places = (loopsOf(drawing) as CircleLoop[]).map(({ centre: { x, y } }) => [
      Math.round(x) + 0,
      Math.round(y) + 0,
    ]);
    expect(places).toEqual([
      [0, 0],
      [0, 10],
      [0, 20],
      [-20, 0],
      [-20, 10],
      [-20, 20],
    ]);
  });

  it('reaches through blocks in blocks, and gives its layer to what lies on layer 0', () => {
    const drawing = dxfDrawing({
      blocks: { inner: [circle(0, 0, 1), circle(0, 5, 1, 'own')], outer: [entity('INSERT', 2, 'inner', 10, 10)] },
      entities: [[0, 'INSERT', 8, 'dowels', 2, 'outer', 10, 100]],
    });
    expect(drawing.shapes.map(({ layer, shape }) => [layer, shape])).toEqual([
      ['dowels', { kind: 'circle', centre: { x: 110, y: 0 }, radius: 1 }],
      ['own', { kind: 'circle', centre: { x: 110, y: 5 }, radius: 1 }],
    ]);
  });
});

describe('what a DXF file says beside its outlines', () => {
  it.each([
    [0, null],
    [1, 25.4],
    [2, 304.8],
    [4, 1],
    [5, 10],
    [6, 1000],
    [99, null],
  ])('$INSUNITS %i', (insUnits, mm) => {
    expect(dxfDrawing({ insUnits, entities: [square] }).unit?.mm ?? null).toBe(mm);
  });

  it('leaves out paper space, hidden layers and what is no outline, and says so', () => {
    const drawing = dxfDrawing({
      layers: [
        [2, 'Frozen', 70, 1, 62, 7],
        [2, 'off', 70, 0, 62, -7],
      ],
      entities: [
        square,
        circle(0, 0, 1, '0', 67, 1),
        circle(0, 0, 2, 'FROZEN'),
        circle(0, 0, 3, 'off'),
        entity('MTEXT', 1, 'hello'),
        entity('HATCH'),
      ],
    });
    expect(drawing.shapes).toHaveLength(1);
    expect(drawing.notes).toEqual([
      { code: 'not-read', text: 'not read: 1 in paper space, 2 on a layer that is off or frozen, 1 MTEXT, 1 HATCH' },
    ]);
  });

  it.each([
    ['windows-1252', 'AC1015', 'ANSI_1252', [0x44, 0xfc, 0x62, 0x65, 0x6c], 'Dübel'],
    ['windows-1251', 'AC1015', 'ANSI_1251', [0xf8, 0xf2, 0xe8, 0xf4, 0xf2], 'штифт'],
    ['UTF-8 from 2007 on', 'AC1021', 'ANSI_1252', [0x44, 0xc3, 0xbc, 0x62, 0x65, 0x6c], 'Dübel'],
    ['letters written as \\U+', 'AC1015', 'ANSI_1252', [...bytesOf('D\\U+00FCbel')], 'Dübel'],
  ])('reads layer names in %s', (_, version, codePage, name, expected) => {
    const text = dxf({ version, codePage, entities: [circle(0, 0, 1, 'NAME')] });
    const at = text.indexOf('NAME');
    const bytes = Uint8Array.from([...bytesOf(text.slice(0, at)), ...name, ...bytesOf(text.slice(at + 4))]);
    const drawing = readDxf('a.dxf', bytes);
    expect(drawing.ok && drawing.value.shapes.map(({ layer }) => layer)).toEqual([expected]);
  });

  it('reads lines ended any way', () => {
    const text = dxf({ entities: [square] });
    for (const end of ['\r\n', '\r']) expect(readDxf('a.dxf', bytesOf(text.replaceAll('\n', end))).ok).toBe(true);
  });
});

describe('a damaged DXF file is refused with its place', () => {
  const good = dxf({ entities: [square] });
  const broken = (text: string) => findingsOf(readDxf('a.dxf', bytesOf(text)));
  const unsound = (parts: DxfParts) => findingsOf(readDxf('a.dxf', bytesOf(dxf(parts))));

  it.each([
    ['binary', `AutoCAD Binary DXF\r\n\x1a\0${good}`, '', /binary/],
    ['no DXF at all', '<html></html>\nhello', 'line 1', /html/],
    ['empty', '', '', /no ENTITIES/],
    ['broken off', good.slice(0, good.length - 40), '', /breaks off in its ENTITIES/],
    ['without entities', dxf({ entities: [] }).replace('ENTITIES', 'NOTHING'), '', /no ENTITIES/],
    ['out of step', good.replace('  8\n', '  8\n\n'), expect.stringMatching(/^line \d+$/), /.*/],
  ])('%s', (_, text, at, found) => {
    expect(broken(text)).toEqual([
      { file: 'a.dxf', at, found: expect.stringMatching(found), expected: expect.any(String) },
    ]);
  });

  it.each(['abc', 'NaN', '1e999', ''])('a coordinate %j', (value) => {
    const text = dxf({ entities: [circle(0, 0, 5)] }).replace(' 40\n5', ` 40\n${value}`);
    const where = text.split('\n').findIndex((each, i, all) => all[i - 1] === ' 40' && each === value) + 1;
    expect(broken(text)).toMatchObject([{ at: `line ${where}`, expected: 'a number' }]);
  });

  it('a block that is missing, within itself, or multiplied without end', () => {
    const insert = (name: string, ...more: Tags) => entity('INSERT', 2, name, ...more);
    expect(unsound({ entities: [insert('gone')] })).toMatchObject([{ found: 'the block "gone"' }]);
    expect(unsound({ blocks: { a: [insert('b')], b: [insert('a')] }, entities: [insert('a')] })).toMatchObject([
      { found: 'the block "a" within itself' },
    ]);
    const many = Object.fromEntries(
      Array.from({ length: 12 }, (_, i) => [`b${i}`, [insert(`b${i + 1}`, 70, 100, 44, 1)]]),
    );
    const [finding] = unsound({ blocks: { ...many, b12: [] }, entities: [insert('b0')] });
    expect(finding?.found).toMatch(/^more than/);
  });
});

it('areas of several outlines stand side by side', () => {
  expect(areasOf(dxfDrawing({ entities: [square, circle(30, 0, 1)] }))).toEqual(
    [100, Math.PI].map((area) => expect.closeTo(area, 9)),
  );
});
