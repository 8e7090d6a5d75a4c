import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/files/finding.ts';
import { readPart } from '../../../src/job/read-part.ts';
import { findingText } from '../../../src/words/finding-text.ts';
import { fullPart, withChange } from '../../support/model-files.ts';

const findingsOf = (part: unknown): readonly Finding[] => {
  const text = typeof part === 'string' ? part : JSON.stringify(part);
  const reading = readPart('block.part.json', text, 'fixed');
  return reading.ok ? [] : reading.findings;
};

type Damage = readonly [path: readonly (string | number)[], value: unknown, at: string, words: string];

const square = [
  [0, 0],
  [9, 0],
  [9, 9],
  [0, 9],
];

const disc = { circle: [4, 4], radius: 2 };

/** One thing wrong with an otherwise sound part, where it is to be told of, and a piece of what is to be said. */
const damages: readonly Damage[] = [
  [['format'], 'fettle-part/2', 'format', 'expected "fettle-part/1"'],
  [['format'], undefined, 'format', 'found nothing'],
  [['name'], undefined, 'name', 'a text in double quotes'],
  [['name'], '  ', 'name', 'text that is not blank'],
  [['units'], 'cm', 'units', 'one of "mm", "in"'],
  [['viewedFrom'], undefined, 'viewedFrom', 'one of "face", "back"'],
  [['viewedFrom'], 'front', 'viewedFrom', 'found "front"'],
  [['material'], 'grey-irn', 'material', 'Did you mean "grey-iron"?'],
  [['material'], 'cheese', 'material', 'grey-iron, ductile-iron, aluminium, steel'],
  [['material'], { density: 0 }, 'material.density', 'more than 0'],
  [['material'], 7.2, 'material', '{ "density": g/cm³ }'],
  [['traceError'], -0.1, 'traceError', 'at least 0'],
  [['traceError'], '0.5', 'traceError', 'a number'],
  [['depthError'], -1, 'depthError', 'at least 0'],
  [['tracError'], 0.5, 'tracError', 'Did you mean "traceError"?'],
  [['__proto'], 1, '__proto', 'unknown key'],
  [['constructor'], 1, 'constructor', 'unknown key'],
  [['sections'], undefined, 'sections', 'a list in square brackets'],
  [['sections'], [], 'sections', 'at least 1'],
  [['sections'], { id: 'rib' }, 'sections', 'a list in square brackets'],
  [['sections', 1, 'id'], undefined, 'sections[1].id', 'a text'],
  [['sections', 1, 'id'], '', 'sections[1].id', 'not blank'],
  [['sections', 1, 'id'], 'flange', 'sections[1].id', '"flange", as in sections[0]'],
  [['sections', 1, 'mayCut'], 'yes', 'sections[1].mayCut', 'true or false'],
  [['sections', 1, 'maycut'], true, 'sections[1].maycut', 'Did you mean "mayCut"?'],
  [['sections', 1, 'depht'], [0, 1], 'sections[1].depht', 'Did you mean "depth"?'],
  [['sections', 1, 'depth'], [60, 12], 'sections[1].depth', 'from less than to'],
  [['sections', 1, 'depth'], [12, 12], 'sections[1].depth', 'from less than to'],
  [['sections', 1, 'depth'], [12], 'sections[1].depth', 'at least 2'],
  [['sections', 1, 'depth'], 12, 'sections[1].depth', 'a list in square brackets'],
  [['sections', 1, 'traceError'], -1, 'sections[1].traceError', 'at least 0'],
  [['sections', 1, 'depthError'], null, 'sections[1].depthError', 'a number'],
  [['sections', 1, 'gotBy'], 3, 'sections[1].gotBy', 'a text'],
  [['sections', 1, 'loops'], undefined, 'sections[1].loops', 'a list'],
  [['sections', 1, 'loops'], [], 'sections[1].loops', 'at least 1'],
  [['sections', 1, 'loops', 0], [], 'sections[1].loops[0]', 'at least 2'],
  [['sections', 1, 'loops', 0], 'circle', 'sections[1].loops[0]', 'or { "circle": [x, y], "radius": r }'],
  [['sections', 1, 'loops', 0, 2], [1], 'sections[1].loops[0][2]', 'at least 2'],
  [['sections', 1, 'loops', 0, 2], [170, 8, 0, 0], 'sections[1].loops[0][2]', 'at most 3'],
  [['sections', 1, 'loops', 0, 2], [170, null], 'sections[1].loops[0][2][1]', 'a number'],
  [['sections', 1, 'loops', 0, 2], [170, '8'], 'sections[1].loops[0][2][1]', 'found "8"'],
  [['sections', 1, 'loops', 0, 2], [170, 8, null], 'sections[1].loops[0][2][2]', 'a number'],
  [['sections', 1, 'loops', 0, 3], [150, 1e5 + 1], 'sections[1].loops[0][3][1]', 'within ±100000 mm'],
  [['sections', 1, 'loops', 0, 1], [170, 0, 1e9], 'sections[1].loops[0]', 'reaches farther'],
  [['sections', 1, 'loops', 0, 1], [170, 0, 1e200], 'sections[1].loops[0]', 'reaches farther'],
  [['sections', 1, 'loops', 0], { circle: [0, 0], radius: 0 }, 'sections[1].loops[0].radius', 'more than 0'],
  [['sections', 1, 'loops', 0], { circle: [0, 0], radius: -4 }, 'sections[1].loops[0].radius', 'more than 0'],
  [['sections', 1, 'loops', 0], { circle: [0, 0] }, 'sections[1].loops[0].radius', 'found nothing'],
  [
    ['sections', 1, 'loops', 0],
    { circle: [0, 0], diameter: 8, radius: 4 },
    'sections[1].loops[0].diameter',
    'circle, radius',
  ],
  [['sections', 1, 'loops', 0], { circle: [99_999, 0], radius: 4 }, 'sections[1].loops[0]', 'reaches farther'],
  [['sections', 1, 'loops', 0], { circle: [0, 0], radius: 2e5 }, 'sections[1].loops[0].radius', 'within ±100000 mm'],
  [
    ['sections', 1, 'loops', 0],
    [
      [3, 4],
      [5, 6],
    ],
    'sections[1].loops[0]',
    'three vertices or more, or two with an arc',
  ],
  [['sections', 1, 'loops', 0], [...square, [0, 0]], 'sections[1].loops[0][4]', 'a loop closes of itself'],
  [
    ['sections', 1, 'loops', 0],
    [
      [0, 0],
      [0, 0],
      [9, 0],
      [9, 9],
    ],
    'sections[1].loops[0][1]',
    'an edge with a length',
  ],
  [
    ['sections', 1, 'loops', 0],
    [
      [0, 0],
      [9, 9],
      [18, 18],
    ],
    'sections[1].loops[0]',
    'encloses no area',
  ],
  [
    ['sections', 1, 'loops', 0],
    [
      [0, 0],
      [9, 9],
      [9, 0],
      [0, 9],
    ],
    'sections[1].loops[0]',
    'crosses itself at (4.5, 4.5)',
  ],
  [
    ['sections', 1, 'loops', 0],
    [
      [0, 0],
      [9, 0],
      [9, 9],
      [4, 0],
      [0, 9],
    ],
    'sections[1].loops[0]',
    'touches itself at (4, 0)',
  ],
  [
    ['sections', 1, 'loops'],
    [square, { circle: [9, 4], radius: 2 }],
    'sections[1].loops[1]',
    'crosses sections[1].loops[0] at (9, ',
  ],
  [
    ['sections', 1, 'loops'],
    [square, { circle: [4, 2], radius: 2 }],
    'sections[1].loops[1]',
    'touches sections[1].loops[0] at (4, 0)',
  ],
  [['sections', 1, 'loops'], [disc, disc], 'sections[1].loops[1]', 'runs along sections[1].loops[0]'],
  [['holes', 1, 'id'], 'CRANK', 'holes[1].id', 'each id once'],
  [['holes', 1, 'kind'], 'pin', 'holes[1].kind', 'one of "dowel", "bolt", "tapped", "stud", "bore", "planned"'],
  [['holes', 1, 'at'], undefined, 'holes[1].at', 'a list'],
  [['holes', 1, 'at'], [0, 0, 0], 'holes[1].at', 'at most 2'],
  [['holes', 1, 'at'], [0, -2e5], 'holes[1].at[1]', 'within ±100000 mm'],
  [['holes', 1, 'diameter'], 0, 'holes[1].diameter', 'more than 0'],
  [['holes', 1, 'proud'], -9, 'holes[1].proud', 'at least 0'],
  [['holes', 3, 'thread'], '', 'holes[3].thread', 'not blank'],
  [['holes', 3, 'tread'], 'M12', 'holes[3].tread', 'Did you mean "thread"?'],
  [['hollows', 0, 'keepWall'], -5, 'hollows[0].keepWall', 'at least 0'],
  [['hollows', 0, 'depth'], [60, 12], 'hollows[0].depth', 'from less than to'],
  [['hollows', 0, 'loops', 0], [...square, [0, 0]], 'hollows[0].loops[0][4]', 'closes of itself'],
  [['hollows', 0, 'mayCut'], true, 'hollows[0].mayCut', 'unknown key'],
  [['doNotCut', 0, 'id'], undefined, 'doNotCut[0].id', 'a text'],
  [
    ['doNotCut', 0, 'loops', 0],
    [
      [0, 0],
      [9, 9],
      [9, 0],
      [0, 9],
    ],
    'doNotCut[0].loops[0]',
    'crosses itself',
  ],
  [['wallReadings', 0, 'wall'], 0, 'wallReadings[0].wall', 'more than 0'],
  [['wallReadings', 0, 'depth'], undefined, 'wallReadings[0].depth', 'a number'],
  [['wallReadings', 0, 'error'], -0.5, 'wallReadings[0].error', 'at least 0'],
  [['traced', 'loops'], [disc, disc], 'traced.loops[1]', 'runs along traced.loops[0]'],
  [['traced', 'loop'], [square], 'traced.loop', 'Did you mean "loops"?'],
];

