import { describe, expect, it } from 'vitest';
import { type DrawingImport, importDrawing } from '../../../src/intake/import-drawing.ts';
import { type ImportOptions, nothingSaid } from '../../../src/intake/import-options.ts';
import { circle, type DxfParts, dxfDrawing, findingsOf, line, type Tags, valueIn } from './drawn.ts';

const plain: ImportOptions = { ...nothingSaid, name: 'block', viewedFrom: 'face' };

const reading = (parts: DxfParts, options: Partial<ImportOptions> = {}) =>
  importDrawing('a.dxf', dxfDrawing(parts), { ...plain, ...options });
const imported = (entities: readonly Tags[], options: Partial<ImportOptions> = {}): DrawingImport =>
  valueIn(reading({ entities }, options));
const partOf = (entities: readonly Tags[], options: Partial<ImportOptions> = {}) => imported(entities, options).part;

const square = (layer: string, size = 10): readonly Tags[] => [
  line(0, 0, size, 0, layer),
  line(size, 0, size, size, layer),
  line(size, size, 0, size, layer),
  line(0, size, 0, 0, layer),
];

describe('layers become sections and holes', () => {
  it('one section a layer, its depth behind an @, letter case set aside', () => {
    const layers = ['ribs@12-90', 'lips@-44..-30', 'skirt @ -44 to 0', 'plain', 'a@b'];
    const { sections } = partOf([...layers.flatMap((layer) => square(layer)), circle(5, 5, 1, 'Plain')]);
    expect(sections.map(({ id, depth, loops }) => [id, depth, loops.length])).toEqual([
      ['ribs', [12, 90], 1],
      ['lips', [-44, -30], 1],
      ['skirt', [-44, 0], 1],
      ['plain', undefined, 2],
      ['a@b', undefined, 1],
    ]);
  });

  it('the depth asked for goes to sections that state none', () => {
    const { sections } = partOf([...square('ribs@12-90'), ...square('flange')], { depth: [0, 12] });
    expect(sections.map(({ depth }) => depth)).toEqual([
      [12, 90],
      [0, 12],
    ]);
  });

  it('circles on layers of holes, named from left to right', () => {
    const { holes, sections } = partOf([
      ...square('wall'),
      circle(156, -30, 7, 'Dowels'),
      circle(-158, 12, 7, 'Dowels'),
      circle(0, 9, 6, 'M12_tapped'),
      circle(0, 3, 6, 'M12_tapped'),
      circle(9, 9, 5, 'bolt holes'),
      circle(0, 0, 50, 'BORE'),
      circle(1, 1, 4, 'studs'),
    ]);
    expect(holes?.map(({ id, kind, at, diameter }) => [id, kind, at, diameter])).toEqual([
      ['D1', 'dowel', [-158, 12], 14],
      ['BORE1', 'bore', [0, 0], 100],
      ['T1', 'tapped', [0, 3], 12],
      ['T2', 'tapped', [0, 9], 12],
      ['S1', 'stud', [1, 1], 8],
      ['B1', 'bolt', [9, 9], 10],
      ['D2', 'dowel', [156, -30], 14],
    ]);
    expect(sections.map(({ id }) => id)).toEqual(['wall']);
  });

  it('bosses and ribs are metal, whatever goes through them', () => {
    const { holes, sections } = partOf([circle(0, 0, 9, 'bolt bosses'), ...square('dowel_rib')]);
    expect([holes, sections.map(({ id }) => id)]).toEqual([undefined, ['bolt bosses', 'dowel_rib']]);
  });

  it('what is no circle on a layer of holes is left out, and said', () => {
    const { notes, part, gaps } = imported([
      ...square('wall'),
      circle(0, 0, 5, 'dowels'),
      line(-9, 0, 9, 0, 'dowels'),
      ...square('dowels'),
    ]);
    expect({ ids: part.holes?.map(({ id }) => id), gaps }).toEqual({ ids: ['D1'], gaps: [] });
    expect(notes).toEqual([
      { code: 'no-circle', text: 'dowels: 1 closed outline and open lines left out, since only circles are holes' },
    ]);
  });

  it('a layer asked for as holes is, and its own name does not matter', () => {
    const { holes } = partOf([...square('wall'), circle(0, 0, 5, 'Layer 3')], {
      holeLayers: [{ layer: 'layer 3', kind: 'dowel' }],
    });
    expect(holes).toMatchObject([{ id: 'D1', kind: 'dowel' }]);
  });

  it('a hole asked for by place is the smallest circle round it, and no outline', () => {
    const flange = [circle(0, 0, 174), circle(0, 0, 50), circle(158, 12, 7)];
    const { holes, sections } = partOf(flange, {
      holes: [
        { id: 'CRANK', kind: 'bore', at: { x: 1, y: 1 } },
        { id: 'D1', kind: 'dowel', at: { x: 158, y: 12 } },
      ],
    });
    expect(holes).toEqual([
      { id: 'CRANK', kind: 'bore', at: [0, 0], diameter: 100 },
      { id: 'D1', kind: 'dowel', at: [158, 12], diameter: 14 },
    ]);
    expect(sections[0]?.loops).toEqual([{ circle: [0, 0], radius: 174 }]);
  });

  it('numbered ids pass over one that is asked for', () => {
    const { holes } = partOf([...square('wall', 99), circle(50, 50, 5, 'wall'), circle(0, 0, 5, 'dowels')], {
      holes: [{ id: 'D1', kind: 'dowel', at: { x: 50, y: 50 } }],
    });
    expect(holes?.map(({ id, at }) => [id, at])).toEqual([
      ['D1', [50, 50]],
      ['D2', [0, 0]],
    ]);
  });

  it('all outlines go into one section where one is asked for, so that lines of several layers close', () => {
    const [bottom, ...rest] = square('a') as [Tags, ...Tags[]];
    const { sections } = partOf([...rest, line(0, 0, 10, 0, 'b')], { section: 'plate@0-12' });
    expect(bottom).toBeDefined();
    expect(sections).toEqual([
      {
        id: 'plate',
        depth: [0, 12],
        loops: [
          [
            [0, 0],
            [10, 0],
            [10, 10],
            [0, 10],
          ],
        ],
      },
    ]);
  });

  it('only the layers asked for are read', () => {
    const { sections } = partOf([...square('a'), ...square('b')], { layers: ['B'] });
    expect(sections.map(({ id }) => id)).toEqual(['b']);
  });

  it('what the builder says of the tracing is written down', () => {
    const part = partOf([...square('ribs'), ...square('wall')], { traceError: 0.7, gotBy: 'card', mayCut: ['ribs'] });
    expect(part).toMatchObject({ traceError: 0.7, viewedFrom: 'face', name: 'block' });
    expect(part.sections.map(({ mayCut, gotBy }) => [mayCut, gotBy])).toEqual([
      [true, 'card'],
      [undefined, 'card'],
    ]);
  });

  it.each<[string, Partial<ImportOptions>, string, string | undefined]>([
    ['a layer to read', { layers: ['wal'] }, 'layers', 'wall'],
    ['a layer of dowels', { holeLayers: [{ layer: 'dowel', kind: 'dowel' }] }, 'layers', undefined],
    ['a section to cut', { mayCut: ['wll'] }, 'may cut', 'wall'],
    ['a hole to name', { holes: [{ id: 'D9', kind: 'dowel', at: { x: 500, y: 0 } }] }, 'hole D9', undefined],
  ])('%s that is not there is a finding', (_, options, at, didYouMean) => {
    const [finding] = findingsOf(reading({ entities: square('wall') }, options));
    expect([finding?.at, finding?.didYouMean]).toEqual([at, didYouMean]);
  });
});

