import { describe, expect, it } from 'vitest';
import type { Casting } from '../../../src/job/casting.ts';
import type { Role } from '../../../src/job/part-to-casting.ts';
import { readPart } from '../../../src/job/read-part.ts';
import { fullPart, plainPart, withChange } from '../../support/model-files.ts';

function read(part: unknown, role: Role = 'fixed'): Casting {
  const reading = readPart('block.part.json', JSON.stringify(part), role);
  if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
  return reading.value;
}

describe('a part from the face, as the fixed one', () => {
  const casting = read(fullPart);

  it('keeps everything that is written, lengths in mm', () => {
    expect(casting).toMatchObject({
      file: 'block.part.json',
      name: 'Block',
      viewedFrom: 'face',
      mirrored: false,
      units: 'mm',
      material: { name: 'grey-iron', densityGPerCm3: 7.15 },
      castingNumber: 'K 114',
      wallReadings: [{ at: { x: 150, y: 4 }, depthMm: 30, wallMm: 7.5, errorMm: 0.2 }],
      doNotCut: [{ id: 'ear', depth: { fromMm: 0, toMm: 12 } }],
      traced: { depth: { fromMm: 0, toMm: 60 }, loops: [{ kind: 'circle', centre: { x: 10, y: 20 }, radius: 260 }] },
    });
    expect(casting.hollows[0]).toMatchObject({ id: 'gallery', keepWallMm: 5, traceErrorMm: 0.6 });
    expect(casting.holes[1]).toEqual({
      id: 'D1',
      kind: 'dowel',
      at: { x: -140, y: 20 },
      diameterMm: 14,
      proudMm: 9,
      proudStated: true,
      thread: null,
      depth: null,
      keepWallMm: null,
      mayBreak: false,
    });
    expect(casting.holes[3]).toMatchObject({ diameterMm: null, proudMm: 0, thread: 'M12x1.75' });
    expect(casting.sections[1]).toEqual({
      id: 'rib',
      depth: { fromMm: 12, toMm: 60 },
      mayCut: true,
      gotBy: 'rubbing',
      traceErrorMm: 0.3,
      depthErrorMm: 0.5,
      traceErrorStated: true,
      note: 'fattest end',
      loops: [
        {
          kind: 'path',
          vertices: [
            { x: 150, y: 0, bulge: 0 },
            { x: 170, y: 0, bulge: 1 },
            { x: 170, y: 8, bulge: 0 },
            { x: 150, y: 8, bulge: 0 },
          ],
        },
      ],
    });
  });

  it('a section takes the errors of the part where it states none', () => {
    expect(casting.sections[0]).toMatchObject({ traceErrorMm: 0.4, depthErrorMm: 0.8, mayCut: false, note: null });
  });
});

describe('a part from which everything optional is left out', () => {
  it('has the defaults: nothing to cut, ± 1 mm assumed, every depth, no material', () => {
    const bare = { ...plainPart, holes: undefined, sections: [{ id: 'a', loops: [{ circle: [0, 0], radius: 5 }] }] };
    expect(read(bare)).toMatchObject({
      material: null,
      castingNumber: null,
      holes: [],
      hollows: [],
      doNotCut: [],
      wallReadings: [],
      traced: null,
      sections: [
        { depth: null, mayCut: false, traceErrorMm: 1, depthErrorMm: 1, traceErrorStated: false, gotBy: null },
      ],
    });
  });

  it('has defaults in mm when its own unit is the inch', () => {
    const { traceError, depthError, ...inches } = { ...fullPart, units: 'in' };
    const [flange] = read(inches).sections;
    expect(flange).toMatchObject({ traceErrorMm: 1, depthErrorMm: 1 });
    expect(read(withChange(inches, ['wallReadings', 0, 'error'], undefined)).wallReadings[0]?.errorMm).toBe(0.5);
  });
});

describe('how an outline was got', () => {
  const gotBy = (words: string, stated: object = {}) => {
    const section = { id: 'a', gotBy: words, loops: [{ circle: [0, 0], radius: 5 }], ...stated };
    return read({ ...plainPart, sections: [section] }).sections[0];
  };

  it('gives the errors where none are stated', () => {
    expect(gotBy('Contour gauge')).toMatchObject({ traceErrorMm: 0.8, depthErrorMm: 1.5, traceErrorStated: true });
  });

  it('gives way to an error that is stated', () => {
    expect(gotBy('contour gauge', { traceError: 0.2, depthError: 0 })).toMatchObject({
      traceErrorMm: 0.2,
      depthErrorMm: 0,
    });
  });

  it('leaves the error assumed, and marked so, where the way is not a known one', () => {
    expect(gotBy('by eye')).toMatchObject({ traceErrorMm: 1, traceErrorStated: false, gotBy: 'by eye' });
  });
});