describe('a part with one thing wrong', () => {
  it('is otherwise sound', () => {
    expect(findingsOf(fullPart)).toEqual([]);
  });

  it.each(damages)('%j = %j is told of once, at %s: %s', (path, value, at, words) => {
    const findings = findingsOf(withChange(fullPart, path, value));
    expect(findings.map((finding) => finding.at)).toEqual([at]);
    expect(findings.map(findingText).join()).toContain(words);
    expect(findings[0]?.file).toBe('block.part.json');
  });

  it.each([[[]], [null], ['part'], [3]])('%j in place of an object', (value) => {
    const text = findingsOf(JSON.stringify(value)).map(findingText);
    expect(text).toHaveLength(1);
    expect(text[0]).toContain('expected an object in braces');
  });

  it('a number too great to hold is no number', () => {
    const text = JSON.stringify(fullPart).replace('[150,8]', '[150,8e999]');
    expect(findingsOf(text).map(findingText)).toEqual([
      'block.part.json, sections[1].loops[0][3][1]: found Infinity; expected a number.',
    ]);
  });

  it('keys of prototypes are unknown keys like any other', () => {
    const text = JSON.stringify(fullPart).replace('"name"', '"__proto__":{"units":"in"},"toString":1,"name"');
    expect(findingsOf(text).map(({ at }) => at)).toEqual(['__proto__', 'toString']);
  });
});