describe('units', () => {
  it('an inch drawing becomes an inch part, and the join stays half a millimetre', () => {
    const { part, joinMm, unit } = valueIn(reading({ insUnits: 1, entities: square('wall@1-3', 2) }));
    expect([part.units, unit.name, joinMm]).toEqual(['in', 'in', 0.5]);
    expect(part.sections).toEqual([
      {
        id: 'wall',
        depth: [1, 3],
        loops: [
          [
            [0, 0],
            [2, 0],
            [2, 2],
            [0, 2],
          ],
        ],
      },
    ]);
    expect(valueIn(reading({ insUnits: 1, entities: square('wall') }, { join: 0.01 })).joinMm).toBeCloseTo(0.254, 12);
  });

  it.each([
    [5, 'mm', 10],
    [6, 'mm', 1000],
    [2, 'in', 12],
  ])('$INSUNITS %i becomes %s', (insUnits, units, factor) => {
    const { part } = valueIn(reading({ insUnits, entities: [circle(1, 2, 3)] }));
    expect(part.units).toBe(units);
    expect(part.sections[0]?.loops).toEqual([{ circle: [factor, 2 * factor], radius: 3 * factor }]);
  });

  it('are asked for where the file has none, and taken as told', () => {
    const [finding] = findingsOf(reading({ insUnits: 0, entities: square('wall') }));
    expect(finding).toMatchObject({ at: 'units', found: 'no unit; what is drawn measures 10 × 10' });
    expect(
      valueIn(reading({ insUnits: 0, entities: square('wall') }, { units: 'cm' })).part.sections[0]?.loops,
    ).toEqual([
      [
        [0, 0],
        [100, 0],
        [100, 100],
        [0, 100],
      ],
    ]);
  });

  it.each<[string, Partial<ImportOptions>, number]>([
    ['against the file', { units: 'mm' }, 1],
    ['that nobody knows', { units: 'furlong' }, 0],
    ['twice', { units: 'mm', dpi: 96 }, 0],
    ['in pixels of a drawing that has none', { dpi: 96 }, 0],
  ])('are refused %s', (_, options, insUnits) => {
    expect(findingsOf(reading({ insUnits, entities: square('wall') }, options))).toMatchObject([{ at: 'units' }]);
  });
});

