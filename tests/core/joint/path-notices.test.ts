import { describe, expect, test } from 'vitest';
import { pathNotices } from '../../../src/joint/path-notices.ts';
import { noticeText } from '../../../src/words/notices.ts';
import { dowel, legsOf, type PositionSpec } from '../../support/jobs.ts';

const dowels = [
  { fixed: dowel('D1', [-158, 12], 9), moving: dowel('P1', [-158, 12]) },
  { fixed: dowel('D2', [156, -30]), moving: dowel('P2', [156, -30], 6) },
];

const codes = (offerUp: readonly PositionSpec[], engagesAtMm: number | null = null, pairs = dowels) =>
  pathNotices({ legs: legsOf(offerUp), engagesAtMm }, pairs).map(({ code }) => code);

describe('dowels on the way in', () => {
  test.each<[string, PositionSpec[], string[]]>([
    ['turned in line at 14 mm', [{ standOff: 190, turn: 22 }, { standOff: 14, turn: 22 }, { standOff: 14 }, {}], []],
    ['turned in line just where the dowels begin', [{ standOff: 9, turn: 22 }, { standOff: 9 }, {}], []],
    [
      'turned in line a hair too late',
      [{ standOff: 8.999, turn: 22 }, { standOff: 8.999 }, {}],
      ['off-line-on-dowels'],
    ],
    ['turned back while sliding home', [{ standOff: 100, turn: 22 }, {}], ['off-line-on-dowels']],
    ['shifted back while sliding home', [{ standOff: 100, shift: [0, 5] }, {}], ['off-line-on-dowels']],
    ['a whole turn on the dowels', [{ turn: 360 }, {}], ['off-line-on-dowels']],
    [
      'slid in turned, then turned',
      [{ standOff: 100, turn: 5 }, { standOff: 5, turn: 5 }, { standOff: 5 }, {}],
      ['off-line-on-dowels', 'off-line-on-dowels'],
    ],
    ['straight in', [{ standOff: 190 }, {}], []],
  ])('%s', (_title, offerUp, expected) => {
    expect(codes(offerUp)).toEqual(expected);
  });

  test('without dowels nothing holds the part', () => {
    expect(codes([{ standOff: 1, turn: 22 }, {}], null, [])).toEqual([]);
  });

  test('a dowel that stands proud of the moving part counts like one of the fixed part', () => {
    const pairs = [{ fixed: dowel('D1', [0, 0]), moving: dowel('P1', [0, 0], 12) }];
    expect(codes([{ standOff: 10, turn: 22 }, { standOff: 10 }, {}], null, pairs)).toEqual(['off-line-on-dowels']);
  });

  test('the leg is named, with its lowest stand-off and what to do', () => {
    const legs = legsOf([{ standOff: 190, turn: 22 }, { standOff: 5, turn: 22 }, { standOff: 5 }, {}]);
    const [first, second] = pathNotices({ legs, engagesAtMm: null }, dowels).map((notice) => noticeText(notice, 'mm'));
    expect(first).toBe(
      'Leg 1 is turned or shifted with the stand-off down to 5 mm, but a dowel stands 9 mm proud: come into line at 9 mm or more, then slide straight home.',
    );
    expect(second).toMatch(/^Leg 2 /);
  });
});

describe('the input shaft on the way in', () => {
  test.each<[string, PositionSpec[], string[]]>([
    [
      'turned about the crank with the shaft in',
      [{ standOff: 190, turn: 22 }, { standOff: 14, turn: 22 }, { standOff: 14 }, {}],
      [],
    ],
    ['shifted back where the shaft begins', [{ standOff: 62, shift: [0, 5] }, { standOff: 62 }, {}], []],
    [
      'shifted below it',
      [{ standOff: 62, shift: [0, 5] }, { standOff: 61, shift: [0, 5] }, { standOff: 61 }, {}],
      ['off-line-on-shaft', 'off-line-on-shaft'],
    ],
    [
      'shifted back while coming below it',
      [{ standOff: 100, shift: [0, 5] }, { standOff: 20 }, {}],
      ['off-line-on-shaft'],
    ],
  ])('%s', (_title, offerUp, expected) => {
    expect(codes(offerUp, 62)).toEqual(expected);
  });
});
