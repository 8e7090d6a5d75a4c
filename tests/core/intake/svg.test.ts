import { describe, expect, it } from 'vitest';
import { edgesOf, type Loop } from '../../../src/geometry/plane/loop.ts';
import { readSvg } from '../../../src/intake/drawing/svg.ts';
import { drawingUnit } from '../../../src/intake/drawing-unit.ts';
import { outlinesOf } from '../../../src/intake/outlines/outlines.ts';
import { areaOf, areasOf, bytesOf, findingsOf, loneLoop, loopsOf, svg, svgDrawing, valueIn } from './drawn.ts';

const alone = (elements: string): Loop => loneLoop(svgDrawing(elements));
const cornersOf = (loop: Loop): number[][] =>
  edgesOf(loop).map(({ a }) => [a.x, a.y].map((x) => Math.round(x * 1e6) / 1e6 + 0));

describe('SVG shapes become outlines of the area they enclose', () => {
  it.each([
    ['rect', '<rect x="1" y="2" width="30" height="20"/>', 600, 1e-9],
    ['rect with round corners', '<rect width="30" height="20" rx="4"/>', 600 - (4 - Math.PI) * 16, 1e-9],
    ['rect rounder than it is high', '<rect width="30" height="20" rx="40" ry="10"/>', Math.PI * 150, 0.25],
    ['circle', '<circle cx="5" cy="6" r="5"/>', Math.PI * 25, 1e-9],
    ['ellipse', '<ellipse cx="5" cy="6" rx="20" ry="10"/>', Math.PI * 200, 0.5],
    ['polygon', '<polygon points="0,0 10,0 10,10"/>', 50, 1e-9],
    ['polyline back to its start', '<polyline points="0 0 10 0 10 10 0 0"/>', 50, 1e-9],
    ['lines end to end', '<line x2="10"/><line x1="10" x2="10" y2="10"/><line x2="10" y2="10"/>', 50, 1e-9],
    ['path, relative and short', '<path d="m10 10h10v10h-10z"/>', 100, 1e-9],
    ['path of arcs', '<path d="M0 0A5 5 0 0 1 10 0A5 5 0 1 1 0 0"/>', Math.PI * 25, 1e-9],
    ['path with a large arc', '<path d="M10 0A10 10 0 1 0 0 10L0 0Z"/>', Math.PI * 75, 1e-9],
    [
      'path with a tilted elliptic arc',
      '<path d="M-8.660254037844386-5A10 5 30 0 1 8.660254037844386 5Z"/>',
      Math.PI * 25,
      0.15,
    ],
    ['path with an arc too small for its ends', '<path d="M0 0A1 1 0 0 1 10 0Z"/>', (Math.PI * 25) / 2, 1e-9],
    // Archimedes: a parabola's segment is two thirds of its base times its height
    ['path with a quadratic Bézier curve', '<path d="M0 0Q5 10 10 0Z"/>', 100 / 3, 0.08],
    [
      'path with a cubic one that is the same parabola',
      '<path d="M0 0C3.3333333333 6.6666666667 6.6666666667 6.6666666667 10 0Z"/>',
      100 / 3,
      0.08,
    ],
    ['path with smooth curves', '<path d="M0 0Q5 10 10 0T20 0V-20H0z"/>', 400, 0.3],
  ])('%s', (_, elements, area, tolerance) => {
    const areas = areasOf(svgDrawing(elements));
    expect(Math.abs(areas.reduce((sum, each) => sum + each, 0) - area)).toBeLessThan(tolerance);
  });

  it('y is turned up, and said', () => {
    expect(cornersOf(alone('<path d="M0 0H10V5H0z"/>'))).toEqual([
      [0, -5],
      [10, -5],
      [10, 0],
      [0, 0],
    ]);
    expect(svgDrawing('').notes).toEqual([{ code: 'y-up', text: expect.stringContaining('upwards') }]);
  });

  it('a circle written as four cubic curves is that circle; an ellipse is none', () => {
    const k = 0.5522847498;
    const round = (r: number, squeeze = 1) =>
      `<path transform="translate(50 40) scale(${r} ${r * squeeze})" d="M1 0C1 ${k} ${k} 1 0 1S-1 ${k} -1 0S${-k} -1 0 -1S1 ${-k} 1 0z"/>`;
    for (const r of [0.5, 7, 200]) {
      expect(alone(round(r))).toMatchObject({
        kind: 'circle',
        centre: { x: expect.closeTo(50, 6) },
        radius: expect.closeTo(r, 4),
      });
    }
    expect(alone(round(50, 0.99)).kind).toBe('path');
    expect(alone('<path d="M0 0A50 50 0 0 1 60 0A50 50 0 0 1 0 0"/>').kind).toBe('path');
  });

  it('an arc bulges on the side it was drawn on', () => {
    // in SVG, from left to right with sweep 1 passes above, towards −y
    const [edge] = edgesOf(alone('<path d="M0 0A5 5 0 0 1 10 0Z"/>')).filter(({ kind }) => kind === 'arc');
    const { sweepRad } = edge as { sweepRad: number };
    expect({ from: edge?.a.x, sweepRad }).toEqual({ from: 10, sweepRad: expect.closeTo(Math.PI, 12) });
  });
});