describe('what does not close', () => {
  it('is listed, and the rest is a part', () => {
    const { part, gaps } = imported([...square('wall'), line(50, 50, 60, 50, 'ribs')]);
    expect(part.sections.map(({ id }) => id)).toEqual(['wall']);
    expect(gaps).toMatchObject([{ layer: 'ribs', sizeMm: 10, from: { x: 50, y: 50 }, to: { x: 60, y: 50 } }]);
  });

  it('is all there is: then there is no part, and every gap is a finding with its place', () => {
    const findings = findingsOf(reading({ entities: [line(0, 0, 10, 0), line(13, 0, 30, 0)] }));
    expect(findings.map(({ found }) => found)).toEqual([
      'no closed outline',
      'a gap of 10 mm from (0, 0) to (10, 0), layer 0',
      'a gap of 3 mm from (10, 0) to (13, 0), layer 0',
      'a gap of 17 mm from (30, 0) to (13, 0), layer 0',
    ]);
  });

  it('is joined up to the join, which the section then says', () => {
    const [, ...rest] = square('wall');
    const { part, joined } = imported([...rest, line(0, 0, 9.8, 0, 'wall')]);
    expect(joined).toMatchObject([{ sizeMm: expect.closeTo(0.2, 9) }]);
    expect(part.sections[0]?.note).toBe('gaps joined: 1, the widest 0.2 mm');
  });

  it('drops what is drawn twice or goes nowhere, and says so', () => {
    const { notes } = imported([
      ...square('wall'),
      ...square('wall'),
      circle(50, 0, 3, 'wall'),
      circle(50, 0, 3, 'wall'),
      line(1, 1, 1, 1, 'wall'),
    ]);
    expect(notes.map(({ code, text }) => [code, text])).toEqual([
      ['double', 'wall: 5 drawn over another and dropped'],
      ['no-length', 'wall: 1 of no length dropped'],
    ]);
  });

  it('far away is refused with its place', () => {
    expect(findingsOf(reading({ entities: [line(0, 0, 2e5, 0)] }))).toMatchObject([
      { at: expect.stringMatching(/^line \d+$/), found: '(200000, 0)', expected: 'within ±100000 mm' },
    ]);
  });
});