describe('a part in inches', () => {
  it('has every length times 25.4 and no bulge or density changed', () => {
    const casting = read({ ...fullPart, units: 'in', material: { density: 6.9 } });
    expect(casting.units).toBe('in');
    expect(casting.material).toEqual({ name: 'as stated', densityGPerCm3: 6.9 });
    expect(casting.sections[1]?.loops[0]).toMatchObject({ vertices: [{}, { x: 170 * 25.4, y: 0, bulge: 1 }, {}, {}] });
    expect(casting.sections[1]).toMatchObject({
      depth: { fromMm: 12 * 25.4, toMm: 60 * 25.4 },
      traceErrorMm: 0.3 * 25.4,
    });
    expect(casting.holes[1]).toMatchObject({ at: { x: -140 * 25.4 }, diameterMm: 14 * 25.4, proudMm: 9 * 25.4 });
    expect(casting.hollows[0]).toMatchObject({ keepWallMm: 5 * 25.4, traceErrorMm: 0.6 * 25.4 });
    expect(casting.wallReadings[0]).toMatchObject({ depthMm: 30 * 25.4, wallMm: 7.5 * 25.4, errorMm: 0.2 * 25.4 });
  });

  it('may reach as far as one in mm, counted in mm', () => {
    const reaching = (inches: number) => withChange({ ...fullPart, units: 'in' }, ['holes', 0, 'at'], [inches, 0]);
    expect(readPart('p', JSON.stringify(reaching(3937)), 'fixed').ok).toBe(true);
    expect(readPart('p', JSON.stringify(reaching(3938)), 'fixed').ok).toBe(false);
  });
});

describe('which side a part is drawn from', () => {
  it.each([
    ['fixed', 'face', false],
    ['fixed', 'back', true],
    ['moving', 'face', true],
    ['moving', 'back', false],
    ['rotating', 'face', false],
    ['rotating', 'back', true],
  ] as const)('%s, seen from its %s: mirrored is %s', (role, viewedFrom, mirrored) => {
    const casting = read({ ...fullPart, viewedFrom }, role);
    expect(casting.mirrored).toBe(mirrored);
    expect(casting.holes[0]?.at).toEqual({ x: mirrored ? -10 : 10, y: 20 });
  });

  it('mirrored, everything that belongs to it goes along, vertices in their order and bulges negated', () => {
    const casting = read(fullPart, 'moving');
    expect(casting.sections[1]?.loops[0]).toEqual({
      kind: 'path',
      vertices: [
        { x: -150, y: 0, bulge: 0 },
        { x: -170, y: 0, bulge: -1 },
        { x: -170, y: 8, bulge: 0 },
        { x: -150, y: 8, bulge: 0 },
      ],
    });
    expect(casting.hollows[0]?.loops[0]).toMatchObject({ centre: { x: -155, y: 4 } });
    expect(casting.doNotCut[0]?.loops[0]).toMatchObject({ centre: { x: -160, y: 20 } });
    expect(casting.traced?.loops[0]).toMatchObject({ centre: { x: -10, y: 20 } });
    expect(casting.wallReadings[0]?.at).toEqual({ x: -150, y: 4 });
    expect(casting.sections[1]?.depth).toEqual({ fromMm: 12, toMm: 60 });
  });
});

describe('outlines at the edge of what is sound', () => {
  const withLoop = (loop: unknown) => withChange(fullPart, ['sections', 1, 'loops'], [loop]);

  it('two vertices and an arc', () => {
    expect(
      read(
        withLoop([
          [0, 0, 1],
          [10, 0],
        ]),
      ).sections[1]?.loops,
    ).toHaveLength(1);
  });

  it('an arc too flat to have a centre one can calculate with is read as straight', () => {
    const [loop] =
      read(
        withLoop([
          [0, 0, 1e-12],
          [10, 0],
          [10, 5],
        ]),
      ).sections[1]?.loops ?? [];
    expect(loop).toMatchObject({ vertices: [{ bulge: 0 }, { bulge: 0 }, { bulge: 0 }] });
  });

  it('ids may be alike in different lists, and any words at all', () => {
    const named = withChange(withChange(fullPart, ['sections', 0, 'id'], 'ear'), ['hollows', 0, 'id'], '__proto__');
    expect(read(named).hollows[0]?.id).toBe('__proto__');
  });
});