describe('transforms', () => {
  const square = '<rect width="10" height="10"/>';
  it.each([
    [
      'translate(20)',
      [
        [20, -10],
        [30, -10],
        [30, 0],
        [20, 0],
      ],
    ],
    [
      'translate(20 30)',
      [
        [20, -40],
        [30, -40],
        [30, -30],
        [20, -30],
      ],
    ],
    [
      'scale(2)',
      [
        [0, -20],
        [20, -20],
        [20, 0],
        [0, 0],
      ],
    ],
    [
      'scale(-1,3)',
      [
        [-10, -30],
        [0, -30],
        [0, 0],
        [-10, 0],
      ],
    ],
    [
      'rotate(90)',
      [
        [-10, -10],
        [0, -10],
        [0, 0],
        [-10, 0],
      ],
    ],
    [
      'rotate(90, 10 0)',
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ],
    ],
    [
      'skewX(45)',
      [
        [0, 0],
        [10, -10],
        [20, -10],
        [10, 0],
      ],
    ],
    [
      'skewY(45)',
      [
        [0, -10],
        [10, -20],
        [10, -10],
        [0, 0],
      ],
    ],
    [
      'matrix(0 1 -1 0 5 6)',
      [
        [-5, -16],
        [5, -16],
        [5, -6],
        [-5, -6],
      ],
    ],
    [
      'translate(10,0) scale(2)',
      [
        [10, -20],
        [30, -20],
        [30, 0],
        [10, 0],
      ],
    ],
  ])('%s', (transform, corners) => {
    expect(cornersOf(alone(`<g transform="${transform}">${square}</g>`))).toEqual(corners);
    expect(cornersOf(alone(`<rect transform="${transform}" width="10" height="10"/>`))).toEqual(corners);
  });

  it('nest from the outside in', () => {
    const nested =
      '<g transform="translate(10 0)"><g transform="rotate(90)"><rect transform="scale(2)" width="5" height="5"/></g></g>';
    expect(cornersOf(alone(nested))).toEqual([
      [0, -10],
      [10, -10],
      [10, 0],
      [0, 0],
    ]);
  });

  it('keep a circle where it stays round and make arcs of it where it does not', () => {
    const turned = '<g transform="rotate(30) scale(-2 2)"><circle cx="3" r="5"/></g>';
    const [x, y] = [-6 * Math.cos(Math.PI / 6), 6 * Math.sin(Math.PI / 6)];
    expect(alone(turned)).toEqual({
      kind: 'circle',
      centre: { x: expect.closeTo(x, 9), y: expect.closeTo(y, 9) },
      radius: expect.closeTo(10, 9),
    });
    const skewed = alone('<circle r="10" transform="skewX(30)"/>');
    expect(edgesOf(skewed).every(({ kind }) => kind === 'arc')).toBe(true);
    expect(Math.abs(areaOf(skewed) - Math.PI * 100)).toBeLessThan(0.35);
  });

  it('keep an arc of a path, mirrored or not', () => {
    const half = (transform: string) =>
      areasOf(svgDrawing(`<path transform="${transform}" d="M0 0A5 5 0 0 1 10 0Z"/>`));
    for (const transform of ['scale(-1 1)', 'rotate(77)', 'matrix(0.866025 0.5 -0.5 0.866025 3 4)']) {
      expect(half(transform)[0]).toBeCloseTo((Math.PI * 25) / 2, 4);
    }
  });
});

