import { beforeAll, describe, expect, test } from 'vitest';
import { type Figures, figuresOf } from './figures/figures.ts';
import { upperBound } from './figures/share-bound.ts';
import { pairTasks } from './pair-tasks.ts';
import { runPair, type StrategyName } from './run-pair.ts';

let figures: readonly Figures[] = [];
const of = (strategy: StrategyName): Figures => figures.find((row) => row.strategy === strategy) as Figures;

beforeAll(() => {
  figures = figuresOf(pairTasks(12, [0.5]).flatMap(runPair));
}, 3_600_000);

describe('a dozen pairs traced to ± 0.5 mm', () => {
  test('never touch where they are told clear at worst and were traced as stated', () => {
    const { hits, of: told } = of('last line').soundAtWorstTouched;
    expect(hits).toBe(0);
    expect(told).toBeGreaterThan(6);
  });

  test('keep their walls where they are cut as planned', () => {
    expect(of('planned').wallsBrokenAtLine).toBe(0);
  });

  test('take more goes by eye than as planned', () => {
    expect(of('by eye').medianGoes).toBeGreaterThan(of('planned').medianGoes);
  });
});

/* Source: the closed form for none seen; for others the sum of exact binomial terms, by Python's whole numbers. */
test.each([
  { hits: 0, of: 59, expected: 1 - 0.05 ** (1 / 59) },
  { hits: 0, of: 400, expected: 1 - 0.05 ** (1 / 400) },
  { hits: 1, of: 50, expected: 0.09139813071969743 },
  { hits: 3, of: 100, expected: 0.07571079374983009 },
])('$hits of $of are at most $expected with 95 % confidence', ({ hits, of: all, expected }) => {
  expect(upperBound(hits, all)).toBeCloseTo(expected, 9);
});