describe('a part with several things wrong', () => {
  it('every one is told of at once, each in its own list', () => {
    let part: unknown = fullPart;
    part = withChange(part, ['units'], 'cm');
    part = withChange(part, ['sections', 0, 'depth'], [12, 0]);
    part = withChange(
      part,
      ['sections', 1, 'loops'],
      [
        [
          [0, 0],
          [9, 9],
          [9, 0],
          [0, 9],
        ],
        [[0, 0]],
      ],
    );
    part = withChange(part, ['holes', 2, 'id'], 'D1');
    part = withChange(
      part,
      ['hollows', 0, 'loops'],
      [
        square,
        [
          [20, 20],
          [30, 30],
          [30, 20],
          [20, 30],
        ],
      ],
    );
    part = withChange(part, ['materiel'], 'steel');
    expect(
      findingsOf(part)
        .map(({ at }) => at)
        .sort(),
    ).toEqual([
      'holes[2].id',
      'hollows[0].loops[1]',
      'materiel',
      'sections[0].depth',
      'sections[1].loops[0]',
      'sections[1].loops[1]',
      'units',
    ]);
  });

  it('of more than fifty the first fifty, and that there are more', () => {
    const unknown = Object.fromEntries(Array.from({ length: 80 }, (_, i) => [`key${i}`, 1]));
    const findings = findingsOf({ ...fullPart, ...unknown });
    expect(findings).toHaveLength(51);
    expect(findings.at(-1)?.found).toBe('more faults than these 50');
  });
});