describe('the size of an SVG drawing', () => {
  const widthOf = (attributes: string, asked: { units?: string; dpi?: number } = {}): number => {
    const drawing = svgDrawing('<rect width="10" height="10"/>', attributes);
    const unit = valueIn(drawingUnit('a.svg', drawing, { units: asked.units ?? null, dpi: asked.dpi ?? null }));
    return Math.sqrt(areaOf(outlinesOf(drawing.shapes, unit.mm, 0).loops[0] as Loop));
  };
  it.each([
    ['width="100mm" viewBox="0 0 100 100"', 10],
    ['width="10cm" viewBox="0 0 50 50"', 20],
    ['width="2in" height="2in" viewBox="0 0 20 20"', 25.4],
    ['width="72pt" height="72pt" viewBox="0 0 10 10"', 25.4],
    ['width="6pc" viewBox="0 0 10 10"', 25.4],
    ['width="100%" height="50mm" viewBox="0 0 100 100"', 5],
    // the picture is fitted into its frame: the smaller scale counts
    ['width="100mm" height="300mm" viewBox="0 0 100 100"', 10],
    ['width="100mm" height="300mm" viewBox="0 0 100 100" preserveAspectRatio="xMidYMid slice"', 30],
    ['width="100mm" height="400mm" viewBox="0 0 100 100" preserveAspectRatio="none"', 20],
  ])('%s', (attributes, width) => {
    expect(widthOf(attributes)).toBeCloseTo(width, 9);
  });

  it.each(['', 'width="300" height="300"', 'width="300px" viewBox="0 0 300 300"', 'width="100mm"'])(
    'is asked for where it is in pixels: %j',
    (attributes) => {
      const drawing = svgDrawing('<rect width="10" height="10"/>', attributes);
      const [finding] = findingsOf(drawingUnit('a.svg', drawing, { units: null, dpi: null }));
      expect(finding).toMatchObject({ at: 'units', found: 'no unit; what is drawn measures 10 × 10' });
      expect(finding?.expected).toContain('--dpi 96');
      expect(widthOf(attributes, { dpi: 96 })).toBeCloseTo(254 / 96, 9);
      expect(widthOf(attributes, { dpi: 90 })).toBeCloseTo(254 / 90, 9);
      expect(widthOf(attributes, { units: 'cm' })).toBeCloseTo(100, 9);
    },
  );
});

