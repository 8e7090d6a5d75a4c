import { describe, expect, test } from 'vitest';
import { dowelPlayMm } from '../../../src/joint/dowel-play.ts';
import { dowelNotices, dowelUp } from '../../../src/joint/dowel-up.ts';
import { dowel } from '../../support/jobs.ts';

type Point = readonly [number, number];

const pairsOf = (...pairs: readonly (readonly [fixed: Point, moving: Point])[]) =>
  pairs.map(([f, m], i) => ({ fixed: dowel(`D${i + 1}`, f, 9), moving: dowel(`P${i + 1}`, m) }));

describe('dowelling up', () => {
  test('one pair shifts without turning, and says that the turn is only taken as drawn', () => {
    const { motion, ...found } = dowelUp(
      pairsOf([
        [100, 0],
        [30, 40],
      ]),
    );
    expect(motion).toMatchObject({ turnRad: 0, shift: { x: 70, y: -40 } });
    expect(found).toEqual({
      turnRad: 0,
      shift: { x: 70, y: -40 },
      rmsMm: 0,
      spacingErrorMm: null,
      pairs: [{ fixed: 'D1', moving: 'P1', offsetMm: 0 }],
    });
    expect(dowelNotices(found).map(({ code }) => code)).toEqual(['one-dowel-pair']);
  });

  test('a half turn is +180°, never −180°', () => {
    for (const hair of [0, 1e-12, -1e-12]) {
      const { turnRad } = dowelUp(
        pairsOf(
          [
            [100, 0],
            [-100, hair],
          ],
          [
            [-100, 0],
            [100, -hair],
          ],
        ),
      );
      expect(turnRad).toBeCloseTo(Math.PI, 9);
    }
  });

  test('the spacing error is moving less fixed, of the pair of dowels that differs most', () => {
    const { spacingErrorMm } = dowelUp(
      pairsOf(
        [
          [0, 0],
          [0, 0],
        ],
        [
          [300, 0],
          [300.1, 0],
        ],
        [
          [0, 200],
          [0, 199.8],
        ],
      ),
    );
    // the diagonal, √(300.1² + 199.8²) − √(300² + 200²) = −0.0277, differs less
    expect(spacingErrorMm).toBeCloseTo(-0.2, 9);
    expect(
      dowelUp(
        pairsOf(
          [
            [0, 0],
            [0, 0],
          ],
          [
            [316.8, 0],
            [316.92, 0],
          ],
        ),
      ).spacingErrorMm,
    ).toBeCloseTo(0.12, 9);
  });

  test.each([
    [0.3, []],
    [0.301, ['dowel-spacing']],
    [0.5, ['dowel-spacing']],
    [0.501, ['dowel-spacing-measure-again']],
    [-0.501, ['dowel-spacing-measure-again']],
  ] as const)('dowels %f mm wider in the moving part warn %j', (error, codes) => {
    const dowelled = dowelUp(
      pairsOf(
        [
          [-158, 12],
          [-158, 12],
        ],
        [
          [158, 12],
          [158 + error, 12],
        ],
      ),
    );
    expect(dowelNotices(dowelled).map(({ code }) => code)).toEqual(codes);
  });

  test('nothing is rounded', () => {
    const { shift, motion } = dowelUp(
      pairsOf([
        [0, 0],
        [1 / 3, 0],
      ]),
    );
    expect(shift.x).toBe(-1 / 3);
    expect(motion.shift.x).toBe(-1 / 3);
  });
});

describe('dowel play', () => {
  const pin = (diameter: number | null, proud = 9) => dowel('pin', [0, 0], proud, diameter);
  const hole = (diameter: number | null) => dowel('hole', [0, 0], 0, diameter);

  test.each([
    ['half of hole less pin', [{ fixed: pin(14), moving: hole(14.1) }], 0.05],
    ['the same when the pin is in the moving part', [{ fixed: hole(14.1), moving: pin(14) }], 0.05],
    ['nothing for an interference fit', [{ fixed: pin(14.1), moving: hole(14) }], 0],
    ['taken as play where neither stands proud', [{ fixed: pin(14.1, 0), moving: hole(14) }], 0.05],
    ['not known where a diameter is missing', [{ fixed: pin(null), moving: hole(14) }], 0],
    [
      'the largest of all',
      [
        { fixed: pin(14), moving: hole(14.1) },
        { fixed: pin(10), moving: hole(10.4) },
      ],
      0.2,
    ],
    ['nothing without dowels', [], 0],
  ] as const)('is %s', (_title, pairs, expected) => {
    expect(dowelPlayMm(pairs)).toBeCloseTo(expected, 12);
  });
});
