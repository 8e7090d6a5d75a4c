import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { importDrawing } from '../../../src/intake/import-drawing.ts';
import { nothingSaid } from '../../../src/intake/import-options.ts';
import { importText } from '../../../src/intake/import-text.ts';
import { soundPart } from '../../../src/intake/sound-part.ts';
import { readCsv } from '../../../src/intake/table/csv.ts';
import { areaOf, areasOf, bytesOf, findingsOf, loopsOf, valueIn } from './drawn.ts';

const read = (...lines: readonly string[]) => readCsv('a.csv', bytesOf(lines.join('\n')));
const drawing = (...lines: readonly string[]) => valueIn(read(...lines));
const wrong = (...lines: readonly string[]) => findingsOf(read(...lines));

const unguarded = { depth: null, keepWall: null, mayBreak: null };

describe('measured points and features', () => {
  it('reads a sheet of a wall, a rib, a boss and two holes', () => {
    const file = join(import.meta.dirname, '../../fixtures/intake/features.csv');
    const { unit, shapes, holes, facts } = valueIn(readCsv(file, new Uint8Array(readFileSync(file))));
    expect(unit?.name).toBe('mm');
    expect(shapes.map(({ layer }) => layer)).toEqual(['wall', 'rib 1', 'boss']);
    expect(facts.get('wall')).toMatchObject({ depth: [12, 90], gotBy: 'card', mayCut: null });
    expect(facts.get('rib 1')).toMatchObject({ depth: [12, 90], gotBy: 'feature list', mayCut: true });
    expect(holes).toEqual([
      {
        id: 'D1',
        kind: 'dowel',
        place: 'line 9',
        at: { x: -158, y: 12 },
        diameter: 14,
        proud: null,
        thread: null,
        ...unguarded,
      },
      {
        id: 'B1',
        kind: 'tapped',
        place: 'line 10',
        at: { x: -72, y: 142 },
        diameter: null,
        proud: null,
        thread: 'M12x1.75',
        ...unguarded,
      },
    ]);
  });

  it('reads how deep holes go and what is to stay round them, and hollows outlined as sections are', () => {
    const file = join(import.meta.dirname, '../../fixtures/intake/hollows.csv');
    const read = valueIn(readCsv(file, new Uint8Array(readFileSync(file))));
    expect(read.shapes.map(({ layer }) => layer)).toEqual(['wall']);
    expect(read.holes).toMatchObject([
      { id: 'B1', kind: 'tapped', depth: [0, 28], keepWall: 6, mayBreak: false },
      { id: 'S1', kind: 'stud', depth: [0, 20], keepWall: null, mayBreak: true },
    ]);
    expect(read.hollows.map(({ shapes, ...facts }) => [shapes.length, facts])).toEqual([
      [1, { id: 'gallery', depth: [12, 60], keepWall: 5, traceError: 0.5 }],
      [1, { id: 'jacket', depth: [20, 80], keepWall: 4, traceError: null }],
    ]);
    const imported = importDrawing(file, read, { ...nothingSaid, name: 'block', viewedFrom: 'face' });
    const part = valueIn(soundPart(file, valueIn(imported).part));
    expect(part.holes).toEqual([
      { id: 'B1', kind: 'tapped', at: [180, 142], thread: 'M12x1.75', depth: [0, 28], keepWall: 6, mayBreak: false },
      { id: 'S1', kind: 'stud', at: [180, -142], diameter: 10, depth: [0, 20], mayBreak: true },
    ]);
    expect(part.hollows).toEqual([
      { id: 'gallery', depth: [12, 60], loops: [{ circle: [150, 80], radius: 6 }], keepWall: 5, traceError: 0.5 },
      { id: 'jacket', depth: [20, 80], loops: [expect.any(Array)], keepWall: 4 },
    ]);
    expect(part.sections.map(({ id, loops }) => [id, loops.length])).toEqual([['wall', 1]]);
    expect(importText(valueIn(imported), 'a.csv', 'a.part.json')).toContain('\n  hollow: gallery jacket');
  });

  it('reads what must stay and how thick the metal was found, in the units of the part', () => {
    const table = read(
      'section,do not cut,kind,x [in],y,diameter,depth from,depth to,wall,error',
      'rib,,,0,0,,0,2,,',
      ',,,4,0,,,,,',
      ',,,4,1,,,,,',
      ',,,2,0.5,,0.75,,0.31,0.02',
      ',,,0,1,,,,,',
      ',pad,circle,3,0.5,0.5,0,1,,',
    );
    const imported = importDrawing('a.csv', valueIn(table), { ...nothingSaid, name: 'block', viewedFrom: 'face' });
    const { part } = valueIn(imported);
    expect(part.sections[0]?.loops).toEqual([
      [
        [0, 0],
        [4, 0],
        [4, 1],
        [0, 1],
      ],
    ]);
    expect(part.doNotCut).toEqual([{ id: 'pad', depth: [0, 1], loops: [{ circle: [3, 0.5], radius: 0.25 }] }]);
    expect(part.wallReadings).toEqual([{ at: [2, 0.5], depth: 0.75, wall: 0.31, error: 0.02 }]);
    expect(soundPart('a.csv', part).ok).toBe(true);
    const text = importText(valueIn(imported), 'a.csv', 'a.part.json');
    expect(text).toContain('\n  do not cut: pad\n  readings of walls: 1');
  });

  it('goes on with a section after a hollow where it is named again', () => {
    const { shapes, hollows } = drawing('section,hollow,x,y', 'a,,0,0', ',g,1,1', ',,2,1', ',,1,2', 'a,,9,0', ',,0,9');
    expect([shapes.length, hollows.length]).toEqual([1, 1]);
  });

  it('brings the lengths of holes and hollows into the units of the part', () => {
    const feet = drawing(
      'section,kind,x [ft],y,diameter,depth from,depth to,keep wall,hole,hollow',
      ...['a,circle,0,0,2,,,,,', ',circle,0,0,1,0,0.5,0.25,,g', ',bolt,0.75,0,,0,0.5,0.25,B1,'],
    );
    const { part } = valueIn(importDrawing('a.csv', feet, { ...nothingSaid, name: 'block', viewedFrom: 'face' }));
    expect(part.hollows).toEqual([{ id: 'g', depth: [0, 6], loops: [{ circle: [0, 0], radius: 6 }], keepWall: 3 }]);
    expect(part.holes).toMatchObject([{ at: [9, 0], depth: [0, 6], keepWall: 3 }]);
  });

  it('a hollow that no part may have is told by its name', () => {
    const deep = drawing(
      'section,kind,x,y,diameter,depth from,depth to,hole,hollow',
      ...['a,circle,0,0,20,,,,', ',circle,0,0,5,9,1,,g', ',bolt,3,0,2,9,1,B1,'],
    );
    const options = { ...nothingSaid, name: 'block', viewedFrom: 'face', units: 'mm' } as const;
    const { part } = valueIn(importDrawing('a.csv', deep, options));
    expect(findingsOf(soundPart('a.csv', part)).map(({ at }) => at)).toEqual(['hole B1.depth', 'hollow g.depth']);
  });

  it('takes an arc through the point marked as on it', () => {
    const bulge = loopsOf(drawing('section,kind,x,y', 'a,,10,0', 'a,arc,6,8', 'a,,0,10', 'a,,0,0'));
    expect(bulge.map(areaOf)).toEqual([expect.closeTo(Math.PI * 25, 9)]);
    const last = loopsOf(drawing('section,kind,x,y', 'a,,0,10', 'a,,0,0', 'a,,10,0', 'a,arc,6,8'));
    expect(last.map(areaOf)).toEqual([expect.closeTo(Math.PI * 25, 9)]);
    const round = loopsOf(drawing('section,kind,x,y', 'a,,0,-5', 'a,arc,-5,0', 'a,,0,5', 'a,arc,5,0'));
    expect(round).toEqual([
      { kind: 'circle', centre: { x: expect.closeTo(0, 9), y: expect.closeTo(0, 9) }, radius: expect.closeTo(5, 9) },
    ]);
  });

  it('takes a bulge as part files write it', () => {
    expect(areasOf(drawing('section,x,y,bulge', 'a,10,0,0.41421356237309503', 'a,0,10,', 'a,0,0,'))).toEqual([
      expect.closeTo(Math.PI * 25, 9),
    ]);
  });

  it('draws a rib from root to tip, thinner at the tip', () => {
    const rib = drawing('section,kind,x,y,x2,y2,width,tip width', 'a,rib,0,0,30,40,8,6');
    expect(areasOf(rib)).toEqual([expect.closeTo(350, 9)]);
    expect(areasOf(drawing('section,kind,x,y,x2,y2,width', 'a,rib,0,0,30,40,8'))).toEqual([expect.closeTo(400, 9)]);
  });

  it('tells outlines of one section apart by their loop, said once', () => {
    const two = drawing('section,loop,x,y', 'a,1,0,0', ',,9,0', ',,0,9', ',2,50,0', ',,52,0', ',,50,2');
    expect(areasOf(two)).toEqual([40.5, 2]);
  });

  it('sets the letter case of a section aside', () => {
    const { facts, shapes } = drawing('section,x,y', 'Rib,0,0', 'rib,9,0', 'RIB,0,9');
    expect([[...facts.keys()], shapes.length]).toEqual([['Rib'], 1]);
  });

  it('parts cells by semicolon, tab or comma, with decimal commas where they part nothing', () => {
    const tables = [
      ['section;x;y', 'a;0,5;0', 'a;9;0', 'a;0;9'],
      ['section\tx\ty', 'a\t0,5\t0', 'a\t9\t0', 'a\t0\t9'],
      ['section,x,y', 'a,0.5,0', 'a,9,0', 'a,0,9'],
      ['\ufeffY , X,Section', '0,0.5,a', '0,9,a', '', '9,0,a', ''],
      ['x (mm),y (mm),section', '+.5,0,a', '9.,0,a', '0,"9",a'],
    ];
    for (const table of tables) expect(areasOf(drawing(...table)), table[0]).toEqual([38.25]);
  });

  it('takes the unit in brackets behind a column for all', () => {
    expect(drawing('section,x [in],y', 'a,0,0', 'a,9,0', 'a,0,9').unit).toEqual({ name: 'in', mm: 25.4 });
    expect(drawing('section,x,y', 'a,0,0', 'a,9,0', 'a,0,9').unit).toBeNull();
  });

  it('a section is one whatever its name says of holes', () => {
    expect([...drawing('section,kind,x,y,diameter', 'dowel boss,circle,0,0,5').facts.keys()]).toEqual(['dowel boss']);
  });
});