describe('the tree of an SVG drawing', () => {
  const layersOf = (elements: string) => svgDrawing(elements).shapes.map(({ layer }) => layer);
  const dot = '<circle r="1"/>';

  it('names layers by their label, else by the outermost group with an id', () => {
    expect(layersOf(dot)).toEqual(['outline']);
    expect(layersOf(`<g id="ribs"><g id="inner">${dot}</g></g>`)).toEqual(['ribs']);
    expect(
      layersOf(
        `<g id="g12"><g inkscape:groupmode="layer" inkscape:label="Dowels" id="layer3"><g id="g3">${dot}</g></g></g>`,
      ),
    ).toEqual(['Dowels']);
  });

  it('leaves out what is hidden or only defined', () => {
    const hidden = `<g display="none">${dot}</g><g style="stroke:red; display: none">${dot}</g><g visibility="hidden">${dot}</g>`;
    const drawing = svgDrawing(
      `<defs><g id="d">${dot}</g></defs><clipPath>${dot}</clipPath>${hidden}${dot}<text>hello</text>`,
    );
    expect(drawing.shapes).toHaveLength(1);
    expect(drawing.notes[1]?.text).toBe('not read: 3 hidden, 1 text');
  });

  it('draws what is referred to, where it is put', () => {
    const drawing = svgDrawing(`<defs><rect id="r" width="10" height="10"/></defs>
      <use href="#r" x="5"/><use xlink:href="#r" transform="scale(2)" x="10" y="10"/>`);
    expect(
      loopsOf(drawing)
        .map(cornersOf)
        .map(([corner]) => corner),
    ).toEqual([
      [5, -10],
      [20, -40],
    ]);
  });

  it('fits a symbol or an inner picture into its frame', () => {
    const box = '<rect x="50" y="50" width="10" height="10"/>';
    const symbol = alone(
      `<symbol id="s" viewBox="50 50 10 10">${box}</symbol><use href="#s" x="7" width="20" height="20"/>`,
    );
    expect(cornersOf(symbol)[0]).toEqual([7, -20]);
    const inner = alone(`<svg x="7" width="20" height="20" viewBox="50 50 10 10">${box}</svg>`);
    expect(inner).toEqual(symbol);
  });

  it('reports each place once, with its line and id', () => {
    expect(svgDrawing('\n<rect id="plate" width="1" height="1"/>').shapes[0]?.place).toBe('line 3, <rect id="plate">');
  });
});

describe('a damaged SVG file is refused with its place', () => {
  const broken = (text: string) => findingsOf(readSvg('a.svg', bytesOf(text)));
  it.each([
    ['empty', ''],
    ['no XML', 'hello'],
    ['unclosed', '<svg><g></svg>'],
    ['another kind of document', '<html></html>'],
    ['an entity that does not exist', '<svg><g id="&nope;"/></svg>'],
  ])('%s', (_, text) => {
    expect(broken(text)).toMatchObject([{ file: 'a.svg', expected: 'a well-formed SVG file' }]);
  });

  it.each([
    ['<path id="p" d="M0 0 L5"/>', 'line 2, <path id="p">'],
    ['<path d="hello"/>', 'line 2, <path>'],
    ['<circle r="5%"/>', 'line 2, <circle>'],
    ['<rect width="10mm" height="5"/>', 'line 2, <rect>'],
    ['<polygon points="0,0 10"/>', 'line 2, <polygon>'],
    ['<g transform="turn(5)"/>', 'line 2, <g>'],
    ['<g transform="rotate(5"/>', 'line 2, <g>'],
    ['<g transform="rotate(1 2)"/>', 'line 2, <g>'],
    ['<use href="#gone"/>', 'line 2, <use>'],
    ['<use href="other.svg#part"/>', 'line 2, <use>'],
  ])('%s', (element, at) => {
    expect(broken(svg(element, ''))).toMatchObject([{ at }]);
  });

  it('references that lead back to themselves, or multiply without end, end', () => {
    expect(broken(svg('<g id="a"><use href="#a"/></g>', ''))[0]?.found).toMatch(/more than 256 deep/);
    const hundredOf = (id: string) => `<g id="${id}0">${`<use href="#${id}"/>`.repeat(100)}</g>`;
    const many = svg(`<defs><g id="a"/>${['a', 'a0', 'a00'].map(hundredOf).join('')}</defs><use href="#a000"/>`, '');
    expect(broken(many)[0]?.found).toMatch(/^more than/);
    expect(broken(svg(`${'<g>'.repeat(5000)}${'</g>'.repeat(5000)}`, ''))[0]?.found).toMatch(/more than 256 deep/);
  });
});