describe('every bad cell is a finding with its line and column', () => {
  it('a hole without a kind, unless one is to be proposed', () => {
    const untold = drawing('hole,x [mm],y,section,kind,diameter', 'D1,1,2,,,', ',0,0,boss,circle,9');
    const options = { ...nothingSaid, name: 'block', viewedFrom: 'face' } as const;
    expect(findingsOf(importDrawing('a.csv', untold, options))).toMatchObject([
      { at: 'line 2, kind', found: 'nothing' },
    ]);
    const proposed = importDrawing('a.csv', untold, { ...options, proposeHoles: { axis: { x: 0, y: 0 } } });
    expect(valueIn(proposed).part.holes).toEqual([{ id: 'D1', kind: 'bolt', at: [1, 2] }]);
  });

  it.each([
    ['a number that is none', ['section,x,y', 'a,1o,2', 'a,3,4'], 'line 2, x', '"1o"'],
    ['a decimal comma where commas part cells', ['section,x,y', 'a,"1,5",2', 'a,3,4'], 'line 2, x', '"1,5"'],
    ['a thousands mark', ['section;x;y', 'a;1.000,5;2', 'a;3;4'], 'line 2, x', '"1.000,5"'],
    ['a number too many', ['section,x,y', 'a,1,2', 'a,3,4,5'], 'line 3', '4 cells'],
    ['a coordinate left out', ['section,x,y', 'a,1,2', 'a,3,'], 'line 3, y', 'nothing'],
    ['a kind that is none', ['section,x,y,kind', 'a,1,2,cirle', 'a,1,2,', 'a,2,2,'], 'line 2, kind', '"cirle"'],
    ['a diameter of nothing', ['section,kind,x,y,diameter', 'a,circle,1,2,0'], 'line 2, diameter', '0'],
    ['a circle without one', ['section,kind,x,y,diameter', 'a,circle,1,2,'], 'line 2, diameter', 'nothing'],
    ['a rib without width', ['section,kind,x,y,x2,y2', 'a,rib,1,2,5,5'], 'line 2, width', 'nothing'],
    [
      'a row of no section',
      ['section,kind,x,y,diameter', ',circle,1,2,5'],
      'line 2, section',
      'nothing, nor anything above',
    ],
    ['an outline of one point', ['section,x,y', 'a,1,2'], 'line 2, section', 'an outline of one point'],
    [
      'two arc points in a row',
      ['section,x,y,kind', 'a,0,0,', 'a,1,1,arc', 'a,2,1,arc', 'a,3,0,'],
      'line 4, kind',
      'a second arc point in a row',
    ],
    [
      'a depth said twice',
      ['section,x,y,depth from,depth to', 'a,0,0,1,9', 'a,9,0,2,', 'a,0,9,,'],
      'line 3, depth from',
      '2',
    ],
    ['half a depth', ['section,x,y,depth from', 'a,0,0,1', 'a,9,0,', 'a,0,9,'], 'line 2, depth', 'one end of a depth'],
    ['half a depth of a hole', ['hole,kind,x,y,depth to', 'D1,dowel,1,2,9'], 'line 2, depth', 'one end of a depth'],
    ['a wall of a section', ['section,kind,x,y,diameter,keep wall', 'a,circle,1,2,5,4'], 'line 2, keep wall', '4'],
    [
      'a region not to be cut that may be',
      ['do not cut,kind,x,y,diameter,may cut', 'p,circle,1,2,5,yes'],
      'line 2, may cut',
      'yes',
    ],
    ['a reading of a wall without its depth', ['x,y,wall', '1,2,5'], 'line 2, depth from', 'nothing'],
    ['a reading of a wall of nothing', ['x,y,depth from,wall', '1,2,10,0'], 'line 2, wall', '0'],
    ['a hollow that may be cut', ['hollow,kind,x,y,diameter,may cut', 'g,circle,1,2,5,yes'], 'line 2, may cut', 'yes'],
    [
      'a hole and a hollow in one',
      ['hole,hollow,kind,x,y', 'D1,g,dowel,1,2'],
      'line 2, hollow',
      'a hole and a hollow in one',
    ],
    [
      'a section and a hollow in one',
      ['section,hollow,kind,x,y,diameter', 'a,g,circle,1,2,5'],
      'line 2, hollow',
      'a section and a hollow in one',
    ],
    ['a hollow without its outline', ['hollow,x,y', 'g,1,2'], 'line 2, section', 'an outline of one point'],
    ['a column that is not known', ['section,x,y,bulg', 'a,1,2,3'], 'line 1', 'the column "bulg"'],
    ['a column said twice', ['section,x,y,x', 'a,1,2,3'], 'line 1', 'the column "x" twice'],
    ['a unit that is none', ['section,x [furlong],y', 'a,1,2', 'a,3,3'], 'line 1', 'the unit "furlong"'],
    ['a quote left open', ['section,x,y', 'a,"1,2'], 'line 2', 'Quoted field unterminated'],
    ['a quoted cell over two lines before', ['section,note,x,y', 'a,"one\ntwo",1,2', 'a,,3,?'], 'line 4, y', '"?"'],
    ['nothing at all', [''], 'line 1', 'no header row'],
  ])('%s', (_, lines, at, found) => {
    expect(wrong(...lines)).toMatchObject([{ file: 'a.csv', at, found }]);
  });

  it('and all of them are told at once, in order, with the nearest column', () => {
    expect(
      wrong('section,x,y,hole,kind', ',1,2,D1,dowl', 'a,x,0,,', 'a,0,y,,').map(({ at, didYouMean }) => [
        at,
        didYouMean,
      ]),
    ).toEqual([
      ['line 2, kind', 'dowel'],
      ['line 3, x', undefined],
      ['line 4, y', undefined],
    ]);
    expect(wrong('sektion,x,y', 'a,1,2')).toMatchObject([{ didYouMean: 'section' }]);
  });
});
